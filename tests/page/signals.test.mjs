// Every lever of a page against `leat table`, every water against `leat show`.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { closed, json, opened, pageOf, root } from "./browser.mjs";

after(closed);

const example = (name) => `${root}examples/${name}.leat`;

// What the page says of its inlets.
const routesShown = (page) => page.$$eval(".routes li", (lines) => lines.map(({ dataset }) => ({
  inlet: dataset.inlet, verdict: dataset.verdict, outlets: dataset.outlets.split(" ").filter(Boolean) })));

const switchesOf = (page) => page.$$eval("button.switch", (list) => list.map((one) => ({
  name: one.querySelector(".name").textContent, isOn: one.getAttribute("aria-checked") === "true",
  words: one.querySelector(".state").textContent })));

// Every combination once, one flip after the other: the codes of F. Gray.
function* flips(count) {
  for (let n = 1; n < 2 ** count; ++n) yield Math.log2(n & -n);
}

for (const name of ["switched_lift", "unsafe_switch", "sorter_of_eight"]) {
  test(`${name}: every combination of levers shows the outlets of the table`, async () => {
    const { page } = await opened(pageOf(example(name)));
    const [{ rows }] = json("table", "--full", example(name)).junctions;
    const seen = new Set();
    const compare = async () => {
      const switches = await switchesOf(page);
      const row = rows.find(({ assignment }) => switches.every(({ name: lever, isOn }) => assignment[lever] === isOn));
      for (const { words, isOn } of switches) assert.equal(words, isOn ? "on" : "off");
      assert.deepEqual(await routesShown(page),
                       row.routes.map(({ inlet, verdict, outlets }) => ({ inlet, verdict, outlets })));
      seen.add(JSON.stringify(row.assignment));
    };
    await compare();
    for (const lever of flips((await switchesOf(page)).length)) {
      await page.locator("button.switch").nth(lever).click();
      await compare();
    }
    assert.equal(seen.size, rows.length);
  });
}

// The water that is drawn: by "x y z", its sign.
const waterShown = (page) => page.$$eval("svg[data-level]", (levels) => Object.fromEntries(levels.flatMap((svg) =>
  [...svg.querySelectorAll("g.water use[href^='#w-']")].map((use) => [
    `${use.getAttribute("x") / 40} ${use.getAttribute("y") / 40} ${svg.dataset.level}`,
    use.getAttribute("href").slice(3)]))));

function waterOf(...words) {
  const [{ cells }] = json("show", ...words).junctions;
  return Object.fromEntries(cells.map(({ at, strength, falling, source }) => [
    at.join(" "), falling ? "falling" : source ? "source" : String(strength)]));
}

const plain = (water) => Object.fromEntries(
  Object.entries(water).map(([at, sign]) => [at, sign === "placed" || sign === "formed" ? "source" : sign]));

const control = (page, words) => page.locator(".water-steps").getByRole("button", { name: words, exact: true });

for (const [name, levers] of [["unsafe_switch", ["forge", "north"]], ["switched_lift", ["up"]],
                              ["drain_memory", ["drain"]]]) {
  test(`${name}: the water steps from the old field to the new one and back`, async () => {
    const { page } = await opened(pageOf(example(name)));
    const done = [];
    for (const lever of [...levers, ...levers]) {
      const before = waterOf(example(name), "--do", done.join(","));
      done.push(lever);
      await page.getByRole("switch", { name: new RegExp(`^${lever}`) }).click();
      const settled = waterOf(example(name), "--do", done.join(","));
      assert.deepEqual(plain(await waterShown(page)), settled);
      if (JSON.stringify(settled) === JSON.stringify(before)) continue;  // the lever is idle then
      await control(page, "Start").click();
      assert.deepEqual(plain(await waterShown(page)), before);
      const fields = [];
      while ((await control(page, "On").getAttribute("aria-disabled")) !== "true") {
        await control(page, "On").click();
        fields.push(plain(await waterShown(page)));
      }
      assert.ok(fields.length > 1, "there is a way between them");
      assert.deepEqual(fields.pop(), settled);
      while (fields.length > 0) {
        await control(page, "Back").click();
        assert.deepEqual(plain(await waterShown(page)), fields.pop());
      }
      await control(page, "Settled").click();
    }
  });
}

test("the current that is drawn is the engine's", async () => {
  const { page } = await opened(pageOf(example("unsafe_switch")));
  const [{ cells }] = json("show", example("unsafe_switch")).junctions;
  const drawn = await page.$$eval("svg[data-level]", (levels) => Object.fromEntries(levels.flatMap((svg) =>
    [...svg.querySelectorAll("g.water use")].filter((use) => /^#[fe]-/.test(use.getAttribute("href"))).map((use) => [
      `${use.getAttribute("x") / 40} ${use.getAttribute("y") / 40} ${svg.dataset.level}`,
      use.getAttribute("href").slice(3)]))));
  const names = { "1 0": "e", "1 1": "se", "0 1": "s", "-1 1": "sw", "-1 0": "w", "-1 -1": "nw", "0 -1": "n", "1 -1": "ne" };
  for (const { at, current, source, falling } of cells) {
    const side = names[current.map(Math.sign).join(" ")];
    assert.equal(drawn[at.join(" ")], side ?? (source || falling ? undefined : "still"), at.join(" "));
  }
});

test("a row of the table sets the levers, and the row of the levers is marked", async () => {
  const { page } = await opened(pageOf(example("sorter_of_four")));
  const rows = page.locator("tr[data-row]");
  for (let i = 0; i < await rows.count(); ++i) {
    await rows.nth(i).getByRole("button").click();
    assert.equal(await rows.nth(i).getAttribute("aria-current"), "true");
    const told = await rows.nth(i).locator("td").allTextContents();
    const switches = await switchesOf(page);
    switches.forEach(({ isOn }, s) => assert.ok(told[s] === "any" || told[s] === (isOn ? "on" : "off")));
    const [route] = await routesShown(page);
    assert.equal(route.outlets.join(", "), told[switches.length]);
  }
});
