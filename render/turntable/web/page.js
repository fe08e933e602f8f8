// The page puts the bag onto its turntable once all pictures are there. Until then,
// and where that cannot be, the still picture shows.
const byId = (id) => document.getElementById(id);

function load(url) {
  return new Promise((done, failed) => {
    const image = new Image();
    image.onload = () => done(image);
    image.onerror = () => failed(new Error("read a picture of the blank"));
    image.src = url;
  });
}

// linkViews lets the links turn the bag, and marks the one that is seen.
function linkViews(table) {
  const links = Array.from(document.querySelectorAll(".views a"));
  const follow = () => {
    const view = viewOf(window.location.hash);
    if (view) {
      table.glideTo(view);
    }
  };
  links.forEach((link) => link.addEventListener("click", (event) => {
    event.preventDefault();
    if (window.location.hash === link.hash) {
      follow(); // turned away from it by hand
    } else {
      window.location.replace(link.hash);
    }
  }));
  window.addEventListener("hashchange", follow);
  table.watch((camera) => links.forEach((link) => {
    const view = viewOf(link.hash);
    const same = Math.abs(turned(view.azimuth - camera.azimuth)) < 1e-3 && Math.abs(view.elevation - camera.elevation) < 1e-3;
    if (same) {
      link.setAttribute("aria-current", "true");
    } else {
      link.removeAttribute("aria-current");
    }
  }));
}

// dropHint takes the hint away once the bag was turned.
function dropHint(table) {
  const hint = byId("hint");
  let first = null;
  table.watch((camera) => {
    first = first || camera;
    if (camera !== first) {
      hint.classList.add("gone");
    }
  });
}

function begin() {
  const canvas = byId("bag"), bag = JSON.parse(byId("data").textContent);
  byId("print").hidden = false;
  byId("print").addEventListener("click", () => window.print());
  const wanted = bag.textures.map((texture) => texture && load(texture.url));
  return Promise.all(wanted).then((pictures) => {
    const table = tableOf(canvas, byId("foot"), bag, meshOf(bag.mesh), pictures);
    if (!table) {
      throw new Error("no graphics");
    }
    handOf(canvas, table);
    table.watch(() => document.documentElement.classList.add("turning"));
    linkViews(table);
    table.turnTo(viewOf(window.location.hash) || slant);
    dropHint(table);
    if (window.ResizeObserver) {
      new ResizeObserver(table.order).observe(canvas);
    }
  });
}

begin().catch(() => window.excuse());
