// A controller at the month: documents with a bad row, mended, posted; down to a row and its undoing; the month closed.
// With scripts and without: the pages are forms and links.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin, faultsOf } from "./served_plant.mjs";

const enquiry = "0201 400x300x250 B-140 500 2c 18% FG1 2026-10-15 consumables.coverage=0.15 request=R-1";
const sizes = [{ width: 1280, height: 900 }, { width: 390, height: 800 }];

const documents = {
  "papers.csv": `ref,date,shift,corrugator,paper,kg
P-1,2026-10-20,early,C1,KL135,79
P-2,2026-10-20,early,C1,SC127,97
P-3,2026-10-20,early,C1,TL125,73
`,
  "runs.csv": `ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets
R-1,2026-10-20,early,C1,26-0417,230,22,552
`,
  "converting.csv": `ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes
V-1,2026-10-21,early,FG1,26-0417,552,38,8,506
`,
  "scrap.csv": `ref,date,shift,centre,cause,kg
S-1,2026-10-20,early,C1,roll-ends,3
`,
  "returns.csv": `ref,date,shift,corrugator,paper,kg
P-4,2026-10-31,late,C1,SC127,-5
`,
  "counts.csv": `ref,date,account,of,kg,amount
N-1,2026-10-31,C1,KL135,0,
N-2,2026-10-31,C1,SC127,0,
N-3,2026-10-31,C1,TL125,0,
`,
};

async function takeOrder(page, plant) {
  await page.goto(plant.at("/quotes/new?line=" + encodeURIComponent(enquiry)));
  await page.locator("form[action='/quotes'] button").first().click();
  await page.waitForURL("**/quotes/Q000001");
  const form = page.locator("form[action='/quotes/Q000001/order']");
  await form.locator("[name=as]").fill("26-0417");
  await form.locator("button").click();
  await page.waitForLoadState();
  await page.goto(plant.at("/orders"));
  assert.match(await page.locator("main").innerText(), /26-0417/);
}

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
  await show(page, plant, "papers.csv", documents["papers.csv"].replace("TL125", "TL12S"));
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
  await page.waitForLoadState();
  await page.goto(plant.at("/months/2026-10"));
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
