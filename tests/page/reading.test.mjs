// The page as it is read: without a net, without script, by keys alone, by other eyes.
import assert from "node:assert/strict";
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { after, test } from "node:test";
import { bytesOf, closed, designOf, opened, pageOf, root, run } from "./browser.mjs";
import { largeDesign } from "./large_design.mjs";

after(closed);

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const example = (name) => `${root}examples/${name}.leat`;

async function violations(page) {
  await page.evaluate(axe);
  const { violations: found } = await page.evaluate(() => axe.run(document, {
    runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }));
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ html, failureSummary }) => `${html} ${failureSummary}`).join("\n")}`);
}

for (const name of ["unsafe_switch", "flawed_sorter", "yard"]) {
  for (const colorScheme of ["light", "dark"]) {
    test(`${name}: nothing that axe finds fault with, ${colorScheme}`, async () => {
      const { page } = await opened(pageOf(example(name)), { colorScheme });
      assert.deepEqual(await violations(page), []);
      await page.getByRole("button", { name: /^Release a body at (?!the cell)/ }).first().click();
      const show = page.getByRole("button", { name: "Show it in the levels: finding 1", exact: true }).first();
      if (await show.count() > 0) await show.click();
      assert.deepEqual(await violations(page), []);
    });
  }
}

test("the switch of the theme overrules the reader's preference, and is kept in the address", async () => {
  const path = pageOf(example("switched_lift"));
  const { page } = await opened(path, { colorScheme: "light" });
  const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const light = await ground();
  // Drawn anew in a moment that a busy machine makes longer; fails when it never is.
  const otherThan = (colour) => page.waitForFunction(
    (kept) => getComputedStyle(document.documentElement).backgroundColor !== kept, colour);
  await page.getByRole("switch", { name: /^Dark/ }).click();
  await otherThan(light);
  assert.deepEqual(await violations(page), []);
  await page.reload();
  await otherThan(light);
  assert.notEqual(await ground(), light);
});

test("a page asks for nothing, and its policy lets it ask for nothing", async () => {
  const path = pageOf(example("unsafe_switch"));
  const { page, seen } = await opened(path);
  await page.getByRole("switch").first().click();
  await page.getByRole("button", { name: "Release a body at millhouse" }).click();
  assert.deepEqual(seen.requests, [`file://${path}`]);
  assert.deepEqual(seen.faults, []);
  const refused = await page.evaluate(async () => {
    const directives = [];
    addEventListener("securitypolicyviolation", (event) => directives.push(event.effectiveDirective));
    await fetch("data:text/plain,a").catch(() => {});
    const picture = new Image();
    picture.src = "data:image/gif;base64,R0lGODlhAQABAAAAACw=";
    document.body.append(picture);
    const script = document.createElement("script");
    script.textContent = "window.hasRun = true";
    document.body.append(script);
    document.body.insertAdjacentHTML("beforeend", "<p style='color: red'>a</p>");
    await new Promise((resolve) => setTimeout(resolve, 100));
    return { directives, hasRun: window.hasRun === true };
  });
  assert.deepEqual([...new Set(refused.directives)].sort(),
                   ["connect-src", "img-src", "script-src-elem", "style-src-attr"]);
  assert.equal(refused.hasRun, false);
});

test("without script the page shows its levels, tables, findings and text", async () => {
  const { page } = await opened(pageOf(example("unsafe_switch")), { javaScriptEnabled: false });
  assert.equal(await page.locator("svg[data-level]").count(), 6);
  assert.ok(await page.locator("g.water use").count() > 20);
  assert.equal(await page.locator("tr[data-row]").count(), 3);
  assert.match(await page.locator(".note").first().textContent(), /misrouting-switch/);
  assert.match(await page.locator("pre.text").textContent(), /junction unsafe_switch/);
  assert.equal(await page.locator("button").count(), 0);
});

test("the first picture of the script is the picture without it", async () => {
  const path = pageOf(example("sorter_of_four"));
  const signs = (page) => page.$$eval("svg[data-level]", (levels) => levels.map((svg) =>
    [...svg.querySelectorAll("g.water use, g.switched use")].map((use) => use.outerHTML).sort().join("")));
  const [without, withScript] = [await opened(path, { javaScriptEnabled: false }), await opened(path)];
  assert.deepEqual(await signs(withScript.page), await signs(without.page));
});

