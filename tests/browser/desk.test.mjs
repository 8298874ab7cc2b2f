// An accountant at the quote desk: types a line, changes it, walks down to what is behind a figure, saves, revises, makes
// an offer; with scripts and without.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin } from "./served_plant.mjs";

const line = "0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15";

const price = (page) => page.locator("#ladder .strong .shown").innerText();
const settled = (page) => page.waitForFunction(() => !document.querySelector(".stale, .waiting"));

test("an accountant types the line, changes it, saves it and makes an offer", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new"));
  await page.keyboard.type(line);
  await page.waitForSelector("#quantity-3");
  await settled(page);
  const first = await price(page);
  assert.match(await page.locator("#understood").innerText(), /style 0201, inside 400 x 300 x 250 mm/);
  assert.ok(decodeURIComponent(page.url().replaceAll("+", " ")).endsWith(`line=${line}`));

  await page.locator("#fields [name=margin]").fill("25");
  await page.waitForFunction((was) => document.querySelector("#ladder .strong .shown").innerText !== was, first);
  assert.match(await page.locator("#line").inputValue(), / 25% /);
  assert.equal(await page.evaluate(() => document.activeElement.name), "margin");

  await page.keyboard.press("Alt+2");
  await page.waitForFunction(() => document.querySelector("#quantity-2").ariaCurrent === "true");
  await page.locator("#cost-walk-starch").click();
  await page.waitForSelector("#behind-starch");
  assert.match(await page.locator("#behind-starch").innerText(), /plugins\.yaml:14/);

  await page.keyboard.press("Control+s");
  await page.waitForURL("**/quotes/Q000001");
  assert.match(await page.locator("h1").innerText(), /^Q000001/);
  await page.getByRole("link", { name: "Offer" }).click();
  await page.waitForURL("**/quotes/Q000001.html?for=customer");
  const offer = await page.locator("main").innerText();
  assert.match(offer, /Q000001/);
  assert.doesNotMatch(offer, /starch|margin|waste/i);

  await page.goBack();
  await page.locator("#revise").click();
  await page.waitForSelector("#ladder");
  assert.match(await page.locator("#line").inputValue(), /request=/);
  assert.deepEqual(plant.faults, []);
});

test("what is typed is refused beside it, and the figures before it stay", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  const before = await price(page);
  await page.locator("#line").press("End");
  await page.keyboard.type(" nonsense");
  await page.waitForSelector("#complaints p");
  assert.match(await page.locator("#complaints").innerText(), /not understood: found `nonsense`/);
  assert.equal(await price(page), before);
  await page.keyboard.press("Escape");
  assert.equal(await page.evaluate(() => document.activeElement.id), "line");
});

test("a quote is saved where its price is, without scrolling", async (t) => {
  for (const viewport of [{ width: 1280, height: 900 }, { width: 390, height: 844 }]) {
    const plant = await begin(t, { viewport });
    const page = await plant.signedIn();
    await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
    const button = await page.locator("#save button").boundingBox();
    assert.ok(button.y + button.height <= viewport.height, `ends at ${button.y + button.height}`);
  }
});

test("the desk works with scripts off", async (t) => {
  const plant = await begin(t, { javaScriptEnabled: false });
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new"));
  await page.locator("#start a").first().click();
  await page.waitForSelector("#ladder");
  await page.locator("#fields [name=quantities]").fill("700 900");
  await page.locator("#fields button").click();
  assert.equal(await page.locator("#quantity-1").innerText(), "700");
  await page.locator("#quantity-2").click();
  assert.equal(await page.locator("#quantity-2").getAttribute("aria-current"), "true");
  await page.locator("#cost-walk-paper").click();
  await page.waitForSelector("#behind-paper");
  await page.locator("#save button").click();
  await page.waitForURL("**/quotes/Q000001");
  await page.locator("#mark [name=state]").selectOption("lost");
  await page.locator("#mark [name=why]").fill("too dear");
  await page.locator("#mark button").click();
  assert.match(await page.locator("#history").innerText(), /lost .* too dear/);
  await page.goto(plant.at("/quotes?state=lost"));
  assert.equal(await page.locator("#found tbody th").innerText(), "Q000001");
});

