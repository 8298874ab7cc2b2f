// A copy of the demo plant, served by the program that FLUTEBOOK_PROGRAM names, and browsers that are signed in to it.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

const require = createRequire(import.meta.url);
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
const program = process.env.FLUTEBOOK_PROGRAM;
const demo = new URL("../../config/demo", import.meta.url).pathname;

// Each address that the server prints works once.
function addresses(server) {
  const waiting = [];
  const found = [];
  let text = "";
  server.stdout.on("data", (bytes) => {
    text += bytes;
    for (let end; (end = text.indexOf("\n")) >= 0; text = text.slice(end + 1)) {
      const address = text.slice(0, end).match(/http:\S+/);
      if (!address) continue;
      if (waiting.length) waiting.shift()(address[0]);
      else found.push(address[0]);
    }
  });
  return () => (found.length ? Promise.resolve(found.shift()) : new Promise((resolve) => waiting.push(resolve)));
}

// A machine that has the fonts of this folder and no others.
function onlyThese(fonts, folder) {
  const file = join(folder, "fonts.conf");
  writeFileSync(file, `<?xml version="1.0"?><fontconfig><dir>${fonts}</dir><cachedir>${file}.cache</cachedir></fontconfig>`);
  return file;
}

// `context` is what each browser is like, as Playwright takes it; `ledger` a file whose copy the plant begins with;
// `fonts` a folder of the only fonts that there are.
export async function begin(t, context, { ledger, fonts } = {}) {
  const folder = mkdtempSync(join(tmpdir(), "flutebook-browser-"));
  cpSync(demo, folder, { recursive: true });
  if (ledger) cpSync(ledger, join(folder, "ledger.db"));
  const server = spawn(program, ["--plant", folder, "serve"], { stdio: ["ignore", "pipe", "inherit"] });
  const next = addresses(server);
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM || "/usr/bin/chromium",
                                          args: ["--no-sandbox"],
                                          env: fonts ? { ...process.env, FONTCONFIG_FILE: onlyThese(fonts, folder) } : process.env });
  t.after(async () => {
    await browser.close();
    server.kill("SIGTERM");
    await new Promise((resolve) => (server.exitCode === null ? server.once("exit", resolve) : resolve()));
    rmSync(folder, { recursive: true });
  });
  const plant = { faults: [], origin: "" };
  plant.at = (address) => plant.origin + address;
  plant.signedIn = async (more = {}) => {
    const page = await (await browser.newContext({ ...context, ...more })).newPage();
    page.on("console", (message) => message.type() === "error" && plant.faults.push(message.text()));
    page.on("pageerror", (fault) => plant.faults.push(fault.message));
    const key = await next();
    plant.origin = new URL(key).origin;
    page.on("request", (request) => {
      if (!request.url().startsWith(plant.origin)) plant.faults.push("a request elsewhere: " + request.url());
    });
    await page.goto(key);
    return page;
  };
  return plant;
}

// What axe finds, a line a rule. It comes over the debugging protocol: the policy of the pages refuses scripts. Only faults
// are written down: to say where each thing stands that has none takes as long as looking.
export async function faultsOf(page) {
  const session = await page.context().newCDPSession(page);
  await session.send("Runtime.evaluate", { expression: axe });
  const found = await page.evaluate((only) => axe.run({ runOnly: only, resultTypes: ["violations"] }), rules);
  return found.violations.map((fault) => `${fault.id}: ${fault.nodes[0].html.slice(0, 160)}`);
}
