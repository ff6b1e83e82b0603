
// Where a body can get to from a cell, by the moves that are embedded for one water: a search over
// them, breadth first, so every way is a shortest one.
class Ways {
  constructor(playback, pool, profile, cell) {
    this.playback = playback;
    this.stances = playback.stances(pool, profile);
    this.start = cell * memories + nothingRemembered;
    this.cameBy = new Map();   // by position: the position and move before it
    this.endings = [];
    if (this.#stance(this.start)) this.#search();
  }

  get doesFit() {
    return this.cameBy.size > 0;
  }

  #stance(spot) {
    const number = this.stances.get(spot) ?? 0;
    return number === 0 ? null : this.playback.data.stances[number];
  }

  #target(spot, [words, east, south, up, memory]) {
    const { x, y, z } = this.playback.place(Math.floor(spot / memories));
    const place = { x: x + east, y: y + south, z: z + up };
    const isOut = !this.playback.isInside(place);
    return { place, words: this.playback.data.moves[words],
             spot: isOut ? null : this.playback.cell(place) * memories + memory };
  }

  #search() {
    const data = this.playback.data;
    const queue = [this.start];
    const leaders = new Map();  // by position: those that lead to it
    const ended = [];
    this.cameBy.set(this.start, null);
    for (const spot of queue) {
      const [end, outlet, ...moves] = this.#stance(spot);
      if (end !== "none") {
        this.endings.push({ spot, outlet, rank: end === "outlet" ? 0 : 2,
                            words: end === "outlet" ? data.deliveries[outlet] : data.endings[end] });
        ended.push(spot);
      }
      for (const move of moves) {
        const target = this.#target(spot, move);
        if (target.spot === null) {
          this.endings.push({ spot, outlet: none, rank: 1, words: data.endings.spill, out: target });
          ended.push(spot);
          continue;
        }
        if (!leaders.has(target.spot)) leaders.set(target.spot, []);
        leaders.get(target.spot).push(spot);
        if (this.cameBy.has(target.spot)) continue;
        this.cameBy.set(target.spot, { spot, words: target.words });
        queue.push(target.spot);
      }
    }
    this.#findLoop(queue, leaders, ended);
    this.endings.sort((a, b) => a.rank - b.rank);
  }

  // Positions from which nothing ends: there a body goes round for ever.
  #findLoop(queue, leaders, ended) {
    const ending = new Set(ended);
    for (const spot of ending) {
      for (const leader of leaders.get(spot) ?? []) ending.add(leader);
    }
    const first = queue.find((spot) => !ending.has(spot));
    if (first === undefined) return;
    this.endings.push({ spot: first, outlet: none, rank: 3, words: this.playback.data.endings.loop,
                        isLoop: true });
  }

  // The stops of the way to an ending: places, with the words of the move that led there.
  trail(ending) {
    const stops = [];
    for (let spot = ending.spot; spot !== null;) {
      const came = this.cameBy.get(spot);
      stops.unshift({ place: this.playback.place(Math.floor(spot / memories)),
                      words: came?.words ?? "is put down here" });
      spot = came?.spot ?? null;
    }
    if (ending.out) stops.push({ place: ending.out.place, words: ending.out.words });
    if (ending.isLoop) stops.push(...this.#round(ending.spot));
    return stops;
  }

  // Once round a loop.
  #round(start) {
    const stops = [];
    const seen = new Set([start]);
    for (let spot = start; ;) {
      const [, , move] = this.#stance(spot);
      const target = this.#target(spot, move);
      stops.push({ place: target.place, words: target.words });
      if (seen.has(target.spot)) return stops;
      seen.add(target.spot);
      spot = target.spot;
    }
  }
}

// A body that travels: its ways, the one it takes, and where on it it is.
class Travel {
  static #mostEndings = 8;

  constructor(desk) {
    this.desk = desk;
    this.clockwork = new Clockwork();
    this.element = element("section", { class: "travel" });
    this.clear();
  }

  get isUnderWay() {
    return this.ways !== null;
  }

  clear() {
    this.clockwork.stop();
    this.ways = null;
    this.element.replaceChildren();
  }

