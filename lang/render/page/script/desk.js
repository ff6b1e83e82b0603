
// One junction of the page with all that is shown of it: the state it stands in, the water on its
// way, the cell that is looked at, the body that travels.
class Desk {
  constructor(number, data, sources, address) {
    this.number = number;
    this.sources = sources;
    this.address = address;
    this.section = document.getElementById(`part-${number}`);
    this.playback = new Playback(data);
    this.node = 0;
    this.profile = 0;
    this.cursor = 0;
    this.marked = [];
    if (this.playback.hasLevels) this.#furnish();
  }

  #furnish() {
    this.levels = this.section.querySelector(".levels");
    this.picture = new Picture(this.playback, this.levels);
    this.water = new WaterSteps(this);
    this.travel = new Travel(this);
    this.bench = new Bench(this);
    this.section.querySelector(".bench").append(...this.bench.parts);
    this.spoken = element("p", { class: "spoken", role: "status" });
    this.levels.before(this.spoken);
    this.#makeWalkable();
    this.#furnishRows();
    this.#furnishNotes();
    this.restore();
  }

  #makeWalkable() {
    const keys = `keys-${this.number}`;
    const name = this.playback.data.name;
    for (const [attribute, value] of Object.entries({
      tabindex: "0", role: "application", "aria-label": `the cells of ${name}`, "aria-describedby": keys }))
      this.levels.setAttribute(attribute, value);
    this.levels.after(element("p", { class: "keys quiet", id: keys },
      "Arrow keys walk over the cells, Page Up and Page Down change the level, Home and End go to the ends of "
      + "a row, Enter releases a body."));
    new Walk(() => this, this.levels);
    this.levels.addEventListener("focus", () => {
      if (this.levels.matches(":focus-visible")) this.look(this.cursor);
    });
    this.levels.addEventListener("pointermove", (event) => this.#hover(this.picture.cellAt(event)));
    this.levels.addEventListener("pointerleave", () => this.#hover(null));
    this.levels.addEventListener("click", (event) => {
      const cell = this.picture.cellAt(event);
      if (cell !== null) this.look(cell);
    });
  }

  #hover(cell) {
    if (cell === this.hovered) return;
    this.hovered = cell;
    this.sources.light(this.number, cell ?? this.cursor);
    this.picture.showCells("lit", cell === null ? [] : [cell]);
    this.section.classList.toggle("is-hovered", cell !== null);
    if (cell !== null) this.say(cellWords(this, cell));
  }

  // Cells that the text speaks of.
  light(cells) {
    this.picture.showCells("lit", cells);
  }

  #furnishRows() {
    for (const row of this.section.querySelectorAll("tr[data-row]")) {
      const node = () => this.#nodeOf(row.dataset.row);
      if (node() === null) continue;
      row.append(element("td", { class: "act" },
        button("Set", () => this.go(node()), { "aria-label": `Set the signals so: ${this.#rowWords(row)}` })));
    }
    for (const head of this.section.querySelectorAll(".tables thead tr"))
      if (head.closest("table").querySelector("td.act")) head.append(element("th", { class: "act" }, "levers"));
  }

  #rowWords(row) {
    const names = this.playback.data.columns.map((signal) => this.playback.data.signals[signal].name);
    return names.map((name, i) => `${name} ${row.children[i].textContent}`).join(", ") || "nothing to set";
  }

  #fits(row, node) {
    return this.playback.data.columns.every((signal, i) =>
      row[i] === "-" || (row[i] === "1") === this.playback.isOn(node, signal));
  }

  // Of the nodes of a row the one with the fewest changes from here; null where there is none.
  #nodeOf(row) {
    let best = null, fewest = Infinity;
    const { playback } = this;
    for (let node = 0; node < playback.nodeCount; ++node) {
      if (!this.#fits(row, node)) continue;
      const changes = playback.data.columns.filter((s) => playback.isOn(node, s) !== playback.isOn(this.node, s));
      if (changes.length < fewest) [best, fewest] = [node, changes.length];
    }
    return best;
  }

  #furnishNotes() {
    this.playback.data.notes.forEach((note, number) => {
      const item = document.getElementById(`note-${this.number}-${number}`);
      if (note.cells.length === 0 && !note.flips) return;
      item.append(element("div", { class: "row" },
        button("Show it in the levels", () => this.#showNote(note), {
          "aria-label": `Show it in the levels: finding ${number + 1}` })));
    });
  }

  #showNote(note) {
    const { inputs } = this.playback.data;
    const node = note.flips && this.playback.walk(note.flips.map((signal) => inputs.indexOf(signal)));
    if (node !== null) this.go(node);
    this.mark(note.cells);
    this.levels.focus({ preventScroll: note.cells.length > 0 });
    if (note.cells.length > 0) this.look(note.cells[0]);
  }

  mark(cells) {
    this.marked = cells;
    this.picture.showCells("marked", cells);
  }

  say(words) {
    this.spoken.textContent = words;
  }

  look(cell) {
    this.sources.walked = this;
    this.cursor = cell;
    this.picture.showCells("cursor", [cell]);
    this.sources.light(this.number, cell, true);
    this.picture.reveal(cell);
    this.say(cellWords(this, cell));
    this.remember();
  }

  flip(event) {
    const next = this.playback.next(this.node, event);
    if (next === none) return;
    const before = this.node;
    const run = this.playback.run(before, event);
    this.node = next;
    this.travel.clear();
    this.mark([]);
    if (run) this.water.begin(before, event, run);
    else this.water.rest(next);
    this.bench.update();
    this.water.run();
    const signal = this.playback.data.signals[this.playback.data.inputs[event]];
    this.say(`${signal.name} ${this.playback.isOn(next, this.playback.data.inputs[event]) ? signal.on : signal.off}`
             + `${run ? "" : "; no cell changes"}`);
  }

  // By hand: of two revisions the other one does the same, where it has such an input.
  press(event) {
    this.flip(event);
    const { data } = this.playback;
    const input = data.inputs[event];
    this.twin?.follow(data.signals[input].name, this.playback.isOn(this.node, input));
  }

  follow(name, isOn) {
    const { data } = this.playback;
    const event = data.inputs.findIndex((signal) => data.signals[signal].name === name);
    if (event !== none && this.playback.isOn(this.node, data.inputs[event]) !== isOn) this.flip(event);
  }

  // To a node at once.
  go(node) {
    this.node = node;
    this.travel.clear();
    this.mark([]);
    if (node === 0) this.water.begin(null, null, this.playback.data.runs[this.playback.data.filling]);
    else this.water.rest(node);
    this.bench.update();
    this.showWater();
  }

  choose(profile) {
    this.profile = profile;
    this.travel.clear();
    this.bench.update();
    this.showBody();
    this.remember();
  }

  release(cell, move = null) {
    if (!this.water.isSettled) this.water.go(this.water.last);
    this.travel.release(cell, move);
    this.remember();
  }

  takeAway() {
    this.travel.clear();
    this.showBody();
    this.remember();
    this.say("the body is taken away");
  }

  showBody() {
    const { travel, picture } = this;
    const profile = this.playback.data.bodies[this.profile];
    if (!travel.isUnderWay) picture.showBody(null, profile, null);
    else picture.showBody(travel.stops[travel.at].place, profile,
                          travel.stops.slice(0, travel.at + 1).map(({ place }) => place));
  }

  // Before the first step the cells still stand as they did.
  get shownPool() {
    const { at, last, before } = this.water;
    return this.playback.pool(at === 0 && last > 0 && before !== null ? before : this.node);
  }

  showWater() {
    const { water } = this;
    if (!water.isSettled) this.travel.clear();
    this.picture.showField(water.frames[water.at]);
    this.picture.showSetting(this.shownPool);
    water.update();
    this.showBody();
    for (const row of this.section.querySelectorAll("tr[data-row]")) {
      const isNow = this.#fits(row.dataset.row, this.node);
      if (isNow) row.setAttribute("aria-current", "true");
      else row.removeAttribute("aria-current");
    }
    this.remember();
  }

  #key(word) {
    return `${this.playback.data.label}.${word}`;
  }

  #names(events) {
    return events.map((event) => this.playback.data.signals[this.playback.data.inputs[event]].name).join(",");
  }

  // Puts what is shown into the address.
  remember() {
    if (this.isRestoring) return;
    const { address, water, travel, playback } = this;
    const isOnTheWay = !water.isSettled;
    const events = isOnTheWay && water.event !== null
      ? [...playback.path(water.before), water.event] : playback.path(this.node);
    address.put(this.#key("do"), this.#names(events));
    address.put(this.#key("step"), isOnTheWay ? String(water.at) : null);
    address.put(this.#key("at"), this.cursor === 0 ? null : placeCode(playback.place(this.cursor)));
    address.put(this.#key("body"), this.profile === 0 ? null : playback.data.bodies[this.profile].name);
    address.put(this.#key("from"), travel.isUnderWay ? placeCode(playback.place(travel.cell)) : null);
    address.put(this.#key("move"), travel.isUnderWay ? String(travel.at) : null);
  }

  #cellOf(code) {
    const [x, y, z] = (code ?? "").split(" ").map(Number);
    const place = { x, y, z };
    return [x, y, z].every(Number.isInteger) && this.playback.isInside(place) ? this.playback.cell(place) : null;
  }

  #eventsOf(names) {
    const { inputs, signals } = this.playback.data;
    return names.split(",").filter(Boolean)
      .map((name) => inputs.findIndex((signal) => signals[signal].name === name));
  }

  // What the address says, as far as it fits this design.
  restore() {
    const { address, playback } = this;
    const read = (word) => address.get(this.#key(word));
    const events = this.#eventsOf(read("do") ?? "");
    const node = playback.walk(events);
    const step = Number(read("step") ?? NaN);
    const from = this.#cellOf(read("from"));
    const cursor = this.#cellOf(read("at"));
    const profile = playback.data.bodies.findIndex(({ name }) => name === read("body"));
    this.isRestoring = true;
    if (profile > 0) this.choose(profile);
    if (this.bench.profiles) this.bench.profiles.value = String(this.profile);
    if (node !== null && Number.isInteger(step) && events.length > 0) {
      this.go(playback.walk(events.slice(0, -1)));
      this.flip(events.at(-1));
      this.water.go(step);
    } else {
      this.go(node ?? 0);
      if (Number.isInteger(step)) this.water.go(step);
    }
    if (cursor !== null) this.cursor = cursor;
    if (from !== null) this.release(from, Number(read("move") ?? 0));
    this.isRestoring = false;
  }
}
