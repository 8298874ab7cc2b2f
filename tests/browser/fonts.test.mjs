// The pages in the letters that they ask for and in the widest that a bare system has: nothing is wider than its window,
// and no label of a drawing reaches beyond it.
import assert from "node:assert/strict";
import { test } from "node:test";
import { demoLedger } from "./demo_ledger.mjs";
import { begin } from "./served_plant.mjs";

const fonts = { "Liberation Sans": "/usr/share/fonts/truetype/liberation", "DejaVu Sans": "/usr/share/fonts/truetype/dejavu" };
const widths = [390, 1280];
const desk = "/quotes/new?quantity=1000&explain=starch&line=";
const addresses = [
  "/quotes", "/quotes/new", "/quotes/new?line=nonsense",
  desk + encodeURIComponent("0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15"),
  desk + encodeURIComponent("0427 300x200x80 B-140 500 10000 2c 18% 2026-10-15"),
  "/quotes/Q000001", "/quotes/Q000001/recheck", "/quotes/Q000001.html", "/quotes/Q000001.html?for=customer", "/orders",
  "/orders/2610-02/cost", "/months", "/months/2026-10", "/months/2026-11", "/months/2026-03", "/months/2026-11/closing",
  "/months/2026-10/causes/corrugator-run", "/entries?month=2026-10", "/entries/2031", "/documents", "/models", "/users",
];

// Chromium says which font it drew with, by the debugging protocol.
async function fontOf(page) {
  const session = await page.context().newCDPSession(page);
  await session.send("DOM.enable");
  await session.send("CSS.enable");
  const { root } = await session.send("DOM.getDocument");
  const { nodeId } = await session.send("DOM.querySelector", { nodeId: root.nodeId, selector: "h1" });
  return (await session.send("CSS.getPlatformFontsForNode", { nodeId })).fonts[0].familyName;
}

// Labels that are not whole: beyond their drawing, or cut by what they stand in. Half a pixel is no letter.
const clippedLabels = () => {
  const clipped = [];
  for (const text of document.querySelectorAll("svg text")) {
    const drawing = text.ownerSVGElement.getBoundingClientRect();
    const { left, right, top, bottom, width } = text.getBoundingClientRect();
    const isBeyond = left < drawing.left - 0.5 || right > drawing.right + 0.5 || top < drawing.top - 0.5 || bottom > drawing.bottom + 0.5;
    if (width > 0 && isBeyond) clipped.push(text.textContent);
  }
  return clipped;
};

for (const [name, folder] of Object.entries(fonts))
  test(`no page is wider than its window and no label is clipped in ${name}`, async (t) => {
    const plant = await begin(t, {}, { ledger: demoLedger(), fonts: folder });
    const page = await plant.signedIn();
    await page.goto(plant.at("/months"));
    assert.equal(await fontOf(page), name);
    const faults = [];
    for (const address of addresses)
      for (const width of widths) {
        await page.setViewportSize({ width, height: 900 });
        await page.goto(plant.at(address));
        const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        if (beyond > 0) faults.push(`${address} is ${beyond} px wider than ${width}`);
        for (const label of await page.evaluate(clippedLabels)) faults.push(`${address} at ${width} clips ${label}`);
      }
    assert.deepEqual(faults, []);
  });