  release(cell, move = null) {
    const { playback, node, profile } = this.desk;
    this.clockwork.stop();
    this.cell = cell;
    this.ways = new Ways(playback, playback.pool(node), profile, cell);
    if (!this.ways.doesFit) {
      this.ways = null;
      this.element.replaceChildren(element("h3", {}, "On the way"), element("p", { class: "status" },
        `The body does not fit at ${placeWords(playback.place(cell))}.`));
      this.desk.say(this.element.lastChild.textContent);
      this.desk.showBody();
      return;
    }
    this.take(0, move);
  }

  // Sets out on the way to an ending.
  take(number, move = null) {
    this.ending = this.ways.endings[number];
    this.stops = this.ways.trail(this.ending);
    this.at = 0;
    this.#build();
    if (move !== null) this.go(move);
    else if (wantsLessMotion()) this.go(0);
    else this.play();
  }

  play() {
    this.#show(0);
    this.clockwork.start(320, () => {
      this.#show(this.at + 1);
      return this.at < this.stops.length - 1;
    });
    this.#update();
  }

  go(at) {
    this.clockwork.stop();
    this.#show(Math.min(this.stops.length - 1, Math.max(0, at)));
  }

  #show(at) {
    this.at = at;
    const stop = this.stops[at];
    const isEnd = at === this.stops.length - 1;
    this.desk.showBody();
    this.#update();
    if (!this.clockwork.isGoing || isEnd)
      this.desk.say(`${stop.words}, ${placeWords(stop.place)}${isEnd ? `. ${this.ending.words}.` : ""}`);
    this.desk.remember();
  }

  #endings() {
    const list = this.ways.endings.slice(0, Travel.#mostEndings).map((ending, number) =>
      element("li", {}, button(ending.words, () => this.take(number),
                               { "aria-pressed": String(ending === this.ending) })));
    const more = this.ways.endings.length - list.length;
    if (more > 0) list.push(element("li", {}, `and ${more} more`));
    return list;
  }

  #build() {
    const controls = this.controls = {
      start: button("Start", () => this.go(0)),
      back: button("Back", () => this.go(this.at - 1)),
      play: button("Play", () => (this.clockwork.isGoing ? this.go(this.at) : this.play())),
      on: button("On", () => this.go(this.at + 1)),
      end: button("End", () => this.go(this.stops.length - 1)),
    };
    this.log = element("ol", { class: "log", tabindex: "0", role: "group", "aria-label": "moves of the body" },
      ...this.stops.map((stop) => element("li", {}, element("code", {}, placeCode(stop.place)), ` ${stop.words}`)));
    this.verdict = element("p", { class: "status" });
    const isForked = this.ways.endings.length > 1;
    this.element.replaceChildren(
      element("h3", {}, "On the way"),
      isForked ? element("ul", { class: "endings", "aria-label": "ways it can go" }, ...this.#endings()) : "",
      element("div", { class: "row", role: "group", "aria-label": "moves of the body" },
              controls.start, controls.back, controls.play, controls.on, controls.end),
      this.verdict, this.log,
      element("div", { class: "row" }, this.#onward(), button("Take it away", () => this.desk.takeAway())));
  }

  // In a works an outlet can lead on to an inlet.
  #onward() {
    const { data } = this.desk.playback;
    const join = data.joins.find(([outlet]) => outlet === this.ending.outlet && this.ending.rank === 0);
    if (!join) return "";
    const inlet = data.inlets[join[1]];
    return button(`Go on at ${inlet.name}`, () => this.desk.release(inlet.cells[0]));
  }

  #update() {
    const last = this.stops.length - 1;
    const { start, back, play, on, end } = this.controls;
    for (const control of [start, back]) enable(control, this.at > 0);
    for (const control of [on, end]) enable(control, this.at < last);
    play.textContent = this.clockwork.isGoing && this.at < last ? "Halt" : "Play";
    this.verdict.textContent = `move ${this.at} of ${last}${this.at === last ? `: ${this.ending.words}` : ""}`;
    [...this.log.children].forEach((line, i) => {
      if (i === this.at) line.setAttribute("aria-current", "step");
      else line.removeAttribute("aria-current");
    });
    const line = this.log.children[this.at];
    this.log.scrollTop = line.offsetTop - this.log.offsetTop - this.log.clientHeight / 2;
  }
}