test("an accountant asks what if, lets every number be ranked, and sets boards side by side", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  const before = await price(page);
  await page.locator("#what-if [name=with]").first().fill("papers.*.price=+5%");
  await page.keyboard.press("Enter");
  await page.waitForSelector("#beside [aria-label=prices]");
  assert.match(page.url(), /with=papers/);
  assert.match(await page.locator("#beside [aria-label=prices] tbody tr").first().innerText(), new RegExp(before));
  assert.equal(await price(page), before);

  await page.keyboard.press("Alt+2");
  await page.waitForFunction(() => document.querySelector("#quantity-2").ariaCurrent === "true");
  assert.equal(await page.locator("#beside [aria-label=prices]").count(), 1);
  await page.getByRole("button", { name: "What moves the price" }).click();
  await page.waitForSelector("#beside [aria-label=rank]");
  assert.match(await page.locator("#beside").innerText(), /1 000 boxes at .* a thousand: what moves the price/);

  await page.locator("#alone").click();
  await page.waitForFunction(() => document.getElementById("beside").hidden);
  assert.doesNotMatch(page.url(), /with=|rank=/);
  await page.locator("#what-if-boards summary").click();
  await page.locator("#what-if-boards").getByLabel("B-140", { exact: true }).check();
  await page.locator("#what-if-boards").getByLabel("C-125", { exact: true }).check();
  await page.getByRole("button", { name: "Set beside" }).click();
  await page.waitForSelector("#beside [aria-label=alternatives]");
  const boards = await page.locator("#beside [aria-label=alternatives]").innerText();
  assert.match(boards, /C-125/);

  await page.locator("#fields [name=quantities]").fill("700");
  await page.waitForFunction(() => !document.getElementById("quantity-2"));
  assert.match(page.url(), /boards=B-140&boards=C-125/);
  assert.match(await page.locator("#beside [aria-label=alternatives] tbody").innerText(), /^\s*700/);
  await page.goBack();
  await page.waitForFunction(() => document.getElementById("beside").hidden);
  assert.deepEqual(plant.faults, []);
});

test("another way is opened from the list of ways, and left again", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  const cheapest = await price(page);
  await page.locator("#ways-walk-way-1").click();
  await page.waitForSelector("#any-way");
  assert.notEqual(await price(page), cheapest);
  assert.equal(await page.locator("#save button").count(), 0);
  await page.locator("#any-way").click();
  await page.waitForSelector("#save button");
  assert.equal(await price(page), cheapest);
});

test("what is asked beside an enquiry works with scripts off, and is refused in its place", async (t) => {
  const plant = await begin(t, { javaScriptEnabled: false });
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  await page.locator("#what-if [name=prices]").fill("590,610.50");
  await page.getByRole("button", { name: "Set beside" }).click();
  assert.equal(await page.locator("#beside [aria-label=alternatives] tbody tr").count(), 6);
  await page.locator("#fields [name=colours]").fill("3");
  await page.locator("#fields button").click();
  assert.equal(await page.locator("#what-if [name=prices]").inputValue(), "590,610.50");
  await page.locator("#what-if [name=margins]").fill("15");
  await page.getByRole("button", { name: "Set beside" }).click();
  assert.match(await page.locator("#beside .faults").innerText(), /Margins: a price has its own margin/);
  assert.equal(await page.locator("#quantity-3").count(), 1);
  await page.locator("#ways-walk-way-1").click();
  await page.locator("#any-way").click();
  await page.locator("#save button").click();
  await page.waitForURL("**/quotes/Q000001");
  await page.locator("#cost-walk-starch").click();
  await page.waitForURL("**/quotes/Q000001/lines/starch?quantity=500");
  assert.match(await page.locator("#answer").innerText(), /plugins\.yaml:14/);
});

test("a slow answer is told by a line that moves, and the figures go grey and stay", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  const before = await price(page);
  let answer;
  const held = new Promise((resolve) => (answer = resolve));
  await page.route("**/quotes/new?*", async (route) => {
    await held;
    await route.continue();
  });
  await page.locator("#fields [name=margin]").fill("25");
  await page.waitForSelector("body.waiting");
  assert.equal(await price(page), before);
  const opacity = () => page.evaluate(() => getComputedStyle(document.querySelector("#cost .scroll")).opacity);
  assert.equal(await opacity(), "0.55");
  answer();
  await page.waitForFunction((was) => document.querySelector("#ladder .strong .shown").innerText !== was, before);
  await settled(page);
  assert.equal(await opacity(), "1");
});

test("a lost session keeps what was typed, and the figures before it", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  const before = await price(page);
  await page.context().clearCookies();
  await page.locator("#line").press("End");
  await page.keyboard.type(" customer=Ashlar");
  await page.waitForSelector("#complaints a");
  assert.match(await page.locator("#complaints").innerText(), /signed out: what you typed is kept/);
  assert.equal(await page.locator("#line").inputValue(), line + " customer=Ashlar");
  assert.equal(await price(page), before);
});

test("keys lead to the list of keys, to the saved quotes, and back to the line", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  await page.locator("#quantity-1").focus();
  await page.keyboard.press("?");
  assert.equal(await page.evaluate(() => document.activeElement.id), "keys");
  await page.keyboard.press("Escape");
  assert.equal(await page.evaluate(() => document.activeElement.id), "line");
  await page.keyboard.press("Control+o");
  await page.waitForURL("**/quotes");
});
