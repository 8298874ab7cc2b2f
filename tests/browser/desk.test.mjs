// An accountant at the quote desk: types a line, changes it, walks down to what is behind a figure, saves, revises, makes
// an offer; with scripts and without.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin, faultsOf } from "./served_plant.mjs";

const line = "0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15";
const sizes = [{ width: 1280, height: 900 }, { width: 390, height: 800 }];

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

test("no page of the desk has a fault that axe finds, or says anything on the console", async (t) => {
  const plant = await begin(t, {});
  const saving = await plant.signedIn();
  await saving.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  await saving.locator("#save button").click();
  await saving.waitForURL("**/quotes/Q000001");
  const asked = "/quotes/new?line=" + encodeURIComponent(line);
  const pages = ["/quotes", "/quotes/new", asked, asked + "&quantity=1000&explain=price", "/quotes/new?line=nonsense",
                 "/quotes/new?line=" + encodeURIComponent("0201 2400x1900x1250 B-140 500 18%"), "/quotes/Q000001",
                 "/quotes/Q000001?beside=Q000001", "/quotes/Q000001/recheck", "/models", "/quotes/Q000099"];
  for (const viewport of sizes)
    for (const colorScheme of ["light", "dark"]) {
      const page = await plant.signedIn({ viewport, colorScheme });
      for (const address of pages) {
        await page.goto(plant.at(address));
        assert.deepEqual(await faultsOf(page), [], `${address} at ${viewport.width}, ${colorScheme}`);
        const beyond = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        assert.ok(beyond <= 0, `${address} is ${beyond} px wider than ${viewport.width}`);
      }
    }
  assert.deepEqual(plant.faults.filter((fault) => !/404/.test(fault)), []);
});
