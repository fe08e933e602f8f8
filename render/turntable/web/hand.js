// The hand turns the bag: one finger or the mouse turns, two fingers move and zoom,
// the wheel zooms, a double tap brings the whole bag back, and keys do the same.
const turnOfPixel = 0.008, keyTurn = Math.PI / 24, keyMove = 0.1, zoomStep = 1.2;

// handOf listens on a canvas. The table offers camera() and turnTo(camera), glideTo
// (camera) and room(), the size of the picture in pixels of the page.
function handOf(canvas, table) {
  const fingers = new Map(); // position of each pointer that is down
  let travel = 0; // pixels moved since the first finger came down
  let lastTap = null;

  // spot returns a position counted from the middle of the picture, in halves of its
  // lesser side, to the right and up.
  function spot(x, y) {
    const box = canvas.getBoundingClientRect(), room = table.room(), half = Math.min(room.width, room.height) / 2;
    return { right: (x - box.left - room.width / 2) / half, up: (box.top + room.height / 2 - y) / half };
  }

  // zoom enlarges the picture by a factor; what is seen at a spot stays there.
  function zoom(at, factor) {
    const camera = table.camera(), wanted = within(camera.zoom * factor, leastZoom, greatestZoom);
    const real = wanted / camera.zoom;
    table.turnTo(Object.assign({}, camera, {
      zoom: wanted,
      right: at.right + (camera.right - at.right) * real,
      up: at.up + (camera.up - at.up) * real,
    }));
  }

  function move(right, up) {
    const camera = table.camera();
    table.turnTo(Object.assign({}, camera, { right: camera.right + right, up: camera.up + up }));
  }

  function turn(azimuth, elevation) {
    const camera = table.camera();
    table.turnTo(Object.assign({}, camera, { azimuth: camera.azimuth + azimuth, elevation: camera.elevation + elevation }));
  }

  // pinch follows two fingers from where they were to where they are.
  function pinch(before, after) {
    const middle = (pair) => spot((pair[0].x + pair[1].x) / 2, (pair[0].y + pair[1].y) / 2);
    const apart = (pair) => Math.hypot(pair[0].x - pair[1].x, pair[0].y - pair[1].y);
    const from = middle(before), to = middle(after);
    move(to.right - from.right, to.up - from.up);
    if (apart(before) > 0 && apart(after) > 0) {
      zoom(to, apart(after) / apart(before));
    }
  }

  function down(event) {
    if (event.button > 0) {
      return;
    }
    if (fingers.size === 0) {
      travel = 0;
    }
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    canvas.setPointerCapture(event.pointerId);
    canvas.classList.add("held");
  }

  function drag(event) {
    const old = fingers.get(event.pointerId);
    if (!old) {
      return;
    }
    const now = { x: event.clientX, y: event.clientY }, before = Array.from(fingers.values());
    const right = now.x - old.x, lower = now.y - old.y;
    travel += Math.hypot(right, lower);
    fingers.set(event.pointerId, now);
    if (fingers.size === 2) {
      pinch(before, Array.from(fingers.values()));
    } else if (fingers.size === 1 && event.shiftKey) {
      const from = spot(old.x, old.y), to = spot(now.x, now.y);
      move(to.right - from.right, to.up - from.up);
    } else if (fingers.size === 1) {
      turn(-right * turnOfPixel, lower * turnOfPixel);
    }
  }

  function lift(event) {
    if (!fingers.delete(event.pointerId)) {
      return;
    }
    if (fingers.size === 0) {
      canvas.classList.remove("held");
      if (event.type === "pointerup" && travel < 8) {
        tap(event);
      }
    }
  }

  function tap(event) {
    const again = lastTap && event.timeStamp - lastTap.when < 350 &&
      Math.hypot(event.clientX - lastTap.x, event.clientY - lastTap.y) < 30;
    if (again) {
      table.glideTo(slant);
    }
    lastTap = again ? null : { when: event.timeStamp, x: event.clientX, y: event.clientY };
  }

  function wheel(event) {
    event.preventDefault();
    const lines = 16, pixels = event.deltaMode === 1 ? event.deltaY * lines : event.deltaY;
    zoom(spot(event.clientX, event.clientY), Math.exp(-within(pixels, -240, 240) * 0.002));
  }

  const middle = { right: 0, up: 0 };
  const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

  function key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const way = arrows[event.key];
    if (way && event.shiftKey) {
      move(way[0] * keyMove, way[1] * keyMove);
    } else if (way) {
      turn(way[0] * keyTurn, way[1] * keyTurn);
    } else if (event.key === "+" || event.key === "=") {
      zoom(middle, zoomStep);
    } else if (event.key === "-") {
      zoom(middle, 1 / zoomStep);
    } else if (event.key === "Home" || event.key === "0") {
      table.glideTo(slant);
    } else {
      return;
    }
    event.preventDefault();
  }

  canvas.addEventListener("pointerdown", down);
  canvas.addEventListener("pointermove", drag);
  canvas.addEventListener("pointerup", lift);
  canvas.addEventListener("pointercancel", lift);
  canvas.addEventListener("wheel", wheel, { passive: false });
  canvas.addEventListener("keydown", key);
}