test("everything can be done by keys, and each cell is spoken", async () => {
  const { page } = await opened(pageOf(example("unsafe_switch")));
  const focused = () => page.evaluate(() => document.activeElement.textContent.slice(0, 40));
  const press = async (...keys) => { for (const key of keys) await page.keyboard.press(key); };
  while (!(await focused()).startsWith("north")) await press("Tab");
  await press("Space");
  assert.equal(await page.getByRole("switch", { name: /^north/ }).getAttribute("aria-checked"), "true");
  assert.match(await page.locator(".spoken").textContent(), /^north on/);
  for (let i = 0; i < 60 && !(await page.evaluate(() => document.activeElement.classList.contains("levels"))); ++i)
    await press("Tab");
  await press("PageUp", "PageUp", "PageUp", "PageUp", "ArrowDown", "ArrowDown", "ArrowRight");
  assert.equal(await page.locator(".spoken").textContent(),
               "level 4, row 2, column 1: open, a flow of strength 7, current east, inlet millhouse");
  assert.equal(await page.locator("svg[data-level='4'] g.cursor rect").count(), 1);
  assert.equal(await page.locator(".glyph.lit").textContent(), "i");
  await press("Home", "ArrowLeft");
  assert.equal(await page.locator(".spoken").textContent(), "the drawing ends here");
  await press("ArrowRight", "Enter");
  assert.ok(await page.locator(".log li").count() > 5);
  await press("Tab");
  assert.equal(await page.evaluate(() => document.activeElement.classList.contains("levels")), false);
});

test("what is shown is kept in the address and comes back", async () => {
  const path = pageOf(example("unsafe_switch"));
  const { page } = await opened(path);
  await page.getByRole("switch", { name: /^forge/ }).click();
  await page.locator(".water-steps").getByRole("button", { name: "Start" }).click();
  await page.locator(".water-steps").getByRole("button", { name: "On" }).click();
  const stepped = await page.locator(".water-steps .status").textContent();
  await page.reload();
  await page.waitForSelector("html[data-ready=true]", { state: "attached" });
  assert.equal(await page.locator(".water-steps .status").textContent(), stepped);
  await page.getByRole("button", { name: "Release a body at millhouse" }).click();
  await page.locator(".travel").getByRole("button", { name: "On" }).click();
  const hash = await page.evaluate(() => location.hash);
  assert.match(hash, /unsafe_switch\.do=forge/);
  const again = await opened(path, { fragment: hash });
  assert.match(await again.page.locator(".travel .status").textContent(), /^move 1 of/);
  assert.equal(await again.page.getByRole("switch", { name: /^forge/ }).getAttribute("aria-checked"), "true");
  const odd = await opened(path, { fragment: "#unsafe_switch.do=nothing,%3Cb%3E&unsafe_switch.at=9+9&unsafe_switch.step=x" });
  assert.deepEqual(odd.seen.faults, []);
});

test("hovering the text marks the cells, hovering a cell marks its glyph", async () => {
  const { page } = await opened(pageOf(example("unsafe_switch")));
  await page.locator(".line-of-text", { hasText: "inlet  millhouse" }).hover();
  assert.equal(await page.locator("g.lit rect").count(), 1);
  const svg = page.locator("svg[data-level='3']");
  await svg.scrollIntoViewIfNeeded();
  const box = await svg.boundingBox();
  await page.mouse.move(box.x + (34 + 3.5 * 40) * 0.7, box.y + (44 + 1.5 * 40) * 0.7);
  assert.equal(await page.locator(".glyph.lit").textContent(), "n");
  assert.match(await page.locator(".spoken").textContent(), /^level 3, row 1, column 3: water, .*switched: open when north/);
});

test("a finding leads to its cells in the state in which it shows", async () => {
  const path = pageOf(example("flawed_sorter"));
  const { page } = await opened(path);
  const count = await page.locator(".note").count();
  assert.ok(count > 2);
  for (let i = 0; i < count; ++i) {
    const note = page.locator(".note").nth(i);
    const place = (await note.locator("dd").first().textContent()).match(/level (\d+), row (\d+), column (\d+)/);
    const show = note.getByRole("button");
    if (!place || await show.count() === 0) continue;
    await show.click();
    const [, z, y, x] = place;
    assert.ok(await page.locator(`svg[data-level="${z}"] g.marked rect[x="${x * 40 + 2}"][y="${y * 40 + 2}"]`).count() > 0);
    assert.match(await page.locator(".spoken").textContent(), new RegExp(`finding .*\\b${i + 1}\\b`));
  }
});

test("targets are 24 pixels at least, and a narrow window needs no scrolling sideways", async () => {
  const path = pageOf(example("flawed_sorter"));
  const { page } = await opened(path);
  await page.getByRole("button", { name: /^Release a body at (?!the cell)/ }).first().click();
  for (const control of await page.locator("button, select, summary").all()) {
    const box = await control.boundingBox();
    assert.ok(box.width >= 24 && box.height >= 24, await control.textContent());
  }
  const narrow = await opened(path, { viewport: { width: 320, height: 600 } });  // 1280 at 400 %
  assert.ok(await narrow.page.evaluate(() => document.documentElement.scrollWidth) <= 320);
});

test("printed, the page is light and has no controls", async () => {
  const { page } = await opened(pageOf(example("switched_lift")), { colorScheme: "dark" });
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  assert.equal(await page.locator(".bench").isVisible(), false);
  assert.equal(await page.locator("svg[data-level]").first().isVisible(), true);
  const ground = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  assert.equal(ground, "rgb(251, 248, 241)");
});

