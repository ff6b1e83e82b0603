
// A walk over the cells by keys. The pictures are one stop of the tab key; inside, keys move.
class Walk {
  static #steps = {
    ArrowLeft: { x: -1 }, ArrowRight: { x: 1 }, ArrowUp: { y: -1 }, ArrowDown: { y: 1 },
    PageUp: { z: 1 }, PageDown: { z: -1 },
  };

  // `deskOf` tells the junction that is walked over.
  constructor(deskOf, pane) {
    this.deskOf = deskOf;
    pane.addEventListener("keydown", (event) => this.#key(event));
  }

  #key(event) {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const desk = this.deskOf();
    const { playback } = desk;
    const place = playback.place(desk.cursor);
    const step = Walk.#steps[event.key];
    if (step) {
      const to = { x: place.x + (step.x ?? 0), y: place.y + (step.y ?? 0), z: place.z + (step.z ?? 0) };
      if (playback.isInside(to)) desk.look(playback.cell(to));
      else desk.say("the drawing ends here");
    } else if (event.key === "Home" || event.key === "End") {
      desk.look(playback.cell({ ...place, x: event.key === "Home" ? 0 : playback.width - 1 }));
    } else if (event.key === "Enter") {
      desk.release(desk.cursor);
    } else {
      return;
    }
    event.preventDefault();
  }
}

// "level 2, row 3, column 4: open, a flow of strength 5, current east".
function cellWords(desk, cell) {
  const { playback } = desk;
  const { data } = playback;
  const pool = desk.shownPool;
  const fill = playback.fillOf[cell];
  const told = data.fills[fill];
  const parts = [told.when && !playback.isPowered(pool, fill) ? told.off : told.on];
  const [, , water] = data.looks[desk.water.frames[desk.water.at][cell]];
  if (water) parts.push(water);
  if (playback.ports.has(cell)) parts.push(playback.ports.get(cell));
  if (told.when) parts.push(`switched: ${told.on} when ${told.when}, else ${told.off}`);
  const found = data.notes.flatMap(({ cells }, number) => (cells.includes(cell) ? [number + 1] : []));
  if (found.length > 0) parts.push(`finding ${found.join(", ")}`);
  return `${placeWords(playback.place(cell))}: ${parts.join(", ")}`;
}
