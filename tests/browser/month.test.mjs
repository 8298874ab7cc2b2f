// A controller at the month: documents with a bad row, mended, posted; down to a row and its undoing; the month closed.
// With scripts and without: the pages are forms and links.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin, faultsOf } from "./served_plant.mjs";
import { documents, takeOrder, wrongPapers } from "./small_month.mjs";

const sizes = [{ width: 1280, height: 900 }, { width: 390, height: 800 }];

async function show(page, plant, name, text) {
  await page.goto(plant.at("/documents"));
  await page.locator("[name=name]").first().fill(name);
  await page.locator("textarea").first().fill(text);
  await page.locator("form[action='/documents'] button").first().click();
  await page.waitForSelector("#rows");
}

async function post(page, plant, name, text) {
  await show(page, plant, name, text);
  await page.locator("#post button").click();
  await page.waitForLoadState();
}

async function closeTheMonth(page, plant) {
  await takeOrder(page, plant);
  await show(page, plant, "papers.csv", wrongPapers);
  assert.match(await page.locator("#rows").innerText(), /TL12S/);
  assert.equal(await page.locator("#post").count(), 0);
  await page.locator("#mend textarea").fill(documents["papers.csv"]);
  await page.locator("#mend button").click();
  await page.waitForSelector("#post");
  await page.locator("#post button").click();
  for (const name of ["runs.csv", "converting.csv", "scrap.csv"]) await post(page, plant, name, documents[name]);

  await page.goto(plant.at("/months/2026-10"));
  assert.match(await page.locator("#closing").innerText(), /C1 was not counted on 2026-10-31/);
  for (const name of ["returns.csv", "counts.csv"]) await post(page, plant, name, documents[name]);

  await page.goto(plant.at("/months/2026-10"));
  await page.locator("main a[href^='/months/2026-10/causes/side-trim']").first().click();
  await page.waitForURL("**/causes/side-trim**");
  await page.locator("main a[href^='/entries?']").first().click();
  await page.waitForURL("**/entries?**");
  await page.locator("main a[href^='/entries/']").first().click();
  await page.waitForURL("**/entries/*");
  assert.match(await page.locator("main").innerText(), /R-1/);

  await page.goto(plant.at("/months/2026-10"));
  await page.locator("form[action='/months/2026-10/closing'] button").click();
  await page.waitForURL("**/months/2026-10#closing");
  assert.match(await page.locator("#closing").innerText(), /October 2026 is closed/);
}

test("a controller posts a month, walks down to a row and closes it", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await closeTheMonth(page, plant);
  assert.deepEqual(plant.faults.filter((fault) => !/422/.test(fault)), []);
});

test("the same without scripts", async (t) => {
  const plant = await begin(t, { javaScriptEnabled: false });
  await closeTheMonth(await plant.signedIn(), plant);
});

test("the month's pages have no fault that axe finds, and none is wider than its window, by day and by night", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await closeTheMonth(page, plant);
  const addresses = ["/months", "/months/2026-10", "/months/2026-10/causes/side-trim", "/entries?month=2026-10",
                     "/orders", "/orders/26-0417/cost", "/documents"];
  for (const colorScheme of ["light", "dark"])
    for (const viewport of sizes) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize(viewport);
      for (const address of addresses) {
        await page.goto(plant.at(address));
        const told = `${address} at ${viewport.width}, ${colorScheme}`;
        assert.deepEqual(await faultsOf(page), [], told);
        assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), told);
      }
    }
});
