// Every shader that draws in space begins with this: what a point is seen as (right,
// up, ahead, in mm), and where that falls on the picture.
const lensCode = `
precision highp float;
uniform mat3 turn;
uniform vec3 eye;
uniform vec2 scale, middle, depth;
vec3 seenAs(vec3 p) { return turn * (p - eye); }
vec4 onPicture(vec3 seen) {
  return vec4(seen.xy * scale + seen.z * middle, seen.z * depth.x + depth.y, seen.z);
}`;

const fragmentCode = `
#ifdef GL_FRAGMENT_PRECISION_HIGH
precision highp float;
#else
precision mediump float;
#endif
`;

const surfaceVertex = lensCode + `
attribute vec3 point, normal;
attribute vec2 place;
uniform vec4 onto; // from a place in mm to the texture: place · xy + zw
varying vec3 at, outward;
varying vec2 spot;
void main() {
  at = point;
  outward = normal;
  spot = place * onto.xy + onto.zw;
  gl_Position = onPicture(seenAs(point));
}`;

// The kinds of surface: paper, round things, and polished metal.
const kindOf = { print: 0, reverse: 0, fold: 0, edge: 0, card: 0, cord: 1, metal: 2 };

// The light is soft: most of it comes from all sides. Paper inside the bag gets less
// toward the base.
const surfaceFragment = fragmentCode + `
uniform vec3 colour, mainLight, fillLight, viewer;
uniform vec2 grade; // brightness on the ground and at the height of the paper
uniform float height;
uniform int kind;
uniform bool textured;
uniform sampler2D picture;
varying vec3 at, outward;
varying vec2 spot;

float onPaper(vec3 n) {
  return min(0.79 + 0.03 * n.z + 0.29 * max(dot(n, mainLight), 0.0) + 0.10 * max(dot(n, fillLight), 0.0), 1.0);
}

float onRound(vec3 n) {
  return min(0.52 + 0.06 * n.z + 0.5 * max(dot(n, mainLight), 0.0) + 0.14 * max(dot(n, fillLight), 0.0), 1.0);
}

float streak(vec3 n, vec3 light, vec3 toward, float sharpness) {
  vec3 midway = light - toward;
  midway.z *= 0.3; // the lights are tall, so that upright walls catch them
  return pow(max(dot(n, normalize(midway)), 0.0), sharpness);
}

float onMetal(vec3 n) {
  vec3 toward = normalize(at - viewer);
  return min(0.5 + 0.08 * n.z + 0.14 * onRound(n)
    + 0.34 * streak(n, mainLight, toward, 22.0) + 0.2 * streak(n, fillLight, toward, 14.0), 1.0);
}

void main() {
  vec3 n = normalize(outward);
  float light = kind == 0 ? onPaper(n) : kind == 1 ? onRound(n) : onMetal(n);
  light *= mix(grade.x, grade.y, at.z / height);
  // A little less blurred than the card would choose, so that small text stays sharp.
  vec3 ink = textured ? texture2D(picture, spot, -0.5).rgb : colour;
  gl_FragColor = vec4(ink * min(light, 1.0), 1.0);
}`;

// A line is a fixed number of pixels wide. Beside its middle it follows the plane of
// its paper, so that it shows through no other layer; of paper seen nearly edge on
// it follows the line alone. It is drawn a little nearer than it lies.
const lineVertex = lensCode + `
attribute vec3 point, other, normal;
attribute float side;
uniform float focal, width;
void main() {
  vec3 here = seenAs(point), there = seenAs(other);
  vec2 pixel = here.xy / here.z * focal, along = there.xy / there.z * focal - pixel;
  float far = length(along);
  along = far > 0.0 ? along / far : vec2(1.0, 0.0);
  vec3 ray = vec3((pixel + vec2(-along.y, along.x) * side * width * 0.5) / focal, 1.0);
  vec3 outward = turn * normal;
  float k = dot(outward, here), slope = dot(outward, ray);
  vec3 seen = ray * here.z;
  if (abs(k) > 0.15 * length(here) && abs(slope) > 0.1) {
    seen = ray * (k / slope);
  }
  gl_Position = onPicture(seen * (1.0 - 0.05 / here.z));
}`;

const lineFragment = fragmentCode + `
uniform vec4 ink;
void main() { gl_FragColor = ink; }`;

// The shadow is first drawn from above: in red what stands close to the ground, in
// green what the main light throws to the side.
const castVertex = `
precision highp float;
attribute vec3 point;
uniform vec2 thrown, corner, extent;
uniform float ceiling;
void main() {
  vec2 ground = point.xy + thrown * min(point.z, ceiling);
  gl_Position = vec4((ground - corner) / extent * 2.0 - 1.0, 0.0, 1.0);
}`;

const castFragment = fragmentCode + `
void main() { gl_FragColor = vec4(1.0); }`;

const blurVertex = `
attribute vec2 corner;
varying vec2 spot;
void main() {
  spot = corner * 0.5 + 0.5;
  gl_Position = vec4(corner, 0.0, 1.0);
}`;

// One way of a bell curve, with a reach of its own for red and for green.
const blurFragment = fragmentCode + `
uniform sampler2D picture;
uniform vec2 redStep, greenStep; // a third of the reach
varying vec2 spot;
void main() {
  vec2 sum = vec2(0.0);
  float whole = 0.0;
  for (int i = -8; i <= 8; i++) {
    float away = float(i), part = exp(-away * away / 18.0);
    sum += part * vec2(texture2D(picture, spot + away * redStep).r, texture2D(picture, spot + away * greenStep).g);
    whole += part;
  }
  gl_FragColor = vec4(sum / whole, 0.0, 1.0);
}`;

const groundVertex = lensCode + `
attribute vec2 corner;
uniform vec2 least, extent;
varying vec2 spot;
void main() {
  spot = corner * 0.5 + 0.5;
  gl_Position = onPicture(seenAs(vec3(least + extent * spot, -0.5)));
}`;

const groundFragment = fragmentCode + `
uniform sampler2D picture;
uniform float strength;
varying vec2 spot;
void main() {
  vec4 dark = texture2D(picture, spot);
  float light = (1.0 - 0.75 * dark.r) * (1.0 - 0.45 * dark.g);
  gl_FragColor = vec4(0.0, 0.0, 0.0, strength * (1.0 - light));
}`;
