
// The text of the design beside the pictures: its glyphs know their cells, its lines the marks
// they declare.
class Sources {
  constructor(parts) {
    this.glyphs = new Map();   // "file line column" to what stands there
    this.glyphOf = parts.map(() => new Map());  // by part: from cells to glyphs
    this.lines = new Map();
    parts.forEach((part, number) => this.#gather(part, number));
    for (const pre of document.querySelectorAll("pre.text")) this.#lay(pre);
    this.lit = [];
  }

  #gather(part, number) {
    const list = part.data.glyphs ?? [];
    for (let i = 0; i < list.length; i += 6) {
      const [cell, count, file, line, column, step] = list.slice(i, i + 6);
      for (let k = 0; k < count; ++k) this.#note(number, cell + k, file, line, column + k * step);
    }
    (part.data.fills ?? []).forEach((fill, id) => {
      if (!fill.line) return;
      const key = fill.line.join(" ");
      if (!this.lines.has(key)) this.lines.set(key, []);
      this.lines.get(key).push({ part: number, fill: id });
    });
  }

  #note(part, cell, file, line, column) {
    const key = `${file} ${line} ${column}`;
    if (!this.glyphs.has(key)) this.glyphs.set(key, { file, line, column, cells: [], span: null });
    const glyph = this.glyphs.get(key);
    glyph.cells.push({ part, cell });
    this.glyphOf[part].set(cell, glyph);
  }

  // Each line becomes an element, each glyph of a drawing another one inside it.
  #lay(pre) {
    const file = Number(pre.dataset.file);
    const byLine = new Map();
    for (const glyph of this.glyphs.values()) {
      if (glyph.file !== file) continue;
      if (!byLine.has(glyph.line)) byLine.set(glyph.line, []);
      byLine.get(glyph.line).push(glyph);
    }
    const lines = pre.textContent.replace(/\n$/, "").split("\n");
    pre.replaceChildren(...lines.map((text, number) => {
      const line = element("span", { class: "line-of-text" });
      line.cells = this.lines.get(`${file} ${number}`) ?? null;
      if (line.cells) line.classList.add("declares");
      this.#fill(line, text, byLine.get(number) ?? []);
      line.append("\n");
      return line;
    }));
    pre.classList.add("laid");
  }

  #fill(line, text, glyphs) {
    glyphs.sort((a, b) => a.column - b.column);
    let at = 0;
    for (const glyph of glyphs) {
      const letter = String.fromCodePoint(text.codePointAt(glyph.column) ?? 32);
      line.append(text.slice(at, glyph.column));
      glyph.span = element("span", { class: "glyph" }, letter);
      glyph.span.glyph = glyph;
      line.append(glyph.span);
      at = glyph.column + letter.length;
    }
    line.append(text.slice(at));
  }

  // Lights the glyph of a cell up; scrolls the text to it where asked, never the page.
  light(part, cell, isShown = false) {
    for (const span of this.lit) span.classList.remove("lit");
    this.lit = [];
    const span = cell === null ? null : this.glyphOf[part].get(cell)?.span;
    if (!span) return;
    span.classList.add("lit");
    this.lit = [span];
    if (!isShown) return;
    const pane = span.closest(".sources");
    const offset = span.getBoundingClientRect().top - pane.getBoundingClientRect().top;
    if (offset < 0 || offset > pane.clientHeight - 24) pane.scrollTop += offset - pane.clientHeight / 2;
  }
}
