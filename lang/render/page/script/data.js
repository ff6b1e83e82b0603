"use strict";

// The page's data, deflated and in base64 in the element #data (docs/schemas/leat-page.schema.json).
async function readData() {
  const text = document.getElementById("data").textContent;
  const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate"));
  return JSON.parse(await new Response(stream).text());
}

const none = -1;

// A body's position is told by one number: the cell times 25, and what the body remembers.
const memories = 25;
const nothingRemembered = 20;

// One junction or works: what was solved of it, put together from the differences it is kept as.
// Cells are numbered by x, then y, then z; nodes are the settled states, the first one as built.
class Playback {
  constructor(data) {
    this.data = data;
    [this.width, this.depth, this.height] = data.size;
    this.cellCount = this.width * this.depth * this.height;
    this.hasLevels = data.detail !== "nothing";
    if (!this.hasLevels) return;
    this.events = data.inputs.length;
    this.nodeCount = data.nodes.pool.length;
    this.fillOf = this.#fills();
    this.switched = this.#switchedCells();
    this.ports = this.#ports();
    this.fields = new Map();
    this.stanceLists = new Map();
  }

  place(cell) {
    const row = Math.floor(cell / this.width);
    return { x: cell % this.width, y: row % this.depth, z: Math.floor(row / this.depth) };
  }

  cell({ x, y, z }) {
    return (z * this.depth + y) * this.width + x;
  }

  isInside({ x, y, z }) {
    return x >= 0 && y >= 0 && z >= 0 && x < this.width && y < this.depth && z < this.height;
  }

  pool(node) {
    return this.data.nodes.pool[node];
  }

  isOn(node, signal) {
    return this.data.nodes.signals[node][signal] === "1";
  }

  next(node, event) {
    return this.data.nodes.next[node * this.events + event];
  }

  run(node, event) {
    const number = this.data.nodes.run[node * this.events + event];
    return number === none ? null : this.data.runs[number];
  }

  // The events from as built to a node, a shortest list.
  path(node) {
    const events = [];
    for (; this.data.nodes.parent[node] !== none; node = this.data.nodes.parent[node])
      events.unshift(this.data.nodes.event[node]);
    return events;
  }

  // Where events lead; null where one of them does not come to rest.
  walk(events, node = 0) {
    for (const event of events) {
      node = event === none ? none : this.next(node, event);
      if (node === none || node === undefined) return null;
    }
    return node;
  }

  isPowered(pool, fill) {
    return this.data.pools.setting[pool][fill] === "1";
  }

  isRestless(pool) {
    return this.data.pools.restless.includes(pool);
  }

  // How each cell's water looks at a node, as numbers of looks.
  field(node) {
    const pool = this.pool(node);
    if (!this.fields.has(pool)) {
      const parent = this.data.nodes.parent[node];
      const isFirst = parent === none;
      const start = isFirst ? new Uint16Array(this.cellCount) : this.field(parent);
      const run = isFirst ? this.data.runs[this.data.filling]
                          : this.run(parent, this.data.nodes.event[node]) ?? [];
      this.fields.set(pool, this.frames(start, run).at(-1));
    }
    return this.fields.get(pool);
  }

  // The fields of a run, the one before it first.
  frames(start, run) {
    const frames = [start];
    for (const patch of run) {
      const field = frames.at(-1).slice();
      this.#each(patch, (at, to) => { field[at] = to; });
      frames.push(field);
    }
    return frames;
  }

  // What a body does at each position in a pool: a map from positions to numbers of stances.
  stances(pool, profile) {
    const key = pool * this.data.bodies.length + profile;
    if (!this.stanceLists.has(key)) {
      const parent = this.data.pools.parent[pool];
      const list = new Map(parent === none ? [] : this.stances(parent, profile));
      this.#each(this.data.pools.stances[key], (at, to) => list.set(at, to));
      this.stanceLists.set(key, list);
    }
    return this.stanceLists.get(key);
  }

  // [verdict, words, outlets...] of a body from an inlet.
  fate(pool, inlet, profile) {
    const { bodies, inlets, pools } = this.data;
    const number = (pool * inlets.length + inlet) * bodies.length + profile;
    return pools.fates[pools.fate[number]];
  }

  #each(patch, visit) {
    const list = this.data.patches[patch];
    let at = 0;
    for (let i = 0; i < list.length; i += 2) {
      at += list[i];
      visit(at, list[i + 1]);
    }
  }

  #fills() {
    const fills = new Uint16Array(this.cellCount);
    let at = 0;
    for (let i = 0; i < this.data.cells.length; i += 2) {
      fills.fill(this.data.cells[i], at, at + this.data.cells[i + 1]);
      at += this.data.cells[i + 1];
    }
    return fills;
  }

  #switchedCells() {
    const cells = [];
    this.fillOf.forEach((fill, cell) => {
      if (this.data.fills[fill].signs) cells.push(cell);
    });
    return cells;
  }

  #ports() {
    const words = new Map();
    for (const [list, role] of [[this.data.inlets, "inlet"], [this.data.outlets, "outlet"]]) {
      for (const port of list) {
        for (const cell of port.cells) words.set(cell, `${role} ${port.name}`);
      }
    }
    return words;
  }
}
