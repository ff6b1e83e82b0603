
// Light or dark: as the reader's system prefers, until the reader says otherwise.
function furnishTheme(address) {
  const prefersDark = matchMedia("(prefers-color-scheme: dark)");
  const isDark = () => (document.documentElement.dataset.theme ?? (prefersDark.matches ? "dark" : "light")) === "dark";
  const told = address.get("theme");
  if (told === "dark" || told === "light") document.documentElement.dataset.theme = told;
  const control = element("button", { type: "button", role: "switch", class: "theme" }, "Dark");
  const show = () => control.setAttribute("aria-checked", String(isDark()));
  control.addEventListener("click", () => {
    const theme = isDark() ? "light" : "dark";
    document.documentElement.dataset.theme = theme;
    address.put("theme", theme);
    show();
  });
  prefersDark.addEventListener("change", show);
  show();
  document.querySelector("header.top").append(control);
}

// Hovering the text lights up cells: of a glyph those drawn by it, of a mark's line those that hold it.
function furnishSources(sources, desks) {
  const pane = document.querySelector(".sources");
  const cellsAt = (target) => {
    const glyph = target.closest?.(".glyph")?.glyph;
    if (glyph) return glyph.cells;
    return (target.closest?.(".line-of-text")?.cells ?? []).flatMap(({ part, fill }) =>
      [...(desks[part].playback.fillOf ?? [])].flatMap((one, cell) => (one === fill ? [{ part, cell }] : [])));
  };
  const light = (cells) => desks.forEach((desk, part) => {
    if (desk.picture) desk.light(cells.filter((one) => one.part === part).map(({ cell }) => cell));
  });
  pane.addEventListener("pointerover", (event) => light(cellsAt(event.target)));
  pane.addEventListener("pointerleave", () => light([]));
  pane.addEventListener("click", (event) => {
    const first = event.target.closest?.(".glyph")?.glyph.cells[0];
    if (first) desks[first.part].look(first.cell);
  });
  sources.walked = desks.find((desk) => desk.picture) ?? null;
  if (sources.walked) for (const pre of pane.querySelectorAll("pre.text")) new Walk(() => sources.walked, pre);
}

async function main() {
  const { junctions } = await readData();
  const address = new Address();
  furnishTheme(address);
  const sources = new Sources(junctions.map((data) => ({ data })));
  const desks = junctions.map((data, number) => new Desk(number, data, sources, address));
  for (const desk of desks)
    desk.twin = desks.find((other) => other !== desk && other.picture && other.playback.data.name === desk.playback.data.name);
  furnishSources(sources, desks);
  addEventListener("hashchange", () => {
    address.values = new URLSearchParams(location.hash.slice(1));
    for (const desk of desks) if (desk.picture) desk.restore();
  });
  document.documentElement.classList.add("has-script");
  document.documentElement.dataset.ready = "true";
}

main();
