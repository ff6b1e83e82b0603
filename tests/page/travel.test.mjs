// Bodies that travel, against `leat follow`.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { closed, designOf, json, opened, pageOf, root, run } from "./browser.mjs";

after(closed);

const example = (name) => `${root}examples/${name}.leat`;

// The steps of the first way that leat follow tells: "x y z" and the rule in words.
function stepsTold(text) {
  const lines = text.split("\n");
  const first = lines.findIndex((line) => /^ +step +x y z/.test(line));
  const words = lines[first].indexOf("how it came there"), feet = lines[first].indexOf("its feet in");
  const last = lines.findIndex((line, i) => i > first && line.trim() === "");
  return lines.slice(first + 1, last).map((line) => ({
    at: line.slice(0, words).trim().split(/ +/).slice(1).join(" "), words: line.slice(words, feet).trim() }));
}

const movesShown = (page) => page.$$eval(".log li", (lines) => lines.map((line) => ({
  at: line.querySelector("code").textContent, words: line.lastChild.textContent.trim() })));

const travel = (page, words) => page.locator(".travel").getByRole("button", { name: words, exact: true });

for (const name of ["unsafe_switch", "switched_lift", "hairpin", "sheer_corner", "sorter_of_four"]) {
  test(`${name}: a body goes the way that leat follow tells, rule by rule`, async () => {
    const { page } = await opened(pageOf(example(name)));
    const inlet = await page.locator(".routes li").first().getAttribute("data-inlet");
    await page.getByRole("button", { name: `Release a body at ${inlet}`, exact: true }).click();
    const told = stepsTold(run("follow", example(name), "--from", inlet));
    const shown = await movesShown(page);
    assert.deepEqual(shown.slice(1), told.slice(1));
    assert.equal(shown[0].at, told[0].at);
    for (let move = 1; move < shown.length; ++move) {
      await travel(page, "On").click();
      const [x, y, z] = shown[move].at.split(" ");
      assert.equal(await page.locator(`svg[data-level="${z}"] circle.feet`).getAttribute("cx"), String(x * 40 + 20));
      const spoken = await page.locator(".spoken").textContent();
      assert.ok(spoken.startsWith(`${shown[move].words}, level ${z}, row ${y}, column ${x}`), spoken);
    }
    await travel(page, "Back").click();
    assert.match(await page.locator(".travel .status").textContent(), new RegExp(`^move ${shown.length - 2} of`));
  });
}

test("where a body can go different ways, each of them can be chosen", async () => {
  // The source by the inlet pushes to both sides of the corner.
  const design = designOf(`leat 1
marks {
  X rock
  _ open
  w water
  i inlet millhouse
  k outlet kiln
  p outlet press
}
junction fork {
  level 0 { |wi_k|
            |__XX|
            |pXXX| }
  level 1 { |____|
            |__XX|
            |_XXX| }
}
`);
  const { page } = await opened(pageOf(design));
  const [{ rows: [{ routes: [{ outlets }] }] }] = json("table", "--full", design).junctions;
  await page.getByRole("button", { name: "Release a body at millhouse" }).click();
  const endings = page.locator(".endings button");
  const told = await endings.allTextContents();
  for (const outlet of outlets) assert.ok(told.includes(`Reaches ${outlet}`), outlet);
  assert.ok(told.length > 1);
  for (let i = 0; i < await endings.count(); ++i) {
    const words = await endings.nth(i).textContent();
    await endings.nth(i).click();
    await travel(page, "End").click();
    assert.ok((await page.locator(".travel .status").textContent()).endsWith(words));
  }
});

test("a body put down where it does not fit stays away, and the page says so", async () => {
  const { page } = await opened(pageOf(example("unsafe_switch")));
  await page.getByRole("button", { name: "Release a body at the cell" }).click();
  assert.match(await page.locator(".travel").textContent(), /does not fit at level 0, row 0, column 0/);
});
