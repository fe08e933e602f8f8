// A shadow is how dark the ground is around the bag, as a small picture seen from
// above that is drawn anew when the bag turns under the light.
const shadowSide = 256;

function shadowOf(gl, mesh, buffers) {
  const cast = programOf(gl, castVertex, castFragment), blur = programOf(gl, blurVertex, blurFragment);
  const ground = programOf(gl, groundVertex, groundFragment);
  const square = bufferOf(gl, gl.ARRAY_BUFFER, new Float32Array([-1, -1, 1, -1, -1, 1, 1, 1]));
  const first = stageOf(gl), second = stageOf(gl);
  const least = mesh.least, greatest = mesh.greatest, paper = mesh.groups.filter((group) => group.skin === "print");
  const spread = 0.09 * (greatest[0] - least[0] + greatest[1] - least[1] + mesh.height);
  let area = null; // on the ground: corner and extent, mm

  function throwDown(thrown, ceiling) {
    gl.uniform2fv(cast.uniform.thrown, thrown);
    gl.uniform1f(cast.uniform.ceiling, ceiling);
    paper.forEach((group) => gl.drawElements(gl.TRIANGLES, group.count, gl.UNSIGNED_SHORT, 2 * group.first));
  }

  // smear blurs one way, over a share of the whole reach.
  function smear(from, to, along, share) {
    gl.bindFramebuffer(gl.FRAMEBUFFER, to.frame);
    gl.useProgram(blur.program);
    feed(gl, blur, "corner", square, 2);
    gl.bindTexture(gl.TEXTURE_2D, from.texture);
    const step = (reach) => along.map((way, i) => way * reach * share / 3 / area.extent[i]);
    gl.uniform2fv(blur.uniform.redStep, step(0.22 * spread));
    gl.uniform2fv(blur.uniform.greenStep, step(0.6 * spread));
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
    rest(gl, blur);
  }

  // reckon draws the shadow for a direction of the main light. It is shorter than the
  // light would throw it, for a long one would take the eye off the bag.
  function reckon(light) {
    const thrown = [-0.42 * light[0] / light[2], -0.42 * light[1] / light[2]];
    const margin = 1.6 * spread;
    const low = [0, 1].map((i) => least[i] + Math.min(0, thrown[i] * mesh.height) - margin);
    const high = [0, 1].map((i) => greatest[i] + Math.max(0, thrown[i] * mesh.height) + margin);
    area = { corner: low, extent: [high[0] - low[0], high[1] - low[1]] };
    gl.viewport(0, 0, shadowSide, shadowSide);
    gl.disable(gl.DEPTH_TEST);
    gl.disable(gl.CULL_FACE);
    gl.disable(gl.BLEND);
    gl.bindFramebuffer(gl.FRAMEBUFFER, first.frame);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.useProgram(cast.program);
    feed(gl, cast, "point", buffers.points, 3);
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, buffers.triangles);
    gl.uniform2fv(cast.uniform.corner, area.corner);
    gl.uniform2fv(cast.uniform.extent, area.extent);
    gl.colorMask(true, false, false, false);
    throwDown([0, 0], 0);
    gl.colorMask(false, true, false, false);
    throwDown(thrown, 1e9);
    gl.colorMask(true, true, true, true);
    rest(gl, cast);
    // A short blur first, or the long one would show its steps.
    [0.3, 0.95].forEach((share) => {
      smear(first, second, [1, 0], share);
      smear(second, first, [0, 1], share);
    });
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
  }

  // lay darkens the ground. Seen from below it is clear.
  function lay(lens, strength) {
    gl.useProgram(ground.program);
    throughLens(gl, ground, lens);
    feed(gl, ground, "corner", square, 2);
    gl.bindTexture(gl.TEXTURE_2D, first.texture);
    gl.uniform2fv(ground.uniform.least, area.corner);
    gl.uniform2fv(ground.uniform.extent, area.extent);
    gl.uniform1f(ground.uniform.strength, strength);
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
    rest(gl, ground);
  }

  return { reckon: reckon, lay: lay };
}

// stageOf returns a small picture that can be drawn on and read.
function stageOf(gl) {
  const texture = gl.createTexture(), frame = gl.createFramebuffer();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA, shadowSide, shadowSide, 0, gl.RGBA, gl.UNSIGNED_BYTE, null);
  [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER].forEach((way) => gl.texParameteri(gl.TEXTURE_2D, way, gl.LINEAR));
  [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T].forEach((way) => gl.texParameteri(gl.TEXTURE_2D, way, gl.CLAMP_TO_EDGE));
  gl.bindFramebuffer(gl.FRAMEBUFFER, frame);
  gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0);
  gl.bindFramebuffer(gl.FRAMEBUFFER, null);
  return { texture: texture, frame: frame };
}
