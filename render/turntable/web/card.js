// Card wraps the graphics card: programs, buffers and textures.

// openCard returns the drawing context of a canvas, or null where there is none.
function openCard(canvas) {
  const wishes = { alpha: true, antialias: true, premultipliedAlpha: true };
  return canvas.getContext("webgl", wishes) || canvas.getContext("experimental-webgl", wishes);
}

function compile(gl, kind, code) {
  const shader = gl.createShader(kind);
  gl.shaderSource(shader, code);
  gl.compileShader(shader);
  return shader;
}

// programOf links a program and finds the places of its uniforms and attributes.
function programOf(gl, vertex, fragment) {
  const program = gl.createProgram();
  gl.attachShader(program, compile(gl, gl.VERTEX_SHADER, vertex));
  gl.attachShader(program, compile(gl, gl.FRAGMENT_SHADER, fragment));
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost()) {
    throw new Error("link a program: " + gl.getProgramInfoLog(program));
  }
  const made = { program: program, uniform: {}, attribute: {} };
  for (let i = gl.getProgramParameter(program, gl.ACTIVE_UNIFORMS) - 1; i >= 0; i--) {
    const name = gl.getActiveUniform(program, i).name;
    made.uniform[name] = gl.getUniformLocation(program, name);
  }
  for (let i = gl.getProgramParameter(program, gl.ACTIVE_ATTRIBUTES) - 1; i >= 0; i--) {
    const name = gl.getActiveAttrib(program, i).name;
    made.attribute[name] = gl.getAttribLocation(program, name);
  }
  return made;
}

function bufferOf(gl, target, data) {
  const buffer = gl.createBuffer();
  gl.bindBuffer(target, buffer);
  gl.bufferData(target, data, gl.STATIC_DRAW);
  return buffer;
}

// feed lets an attribute read numbers from a buffer. Stride and start are counted in
// numbers.
function feed(gl, program, name, buffer, size, stride, start) {
  const place = program.attribute[name];
  if (place === undefined) {
    return;
  }
  gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
  gl.enableVertexAttribArray(place);
  gl.vertexAttribPointer(place, size, gl.FLOAT, false, 4 * (stride || 0), 4 * (start || 0));
}

// rest turns the attributes of a program off, so that the next begins without any.
function rest(gl, program) {
  Object.keys(program.attribute).forEach((name) => gl.disableVertexAttribArray(program.attribute[name]));
}

// textureOf puts a picture of paper onto the card. Its sides become powers of two,
// which smaller versions of it need; what is beside the picture is plain paper.
function textureOf(gl, image, paper) {
  const most = Math.min(gl.getParameter(gl.MAX_TEXTURE_SIZE), 4096);
  const shrink = Math.min(1, most / image.width, most / image.height);
  const width = Math.max(1, Math.floor(image.width * shrink)), height = Math.max(1, Math.floor(image.height * shrink));
  const canvas = document.createElement("canvas");
  canvas.width = powerOver(width);
  canvas.height = powerOver(height);
  const pen = canvas.getContext("2d");
  pen.fillStyle = "rgb(" + paper.join(",") + ")";
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(image, 0, 0, width, height);
  const texture = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  gl.pixelStorei(gl.UNPACK_COLORSPACE_CONVERSION_WEBGL, gl.NONE);
  gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA, gl.RGBA, gl.UNSIGNED_BYTE, canvas);
  gl.generateMipmap(gl.TEXTURE_2D);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR_MIPMAP_LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
  const steep = gl.getExtension("EXT_texture_filter_anisotropic") || gl.getExtension("WEBKIT_EXT_texture_filter_anisotropic");
  if (steep) {
    const offered = gl.getParameter(steep.MAX_TEXTURE_MAX_ANISOTROPY_EXT);
    gl.texParameterf(gl.TEXTURE_2D, steep.TEXTURE_MAX_ANISOTROPY_EXT, Math.min(8, offered));
  }
  // The share of the texture that the picture takes.
  return { texture: texture, across: width / canvas.width, down: height / canvas.height };
}

function powerOver(size) {
  let power = 1;
  while (power < size) {
    power *= 2;
  }
  return power;
}
