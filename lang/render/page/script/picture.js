
const cellSize = 40;

// The levels of one junction: draws what changes into the pictures that stand in the page.
class Picture {
  constructor(playback, container) {
    this.playback = playback;
    this.container = container;
    this.levels = new Map();
    for (const svg of container.querySelectorAll("svg[data-level]")) this.#adopt(svg);
    this.looks = null;
    this.water = new Map();
  }

  #adopt(svg) {
    const layers = {};
    for (const name of ["lit", "trail", "marked", "body", "cursor"]) {
      layers[name] = shape("g", { class: name });
      svg.append(layers[name]);
    }
    const water = svg.querySelector("g.water");
    water.replaceChildren();
    this.levels.set(Number(svg.dataset.level),
                    { svg, water, switched: svg.querySelector("g.switched"), ...layers });
  }

  #use(sign, { x, y }) {
    return shape("use", { href: `#${this.playback.data.prefix}${sign}`, x: x * cellSize, y: y * cellSize });
  }

  // Only cells whose look has changed are drawn anew.
  showField(field) {
    for (let cell = 0; cell < field.length; ++cell) {
      if (this.looks ? this.looks[cell] === field[cell] : field[cell] === 0) continue;
      for (const sign of this.water.get(cell) ?? []) sign.remove();
      const place = this.playback.place(cell);
      const [ground, current] = this.playback.data.looks[field[cell]];
      const signs = [ground, current].filter(Boolean).map((sign) => this.#use(sign, place));
      this.levels.get(place.z).water.append(...signs);
      this.water.set(cell, signs);
    }
    this.looks = field;
  }

  showSetting(pool) {
    for (const level of this.levels.values()) level.switched.replaceChildren();
    for (const cell of this.playback.switched) {
      const fill = this.playback.fillOf[cell];
      const isPowered = this.playback.isPowered(pool, fill);
      const place = this.playback.place(cell);
      const sign = this.playback.data.fills[fill].signs[isPowered ? 0 : 1];
      const signs = [sign, isPowered ? "k-on" : "k-off"].filter(Boolean);
      this.levels.get(place.z).switched.append(...signs.map((one) => this.#use(one, place)));
    }
  }

  #frame({ x, y }, attributes) {
    return shape("rect", { x: x * cellSize + 2, y: y * cellSize + 2, width: cellSize - 4,
                           height: cellSize - 4, rx: 4, ...attributes });
  }

  // Frames around cells, in the layer of that name.
  showCells(layer, cells) {
    for (const level of this.levels.values()) level[layer].replaceChildren();
    for (const cell of cells) {
      const place = this.playback.place(cell);
      this.levels.get(place.z)?.[layer].append(this.#frame(place, {}));
    }
    for (const level of this.levels.values())
      level.svg.closest(".level").classList.toggle(`has-${layer}`, level[layer].hasChildNodes());
  }

  // A body of so many cells with its feet at a place, and the way it has before and behind it.
  showBody(place, profile, trail) {
    for (const level of this.levels.values()) {
      level.body.replaceChildren();
      level.trail.replaceChildren();
    }
    if (trail) this.#showTrail(trail, profile.footprint);
    if (!place) return;
    for (let up = 0; up < profile.height; ++up) {
      const level = this.levels.get(place.z + up);
      const reach = (profile.footprint * cellSize) / 2;
      const middle = { cx: place.x * cellSize + reach, cy: place.y * cellSize + reach };
      level?.body.append(shape("circle", { class: up === 0 ? "feet" : "head", r: reach * 0.62, ...middle }));
    }
  }

  #showTrail(places, footprint) {
    const middle = (place) =>
      `${(place.x + footprint / 2) * cellSize} ${(place.y + footprint / 2) * cellSize}`;
    places.forEach((place, i) => {
      const level = this.levels.get(place.z);
      if (!level) return;
      const before = places[i - 1];
      const path = before && before.z === place.z ? `M${middle(before)}L${middle(place)}`
                                                  : `M${middle(place)}h0`;
      level.trail.append(shape("path", { d: path }));
    });
  }

  // The cell under a pointer; null beside the pictures.
  cellAt(event) {
    const svg = event.target.closest?.("svg[data-level]");
    const matrix = svg?.getScreenCTM();
    if (!matrix) return null;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const place = { x: Math.floor(point.x / cellSize), y: Math.floor(point.y / cellSize),
                    z: Number(svg.dataset.level) };
    return this.playback.isInside(place) ? this.playback.cell(place) : null;
  }

  // Brings the level of a cell into the window.
  reveal(cell) {
    const { z } = this.playback.place(cell);
    this.levels.get(z)?.svg.closest(".level").scrollIntoView({
      block: "nearest", behavior: wantsLessMotion() ? "auto" : "smooth" });
  }
}
