// throughLens tells a program where the camera is.
function throughLens(gl, program, lens) {
  gl.uniformMatrix3fv(program.uniform.turn, false, lens.turn);
  gl.uniform3fv(program.uniform.eye, lens.eye);
  gl.uniform2fv(program.uniform.scale, lens.scale);
  gl.uniform2fv(program.uniform.middle, lens.middle);
  gl.uniform2fv(program.uniform.depth, lens.depth);
}

const thin = ["fold", "edge", "cord", "metal"];

// Printed are the skins that show the picture of their piece.
const printed = ["print", "fold"];

// painterOf puts the bag onto the card and returns what draws it. Pictures holds one
// image for each piece of the blank, or null for plain paper.
function painterOf(gl, bag, mesh, pictures) {
  const surface = programOf(gl, surfaceVertex, surfaceFragment), line = programOf(gl, lineVertex, lineFragment);
  const buffers = {
    points: bufferOf(gl, gl.ARRAY_BUFFER, mesh.points),
    normals: bufferOf(gl, gl.ARRAY_BUFFER, mesh.normals),
    places: bufferOf(gl, gl.ARRAY_BUFFER, mesh.places),
    triangles: bufferOf(gl, gl.ELEMENT_ARRAY_BUFFER, mesh.triangles),
    lines: bufferOf(gl, gl.ARRAY_BUFFER, mesh.lines.corners),
    lineTriangles: bufferOf(gl, gl.ELEMENT_ARRAY_BUFFER, mesh.lines.triangles),
  };
  const paper = mesh.groups.filter((group) => group.skin === "print").map((group) => group.colour)[0] || [255, 255, 255];
  const textures = pictures.map((image) => image && textureOf(gl, image, paper));
  const shadow = shadowOf(gl, mesh, buffers);
  let shadowAt = NaN; // the azimuth that the shadow was reckoned for

  function paintGroup(group) {
    const piece = printed.includes(group.skin) ? bag.textures[group.piece] : null;
    const loaded = piece && textures[group.piece], u = surface.uniform;
    gl.uniform1i(u.kind, kindOf[group.skin]);
    gl.uniform3fv(u.colour, group.colour.map((part) => part / 255));
    gl.uniform2fv(u.grade, group.grade);
    gl.uniform1i(u.textured, loaded ? 1 : 0);
    if (loaded) {
      const across = loaded.across / piece.width, down = loaded.down / piece.height;
      gl.bindTexture(gl.TEXTURE_2D, loaded.texture);
      gl.uniform4f(u.onto, across, -down, 0, down * piece.blank);
    }
    if (thin.includes(group.skin)) {
      // Where such things are thinner than a pixel, rounding would let them shine
      // through the paper before them. The steeper they are, the further back they go.
      gl.enable(gl.POLYGON_OFFSET_FILL);
      gl.polygonOffset(1, 1);
    }
    gl.drawElements(gl.TRIANGLES, group.count, gl.UNSIGNED_SHORT, 2 * group.first);
    gl.disable(gl.POLYGON_OFFSET_FILL);
  }

  function paintSurfaces(lens, lights) {
    gl.useProgram(surface.program);
    throughLens(gl, surface, lens);
    feed(gl, surface, "point", buffers.points, 3);
    feed(gl, surface, "normal", buffers.normals, 3);
    feed(gl, surface, "place", buffers.places, 2);
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, buffers.triangles);
    gl.uniform3fv(surface.uniform.mainLight, lights.main);
    gl.uniform3fv(surface.uniform.fillLight, lights.fill);
    gl.uniform3fv(surface.uniform.viewer, lens.eye);
    gl.uniform1f(surface.uniform.height, mesh.height);
    mesh.groups.forEach(paintGroup);
    rest(gl, surface);
  }

  function paintLines(lens, width) {
    const ink = bag.ink.map((part) => part / 255), cover = 0.33;
    gl.useProgram(line.program);
    throughLens(gl, line, lens);
    gl.uniform1f(line.uniform.focal, lens.focal);
    gl.uniform1f(line.uniform.width, width);
    gl.uniform4f(line.uniform.ink, ink[0] * cover, ink[1] * cover, ink[2] * cover, cover);
    feed(gl, line, "point", buffers.lines, 3, 10, 0);
    feed(gl, line, "other", buffers.lines, 3, 10, 3);
    feed(gl, line, "normal", buffers.lines, 3, 10, 6);
    feed(gl, line, "side", buffers.lines, 1, 10, 9);
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, buffers.lineTriangles);
    gl.drawElements(gl.TRIANGLES, mesh.lines.triangles.length, gl.UNSIGNED_SHORT, 0);
    rest(gl, line);
  }

  // Paint draws the bag as a camera sees it. Density is the pixels of the screen to
  // each pixel of the page, foot the strip to keep clear in pixels of the page, dark
  // the strength of the shadow.
  return function paint(camera, density, foot, dark) {
    const width = gl.drawingBufferWidth, height = gl.drawingBufferHeight;
    const lens = lensOf(camera, mesh.frame, width, height, foot * density), lights = lightsOf(camera.azimuth);
    gl.clearColor(0, 0, 0, 0);
    if (shadowAt !== camera.azimuth) {
      shadow.reckon(lights.main);
      shadowAt = camera.azimuth;
    }
    gl.viewport(0, 0, width, height);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.enable(gl.DEPTH_TEST);
    gl.depthFunc(gl.LEQUAL);
    gl.enable(gl.CULL_FACE);
    paintSurfaces(lens, lights);
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.depthMask(false);
    shadow.lay(lens, dark);
    gl.disable(gl.CULL_FACE);
    paintLines(lens, 0.9 * density);
    gl.depthMask(true);
    gl.disable(gl.BLEND);
  };
}
