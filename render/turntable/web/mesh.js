// bytesOf returns the bytes that a base64 text stands for.
function bytesOf(text) {
  const binary = atob(text), bytes = new Uint8Array(binary.length);
  for (let i = 0; i < bytes.length; i++) {
    bytes[i] = binary.charCodeAt(i);
  }
  return bytes.buffer;
}

// lengthsOf returns lengths in mm, packed as whole hundredths beyond an origin that
// repeats after every few numbers.
function lengthsOf(text, wide, origin) {
  const packed = wide ? new Int32Array(bytesOf(text)) : new Int16Array(bytesOf(text));
  const lengths = new Float32Array(packed.length);
  for (let i = 0; i < packed.length; i++) {
    lengths[i] = packed[i] / 100 + origin[i % origin.length];
  }
  return lengths;
}

// normalsOf returns unit vectors, packed as signed bytes.
function normalsOf(text) {
  const packed = new Int8Array(bytesOf(text)), normals = new Float32Array(packed.length);
  for (let i = 0; i < packed.length; i += 3) {
    const length = Math.hypot(packed[i], packed[i + 1], packed[i + 2]) || 1;
    for (let k = 0; k < 3; k++) {
      normals[i + k] = packed[i + k] / length;
    }
  }
  return normals;
}

// meshOf unpacks the mesh of the page.
function meshOf(packed) {
  return {
    points: lengthsOf(packed.points, packed.wide, packed.origin),
    places: lengthsOf(packed.places, packed.wide, packed.start),
    normals: normalsOf(packed.normals),
    triangles: new Uint16Array(bytesOf(packed.triangles)),
    groups: packed.groups,
    lines: linesOf(lengthsOf(packed.lines, packed.wide, packed.origin), normalsOf(packed.lineNormals)),
    height: packed.height,
    frame: packed.frame,
    least: packed.least,
    greatest: packed.greatest,
  };
}

// linesOf makes a strip of two triangles of each line. Every corner knows its end of
// the line, the other end, the paper that the line lies on, and its side of the line.
function linesOf(ends, normals) {
  const count = ends.length / 6, perCorner = 10;
  const corners = new Float32Array(count * 4 * perCorner), triangles = new Uint16Array(count * 6);
  for (let i = 0; i < count; i++) {
    const from = ends.subarray(6 * i, 6 * i + 3), to = ends.subarray(6 * i + 3, 6 * i + 6);
    const normal = normals.subarray(3 * i, 3 * i + 3);
    [[from, to, 1], [from, to, -1], [to, from, -1], [to, from, 1]].forEach((corner, k) => {
      const at = (4 * i + k) * perCorner;
      corners.set(corner[0], at);
      corners.set(corner[1], at + 3);
      corners.set(normal, at + 6);
      corners[at + 9] = corner[2];
    });
    triangles.set([0, 1, 2, 2, 1, 3].map((k) => 4 * i + k), 6 * i);
  }
  return { corners: corners, triangles: triangles };
}
