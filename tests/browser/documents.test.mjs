// Files that are dropped on the page of documents, or chosen: shown dry one below the other, mended, posted.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin, faultsOf } from "./served_plant.mjs";
import { documents, takeOrder, wrongPapers } from "./small_month.mjs";

const verdict = (page, name) => page.locator(`.dropped[data-name='${name}'] .state`);
const stateOf = (page, name, state) => page.waitForSelector(`.dropped[data-name='${name}'][data-state=${state}]`);

// As a person drags files from a folder to the page.
async function drop(page, texts) {
  const carried = await page.evaluateHandle((entries) => {
    const transfer = new DataTransfer();
    for (const [name, text] of entries) transfer.items.add(new File([text], name, { type: "text/csv" }));
    return transfer;
  }, Object.entries(texts));
  await page.dispatchEvent("#drop", "drop", { dataTransfer: carried });
}

test("a dropped file with a bad row is refused where it stands, mended there and posted", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await takeOrder(page, plant);
  await page.goto(plant.at("/documents"));
  await drop(page, { "papers.csv": wrongPapers });
  await stateOf(page, "papers.csv", "refused");
  assert.match(await verdict(page, "papers.csv").innerText(), /1 of 3 rows refused, so none is posted/);
  const place = page.locator(".dropped");
  assert.match(await place.innerText(), /TL12S/);
  assert.equal(await place.locator("form[data-part=post]").count(), 0);

  await place.locator("textarea").fill(documents["papers.csv"]);
  await place.locator("form[data-part=mend] button").click();
  await stateOf(page, "papers.csv", "postable");
  await place.locator("form[data-part=post] button").click();
  await stateOf(page, "papers.csv", "posted");
  await place.getByRole("link", { name: "Review October 2026" }).click();
  await page.waitForURL("**/months/2026-10");
  assert.match(await page.locator("#figures").innerText(), /0\.25 t/);
  assert.deepEqual(plant.faults, []);
});

test("a document is mended on a telephone in a field that shows it", async (t) => {
  const plant = await begin(t, { viewport: { width: 390, height: 800 } });
  const page = await plant.signedIn();
  await page.goto(plant.at("/documents"));
  await drop(page, { "papers.csv": wrongPapers });
  await stateOf(page, "papers.csv", "refused");
  const field = await page.locator(".dropped textarea").boundingBox();
  assert.ok(field.height > 150, `${field.height} px`);
});

test("several files are dropped on the month, and posted together", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await takeOrder(page, plant);
  await page.goto(plant.at("/months"));
  const { "papers.csv": papers, "runs.csv": runs, "converting.csv": converting } = documents;
  await drop(page, { "papers.csv": papers, "runs.csv": runs, "converting.csv": converting, "wrong.csv": "a,b\n1,2\n" });
  await stateOf(page, "wrong.csv", "refused");
  assert.equal(await page.locator("#drop-said").innerText(), "4 files: 3 can be posted, 1 refused");
  assert.deepEqual(await faultsOf(page), []);
  await page.locator("#post-all").click();
  for (const name of ["papers.csv", "runs.csv", "converting.csv"]) await stateOf(page, name, "posted");
  assert.equal(await page.locator("#drop-said").innerText(), "4 files: 1 refused, 3 posted");
  await page.goto(plant.at("/entries?month=2026-10"));
  for (const ref of ["P-1", "R-1", "V-1"]) assert.match(await page.locator("main").innerText(), new RegExp(ref));
  assert.deepEqual(plant.faults, []);
});

test("a file that was posted before, and is chosen again, has nothing new to post", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await takeOrder(page, plant);
  await page.goto(plant.at("/documents"));
  const file = { name: "papers.csv", mimeType: "text/csv", buffer: Buffer.from(documents["papers.csv"]) };
  await page.locator("#files").setInputFiles(file);
  await page.locator(".dropped form[data-part=post] button").click();
  await stateOf(page, "papers.csv", "posted");
  await page.locator("#files").setInputFiles(file);
  await stateOf(page, "papers.csv", "nothing");
  assert.equal(await page.locator(".dropped[data-state=nothing] form[data-part=post]").count(), 0);
  assert.match(await page.locator(".dropped[data-state=nothing]").innerText(), /3 posted before/);
  assert.deepEqual(plant.faults, []);
});
