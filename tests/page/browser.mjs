// A browser for the tests, and pages of designs to look at in it.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const leat = process.env.LEAT;
if (!leat) throw new Error("LEAT names the program to be tested");

export const root = fileURLToPath(new URL("../..", import.meta.url));
export const folder = mkdtempSync(join(tmpdir(), "leat-page-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));

// What leat prints; it may find something wrong with the design.
export function run(...words) {
  try {
    return execFileSync(leat, words, { encoding: "utf8", cwd: root, stdio: ["ignore", "pipe", "pipe"] });
  } catch (fault) {
    if (fault.status === 1 || fault.status === 3) return fault.stdout;
    throw fault;
  }
}

export const json = (...words) => JSON.parse(run(...words, "--as", "json"));

let count = 0;
// The page of a design as a file; words are those of the command line.
export function pageOf(...words) {
  const path = join(folder, `page-${++count}.html`);
  run("page", ...words, "-o", path);
  return path;
}

export function designOf(text, name = `design-${++count}.leat`) {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

export const bytesOf = (path) => readFileSync(path);

// The browser may ask nobody for anything of its own, as root it cannot have its sandbox.
let browser = null;
export async function launched() {
  browser ??= await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
           "--disable-component-update", "--disable-sync"],
  });
  return browser;
}
export const closed = async () => browser?.close();

// A page opened; whatever it asks for, prints or throws is in `seen`.
export async function opened(path, { fragment = "", ...options } = {}) {
  const context = await (await launched()).newContext({
    reducedMotion: "reduce", viewport: { width: 1400, height: 1000 }, ...options });
  const page = await context.newPage();
  const seen = { requests: [], faults: [], dialogs: [] };
  page.on("request", (request) => seen.requests.push(request.url()));
  page.on("pageerror", (fault) => seen.faults.push(String(fault)));
  page.on("console", (line) => { if (line.type() === "error") seen.faults.push(line.text()); });
  page.on("dialog", (dialog) => { seen.dialogs.push(dialog.message()); dialog.dismiss(); });
  await page.goto(`file://${path}${fragment}`);
  if (options.javaScriptEnabled !== false)
    await page.waitForSelector("html[data-ready=true]", { state: "attached" });
  return { page, seen };
}
