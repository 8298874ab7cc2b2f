// How long a person who types waits for the figure: from the input event to the frame in which the answer is another one.
// FLUTEBOOK_BENCH=1 holds it at 50 ms, of an optimised program on a machine that does little else. Otherwise it is held
// against an echo taken in the same run: the same way through browser and server and back, without a price.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin } from "./served_plant.mjs";

const line = "0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15";
const keystrokes = 60;
const most = 50; // ms
const mostEchoes = 12; // of a program that is not optimised

function sorted(times) {
  return [...times].sort((left, right) => left - right);
}
const median = (times) => sorted(times)[Math.floor(times.length / 2)];
const ninetyFifth = (times) => sorted(times)[Math.ceil(times.length * 0.95) - 1];
const shown = (times) => `median ${median(times).toFixed(1)} ms, 95 % within ${ninetyFifth(times).toFixed(1)} ms`;

// In the page: begins at each input event, ends in the frame after the price is another.
function watch() {
  window.times = [];
  let begun = 0;
  let price = document.querySelector("#ladder .strong").innerText;
  document.addEventListener("input", () => (begun = performance.now()), true);
  new MutationObserver(() => {
    const now = document.querySelector("#ladder .strong")?.innerText;
    if (!now || now === price) return;
    price = now;
    requestAnimationFrame(() => window.times.push(performance.now() - begun));
  }).observe(document.getElementById("answer"), { subtree: true, childList: true, characterData: true });
}

async function echo() {
  const begun = performance.now();
  await (await fetch("/session", { headers: { Accept: "text/html" } })).text();
  document.getElementById("said").textContent = String(begun);
  return new Promise((resolve) => requestAnimationFrame(() => resolve(performance.now() - begun)));
}

test("the figure follows the keys: the median of sixty keystrokes is within its limit", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  await page.evaluate(watch);
  const echoes = [];
  await page.locator("#fields [name=margin]").focus();
  await page.keyboard.press("End");
  for (let key = 0; key < keystrokes; ++key) {
    await page.keyboard.press(key % 2 ? String(1 + (key % 9)) : "Backspace");
    await page.waitForFunction((count) => window.times.length >= count, key + 1);
    echoes.push(await page.evaluate(echo));
  }
  const times = await page.evaluate(() => window.times);
  assert.equal(times.length, keystrokes);
  const echoed = median(echoes);
  console.log(`input event to painted figure, ${keystrokes} keystrokes: ${shown(times)}; an echo: ${shown(echoes)}`);
  if (process.env.FLUTEBOOK_BENCH) assert.ok(median(times) <= most, `more than ${most} ms`);
  else assert.ok(median(times) <= Math.max(most, mostEchoes * echoed), `more than ${most} ms and ${mostEchoes} echoes`);
});
