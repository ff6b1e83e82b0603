
// Water on its way, step by step: the fields of one run, forward and back.
class WaterSteps {
  constructor(desk) {
    this.desk = desk;
    this.clockwork = new Clockwork();
    this.status = element("p", { class: "status" });
    this.play = button("Play", () => this.#playOrHalt());
    this.buttons = {
      start: button("Start", () => this.go(0)),
      back: button("Back", () => this.go(this.at - 1)),
      on: button("On", () => this.go(this.at + 1)),
      rest: button("Settled", () => this.go(this.last)),
    };
    const { start, back, on, rest } = this.buttons;
    this.element = element("section", { class: "water-steps" }, element("h3", {}, "Water"),
                           element("div", { class: "row", role: "group", "aria-label": "steps of the water" },
                                   start, back, this.play, on, rest),
                           this.status);
  }

  get last() {
    return this.frames.length - 1;
  }

  get isSettled() {
    return this.at === this.last;
  }

  // `before`: the node the water comes from; null where it is let into the dry drawing.
  begin(before, event, run) {
    this.clockwork.stop();
    const { playback } = this.desk;
    this.before = before;
    this.event = event;
    const start = before === null ? new Uint16Array(playback.cellCount) : playback.field(before);
    this.frames = playback.frames(start, run);
    this.at = this.last;
  }

  // At a node without a way to it.
  rest(node) {
    this.clockwork.stop();
    this.before = null;
    this.event = null;
    this.frames = [this.desk.playback.field(node)];
    this.at = 0;
  }

  go(at) {
    this.clockwork.stop();
    this.#show(at);
  }

  // From the moment before the event on; at once settled where motion is not wanted.
  run() {
    if (wantsLessMotion() || this.last < 2) {
      this.#show(this.last);
      return;
    }
    this.#show(1);
    const { step_ticks: ticks, ticks_per_second: second } = this.desk.playback.data;
    this.clockwork.start(Math.max(80, (1000 * ticks) / second), () => {
      this.#show(this.at + 1);
      return !this.isSettled;
    });
    this.update();
  }

  #playOrHalt() {
    if (!isEnabled(this.play)) return;
    if (this.clockwork.isGoing) this.clockwork.stop();
    else this.run();
    this.update();
  }

  #show(at) {
    const next = Math.min(this.last, Math.max(0, at));
    if (next === this.at && at !== next) return;
    this.at = next;
    this.desk.showWater();
  }

  words() {
    if (this.last === 0) return "settled";
    const begin = this.before === null ? "dry, before the water is let in" : "as it was before the change";
    if (this.at === 0) return begin;
    const { step_ticks: ticks, ticks_per_second: second } = this.desk.playback.data;
    const time = (this.at - 1) * ticks;
    const moment = `step ${this.at - 1} of ${this.last - 1}, after ${time} ticks (${time / second} s)`;
    if (!this.isSettled) return moment;
    const isRestless = this.desk.playback.isRestless(this.desk.playback.pool(this.desk.node));
    return `${isRestless ? "never comes to rest" : "settled"}: ${moment}`;
  }

  update() {
    this.status.textContent = this.words();
    this.play.textContent = this.clockwork.isGoing ? "Halt" : "Play";
    enable(this.play, this.last > 0);
    for (const control of [this.buttons.start, this.buttons.back]) enable(control, this.at > 0);
    for (const control of [this.buttons.on, this.buttons.rest]) enable(control, !this.isSettled);
  }
}
