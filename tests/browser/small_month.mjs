// A month of one small order: the enquiry that it was ordered by, and its production documents.
import assert from "node:assert/strict";

const enquiry = "0201 400x300x250 B-140 500 2c 18% FG1 2026-10-15 consumables.coverage=0.15 request=R-1";

export const documents = {
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

// What the papers are where a code is keyed wrongly.
export const wrongPapers = documents["papers.csv"].replace("TL125", "TL12S");

export async function takeOrder(page, plant) {
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
