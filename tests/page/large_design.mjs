// A design of 24 x 24 x 4 cells with 8 levers, of our own invention: the size that a page must bear
// in 300 kB. Each lever sets a source free on one open floor with pillars; the sources stand so near to each
// other that the water of each meddles with that of its neighbours.
export function largeDesign() {
  const levers = Array.from({ length: 8 }, (_, i) => `gate${i}`);
  const size = 24;
  const level = (mark) => Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => mark(x, y)));
  const ground = level(() => "X");
  const floor = level((x, y) => ((x * 5 + y * 3) % 11 === 0 ? "X" : "_"));
  const heads = level((x, y) => floor[y][x]);
  const roof = level((x, y) => (x % 7 === 3 && y % 5 === 1 ? "_" : "X"));
  for (const [x, y] of [[0, 0], [21, 2], [2, 21], [22, 20]]) floor[y][x] = "w";
  levers.forEach((_, i) => {
    floor[6 + 5 * (i % 3)][3 + 6 * Math.floor(i / 3)] = String(i);
    floor[9 + 5 * (i % 3)][5 + 6 * Math.floor(i / 3)] = String.fromCharCode(97 + i);
  });
  floor[0][1] = "I";
  floor[10][23] = "K";
  floor[23][12] = "P";
  for (const [x, y] of [[1, 0], [23, 10], [12, 23]]) heads[y][x] = "_";
  const drawn = (rows, z) => `  level ${z} { ${rows.map((row) => `|${row.join("")}|`).join("\n            ")} }`;
  return `leat 1

signals {
${levers.map((name) => `  lever ${name}`).join("\n")}
}

marks {
  X  rock
  _  open
  w  water
${levers.map((name, i) => `  ${i}  water when ${name} else open`).join("\n")}
${levers.map((name, i) => `  ${String.fromCharCode(97 + i)}  rock when ${name} else open`).join("\n")}
  I  inlet millhouse
  K  outlet kiln
  P  outlet press
}

junction large "eight levers on one floor" {
${[ground, floor, heads, roof].map(drawn).join("\n")}
}
`;
}

if (process.argv[1] === new URL(import.meta.url).pathname) process.stdout.write(largeDesign());
