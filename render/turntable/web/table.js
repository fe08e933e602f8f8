// tableOf sets the bag onto a turntable: it holds the camera and draws when something
// changed. Canvas is the picture, foot what covers the lower end of it.
function tableOf(canvas, foot, bag, mesh, pictures) {
  const gl = openCard(canvas);
  if (!gl) {
    return null;
  }
  const night = window.matchMedia("(prefers-color-scheme: dark)");
  const still = window.matchMedia("(prefers-reduced-motion: reduce)");
  const glide = 450; // milliseconds from view to view
  let paint = painterOf(gl, bag, mesh, pictures);
  let camera = slant, path = null, ordered = false;
  const watchers = [];

  // room returns the size of the picture without its covered end, in pixels of the page.
  function room() {
    return { width: canvas.clientWidth, height: Math.max(canvas.clientHeight - foot.offsetHeight, 1) };
  }

  function draw(now) {
    ordered = false;
    if (path) {
      const share = within((now - path.start) / glide, 0, 1);
      camera = between(path.from, path.to, share * share * (3 - 2 * share));
      if (share === 1) {
        camera = path.to;
        path = null;
      }
    }
    const density = within(window.devicePixelRatio || 1, 1, 3);
    const width = Math.max(Math.round(canvas.clientWidth * density), 1);
    const height = Math.max(Math.round(canvas.clientHeight * density), 1);
    if (canvas.width !== width || canvas.height !== height) {
      canvas.width = width;
      canvas.height = height;
    }
    if (paint) {
      paint(camera, density, foot.offsetHeight, bag.shadow[night.matches ? 1 : 0]);
    }
    watchers.forEach((watcher) => watcher(camera));
    if (path) {
      order();
    }
  }

  function order() {
    if (!ordered) {
      ordered = true;
      window.requestAnimationFrame(draw);
    }
  }

  function turnTo(wanted) {
    path = null;
    camera = limited(wanted);
    order();
  }

  function glideTo(wanted) {
    if (still.matches) {
      turnTo(wanted);
      return;
    }
    path = { from: camera, to: wanted, start: window.performance.now() };
    order();
  }

  canvas.addEventListener("webglcontextlost", (event) => {
    event.preventDefault();
    paint = null;
  });
  canvas.addEventListener("webglcontextrestored", () => {
    paint = painterOf(gl, bag, mesh, pictures);
    order();
  });
  window.addEventListener("resize", order);
  if (night.addEventListener) {
    night.addEventListener("change", order);
  }
  return {
    camera: () => camera, turnTo: turnTo, glideTo: glideTo, order: order, room: room,
    watch: (watcher) => watchers.push(watcher),
  };
}