test("with forced colours the states of switches are still told apart", async () => {
  const { page } = await opened(pageOf(example("switched_lift")), { forcedColors: "active" });
  const control = page.getByRole("switch", { name: /^up/ });
  const knob = () => control.locator(".knob").evaluate((one) => getComputedStyle(one).backgroundColor);
  const off = await knob();
  await control.click();
  assert.notEqual(await knob(), off);
  assert.match(await control.textContent(), /on$/);
});

test("motion is wanted: the water runs by itself and comes to rest", async () => {
  const { page } = await opened(pageOf(example("switched_lift")), { reducedMotion: "no-preference" });
  await page.getByRole("switch", { name: /^up/ }).click();
  const status = page.locator(".water-steps .status");
  assert.match(await status.textContent(), /^step/);
  await page.waitForFunction(() => document.querySelector(".water-steps .status").textContent.startsWith("settled"));
});

const hostile = `</script><img src=x onerror="window.pwned=1"><!--`;

test("names and texts that look like markup do nothing", async () => {
  const quoted = hostile.replaceAll('"', "'");
  const design = designOf(`leat 1
# ${hostile} \u202e {{data}} ]]>
marks {
  <  rock
  _  open
  &  water
  >  inlet millhouse
  '  outlet kiln
}

junction hostile "${quoted}" {
  level 0 { |<&>_'<| }
  level 1 { |<____<| }
}

expect "${quoted}" {
  millhouse reaches kiln
}
`, "<img src=x onerror=alert(1)>.leat");
  const { page, seen } = await opened(pageOf(design));
  assert.equal(await page.evaluate(() => window.pwned), undefined);
  assert.equal(await page.locator("img").count(), 0);
  assert.deepEqual(seen.dialogs, []);
  assert.deepEqual(seen.faults, []);
  assert.equal(seen.requests.length, 1);
  assert.match(await page.locator(".title").textContent(), /<\/script><img src=x/);
  assert.equal(await page.locator("body > script").count(), 2);
  await page.locator(".levels").focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  assert.equal(await page.locator(".glyph.lit").textContent(), ">");
});

test("the same design gives the same bytes", () => {
  const [a, b] = [pageOf(example("sorter_of_eight")), pageOf(example("sorter_of_eight"))];
  assert.ok(bytesOf(a).equals(bytesOf(b)));
});

test("8 levers on 24 x 24 x 4 cells take at most 300 kB, with everything in it", async () => {
  const path = pageOf(designOf(largeDesign()));
  assert.ok(bytesOf(path).length <= 300_000, `${bytesOf(path).length} bytes`);
  const { page } = await opened(path);
  assert.equal(await page.locator(".left-out").count(), 0);
  assert.equal(await page.locator("button.switch").count(), 8);
});

test("what is too large is left out, and the page says so", async () => {
  const { page } = await opened(pageOf(example("butterfly"), "--junction", "butterfly"));
  assert.match(await page.locator(".left-out").first().textContent(), /^Left out: the levers/);
  assert.equal(await page.locator("button.switch").count(), 0);
  assert.ok(await page.locator(".tables").textContent());
  const size = 250;
  const wide = designOf(`leat 1
marks {
  X rock
  w water
  i inlet millhouse
  k outlet kiln
}
junction wide {
  level 0 { ${Array.from({ length: size }, (_, y) => `|${y === 1 ? "wi" + "k".repeat(1) + "X".repeat(size - 3) : "X".repeat(size)}|`).join("\n")} }
}
`);
  const large = await opened(pageOf(wide));
  assert.match(await large.page.locator(".left-out").textContent(), /62500 cells are too many/);
  assert.equal(await large.page.locator("svg[data-level]").count(), 0);
  assert.deepEqual(large.seen.faults, []);
});

test("two revisions stand side by side; only what differs is marked, and levers go together", async () => {
  const before = designOf(`leat 1
signals { lever divert }
marks {
  _ open
  w water
  g rock when divert else open
  i inlet millhouse
  k outlet kiln
}
junction lane {
  level 0 { |wi__gk| }
  level 1 { |______| }
}
`);
  const now = designOf(`leat 1
signals { lever divert }
marks {
  X rock
  _ open
  w water
  g open when divert else rock
  i inlet millhouse
  k outlet kiln
}
junction lane {
  level 0 { |wi_Xgk| }
  level 1 { |______| }
}
`);
  const path = pageOf(before, now);
  const { page, seen } = await opened(path);
  const differing = await page.$$eval("g.differs rect", (list) => list.map((one) => one.getAttribute("x")));
  assert.deepEqual(differing, ["121", "161", "121", "161"]);
  assert.match(await page.locator(".differences").textContent(), /millhouse/);
  assert.equal(await page.locator(".part").count(), 2);
  await page.getByRole("switch", { name: /^divert/ }).first().click();
  for (const control of await page.getByRole("switch", { name: /^divert/ }).all())
    assert.equal(await control.getAttribute("aria-checked"), "true");
  assert.deepEqual(seen.faults, []);
  assert.deepEqual(await violations(page), []);
  const same = await opened(pageOf(before, before));
  assert.equal(await same.page.locator("g.differs").count(), 0);
  assert.match(await same.page.locator(".differences").textContent(), /Nothing that bodies/);
});
