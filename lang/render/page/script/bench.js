
// The controls of one junction: its inputs, and what follows from them.
class Bench {
  constructor(desk) {
    this.desk = desk;
    const { data } = desk.playback;
    this.switches = data.inputs.map((signal, event) => this.#switch(data.signals[signal], event));
    this.derived = data.signals.map((signal, id) => ({ signal, id }))
      .filter(({ signal, id }) => !data.inputs.includes(id) && !Bench.#inputKinds.has(signal.kind))
      .map(({ signal, id }) => ({ id, signal, value: element("dd") }));
    this.routes = element("ul", { class: "routes" });
    this.profiles = this.#profileChoice();
    this.here = button("Release a body at the cell", () => desk.release(desk.cursor));
    this.parts = [this.#signals(), desk.water.element, this.#goals(), desk.travel.element];
  }

  static #inputKinds = new Set(["lever", "button", "plate", "clock"]);

  #switch(signal, event) {
    const state = element("span", { class: "state" });
    const control = element("button", { type: "button", role: "switch", class: "switch",
                                        click: () => this.desk.press(event) },
      element("span", { class: "knob", "aria-hidden": "true" }),
      element("span", { class: "name" }, signal.name),
      element("span", { class: "quiet" }, signal.kind), state);
    return { control, state, signal };
  }

  #signals() {
    const { data } = this.desk.playback;
    const section = element("section", { class: "signals" }, element("h3", {}, "Signals"));
    if (this.switches.length === 0 && this.derived.length === 0) {
      section.append(element("p", { class: "status" }, "Nothing switches here."));
      return section;
    }
    for (const { control } of this.switches) section.append(control);
    if (this.derived.length > 0) {
      section.append(element("dl", { class: "derived" }, ...this.derived.map(({ signal, value }) =>
        element("div", {}, element("dt", {}, `${signal.name} `, element("span", { class: "quiet" }, signal.kind)),
                value))));
    }
    if (data.inputs.length > 0)
      section.append(element("div", { class: "row" }, button("As built", () => this.desk.go(0))));
    return section;
  }

  #profileChoice() {
    const { bodies } = this.desk.playback.data;
    if (bodies.length < 2) return null;
    const choice = element("select", { change: () => this.desk.choose(Number(choice.value)) },
      ...bodies.map((body, number) => element("option", { value: number }, body.name)));
    return choice;
  }

  #goals() {
    const section = element("section", { class: "goals" }, element("h3", {}, "Bodies"));
    if (this.profiles) section.append(element("label", {}, "body ", this.profiles));
    section.append(this.routes, element("div", { class: "row" }, this.here));
    return section;
  }

  update() {
    const { playback, node } = this.desk;
    const { data } = playback;
    this.switches.forEach(({ control, state, signal }, event) => {
      const isOn = playback.isOn(node, data.inputs[event]);
      control.setAttribute("aria-checked", String(isOn));
      const canFlip = playback.next(node, event) !== none;
      state.textContent = isOn ? signal.on : signal.off;
      if (!canFlip) state.textContent += ", cannot change now: nothing would come to rest";
      enable(control, canFlip);
    });
    for (const { id, signal, value } of this.derived)
      value.textContent = playback.isOn(node, id) ? signal.on : signal.off;
    this.#showRoutes();
  }

  #showRoutes() {
    const { playback, node, profile } = this.desk;
    this.routes.replaceChildren(...playback.data.inlets.map((inlet, number) => {
      const [verdict, words, ...outlets] = playback.fate(playback.pool(node), number, profile);
      const line = element("li", {}, element("span", {}, element("b", {}, inlet.name), ` ${words} `,
                                             element("span", { class: `verdict ${verdict}` }, verdict)),
        button("Release", () => this.desk.release(inlet.cells[0]),
               { "aria-label": `Release a body at ${inlet.name}` }));
      line.dataset.inlet = inlet.name;
      line.dataset.outlets = outlets.join(" ");
      line.dataset.verdict = verdict;
      return line;
    }));
  }
}
