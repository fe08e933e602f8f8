// The camera turns round the bag. Angles are radians; azimuth 0 sees the front and
// π/2 the right gusset. Zoom 1 takes in the whole bag from any side.
const leastZoom = 0.4, greatestZoom = 12;

const slant = { azimuth: Math.PI / 4, elevation: Math.atan(Math.SQRT1_2), zoom: 1, right: 0, up: 0 };

const views = {
  slant: slant,
  front: { azimuth: 0, elevation: 0, zoom: 1, right: 0, up: 0 },
  right: { azimuth: Math.PI / 2, elevation: 0, zoom: 1, right: 0, up: 0 },
  back: { azimuth: Math.PI, elevation: 0, zoom: 1, right: 0, up: 0 },
  left: { azimuth: -Math.PI / 2, elevation: 0, zoom: 1, right: 0, up: 0 },
  above: { azimuth: 0, elevation: Math.PI / 2, zoom: 1, right: 0, up: 0 },
};

const within = (value, least, most) => Math.min(Math.max(value, least), most);

// turned returns an angle within half a turn of 0.
function turned(angle) {
  const whole = 2 * Math.PI;
  return angle - whole * Math.round(angle / whole);
}

// limited brings a camera back within its limits: it never passes straight above
// or below, so the picture never flips.
function limited(camera) {
  const zoom = within(camera.zoom, leastZoom, greatestZoom);
  return {
    azimuth: turned(camera.azimuth),
    elevation: within(camera.elevation, -Math.PI / 2, Math.PI / 2),
    zoom: zoom,
    right: within(camera.right, -zoom, zoom),
    up: within(camera.up, -zoom, zoom),
  };
}

// viewOf returns the camera that a link to a view names, "#view=back" or in degrees
// "#view=30,20,1.5" for azimuth, elevation and zoom; null for anything else.
function viewOf(hash) {
  const named = /^#view=([\w.,-]+)$/.exec(hash);
  if (!named) {
    return null;
  }
  if (Object.prototype.hasOwnProperty.call(views, named[1])) {
    return views[named[1]];
  }
  const parts = named[1].split(",").map(Number);
  if (parts.length < 2 || parts.length > 3 || !parts.every(isFinite)) {
    return null;
  }
  const degree = Math.PI / 180;
  return limited({ azimuth: parts[0] * degree, elevation: parts[1] * degree, zoom: parts[2] || 1, right: 0, up: 0 });
}

// between returns the camera at a share of the way from one to another, the short
// way round.
function between(from, to, share) {
  const mix = (a, b) => a + (b - a) * share;
  return {
    azimuth: from.azimuth + turned(to.azimuth - from.azimuth) * share,
    elevation: mix(from.elevation, to.elevation),
    zoom: from.zoom * Math.pow(to.zoom / from.zoom, share),
    right: mix(from.right, to.right),
    up: mix(from.up, to.up),
  };
}

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

// lensOf returns how the camera carries space to a picture of width × height: a mild
// perspective, that of a viewer some five bag sizes away. The bag keeps clear of a
// strip at the foot of the picture.
function lensOf(camera, frame, width, whole, foot) {
  const remoteness = 5.5, fill = 0.95, height = Math.max(whole - foot, 1);
  const sinA = Math.sin(camera.azimuth), cosA = Math.cos(camera.azimuth);
  const sinE = Math.sin(camera.elevation), cosE = Math.cos(camera.elevation);
  const right = [cosA, sinA, 0], up = [-sinA * sinE, cosA * sinE, cosE], toward = [-sinA * cosE, cosA * cosE, -sinE];
  const ball = Math.hypot(frame.radius, frame.rise), distance = remoteness * ball;
  const upright = Math.sqrt(distance * distance - ball * ball) / ball;
  const closest = distance - frame.rise * Math.abs(sinE);
  const sideways = Math.sqrt(closest * closest - frame.radius * frame.radius) / frame.radius;
  const focal = camera.zoom * fill * Math.min(height / 2 * upright, width / 2 * sideways);
  const lesser = Math.min(width, height);
  // The ground with the shadow reaches further than the bag.
  const near = distance - 3 * ball, far = distance + 3 * ball;
  return {
    // The rows of turn carry a point, less the eye, to what is seen: right, up, ahead.
    turn: [right[0], up[0], toward[0], right[1], up[1], toward[1], right[2], up[2], toward[2]],
    eye: frame.middle.map((middle, i) => middle - toward[i] * distance),
    focal: focal,
    scale: [2 * focal / width, 2 * focal / whole],
    middle: [camera.right * lesser / width, (camera.up * lesser + foot) / whole],
    depth: [(far + near) / (far - near), -2 * far * near / (far - near)],
  };
}

// lightsOf returns where the light comes from. The lights stay with the viewer: the
// bag turns under them.
function lightsOf(azimuth) {
  const sin = Math.sin(azimuth), cos = Math.cos(azimuth);
  const turn = (x, y, z) => {
    const length = Math.hypot(x, y, z);
    return [(x * cos - y * sin) / length, (x * sin + y * cos) / length, z / length];
  };
  return { main: turn(-0.52, -0.66, 0.72), fill: turn(0.6, 0.75, 0.25) };
}
