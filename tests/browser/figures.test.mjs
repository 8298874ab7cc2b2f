// What the pages show is what the same address answers as a document, figure by figure: the month, its sheet, and what an
// order cost.
import assert from "node:assert/strict";
import { test } from "node:test";
import { demoLedger } from "./demo_ledger.mjs";
import { begin } from "./served_plant.mjs";

const month = "2026-10", order = "2610-02";

// "+1 088.64", "9.76 %", "-" for none.
const figure = (text) => (/\d/.test(text) ? Number(text.replace(/[^-\d.]/g, "")) : null);
// As a person reads it, at so many places.
const rounded = (value, places) => Number(value.toFixed(places));
const sum = (values) => values.reduce((all, value) => all + value, 0);

// The rows of the table in the region of this name: [name, figure...], the total last.
async function rowsOf(page, name) {
  const region = page.locator(`[aria-label="${name}"]`).first();
  const rows = await region.evaluate((item) =>
    [...item.querySelectorAll("tbody tr")].map((row) => [...row.children].map((cell) => cell.textContent.trim())));
  assert.ok(rows.length > 0, name);
  return rows;
}

async function documentOf(page, address) {
  const answer = await page.request.get(address, { headers: { Accept: "application/json" } });
  assert.equal(answer.status(), 200, address);
  return answer.json();
}

// Of a ledger of fourteen months; and the month, reviewed, as documents.
async function reviewed(t) {
  const plant = await begin(t, {}, { ledger: demoLedger() });
  const page = await plant.signedIn();
  const account = await documentOf(page, plant.at("/months/" + month));
  const review = await documentOf(page, plant.at(`/months/${month}?review=1`));
  return { plant, page, account, review };
}

function checkLosses(rows, account, places) {
  const causes = rows.filter(([name]) => name in account.loss_kg);
  assert.equal(causes.length, Object.keys(account.loss_kg).length);
  for (const [name, excess, actual, expected, share, cost, cash] of causes) {
    const [lost, due] = [account.loss_kg[name], account.expected_kg[name]];
    assert.equal(figure(actual), lost, name);
    assert.equal(figure(expected), due, name);
    assert.equal(figure(excess), rounded(lost - due, 3), name);
    // Parts that come to their total may be moved by one in the last place.
    assert.ok(Math.abs(figure(share) - (lost / account.issued_kg) * 100) < 0.01, name);
    assert.ok(Math.abs(figure(cost) - account.waste_cost[name]) < 10 ** -places, name);
    assert.ok(Math.abs(figure(cash) - account.excess_value[name]) < 10 ** -places, name);
  }
  const total = rows.find(([name]) => /^(lost|total)$/i.test(name));
  const decimals = [3, 3, 3, 2, places, places];
  for (let i = 1; i < total.length; ++i)
    assert.equal(figure(total[i]), rounded(sum(causes.map((row) => figure(row[i]))), decimals[i - 1]), `column ${i}`);
}

test("the losses of a month's page and of its sheet are those of its document, and come to their totals", async (t) => {
  const { plant, page, account } = await reviewed(t);
  await page.goto(plant.at("/months/" + month));
  const shown = await rowsOf(page, "Losses by cause, in full width");
  checkLosses(shown.map((row) => row.filter((cell, i) => i !== 2)), account, 2);
  await page.goto(plant.at(`/months/${month}.html`));
  const sheet = await rowsOf(page, "losses");
  checkLosses(sheet.map(([name, actual, share, expected, cost, excess, cash]) =>
    [name, excess, actual, expected, share, cost, cash]), account, 4);
});

test("the sentence and the six figures of a month are its document's, and net nothing", async (t) => {
  const { plant, page, account, review } = await reviewed(t);
  await page.goto(plant.at("/months/" + month));
  const sentence = await page.locator(".lead").innerText();
  const tonnes = (kg) => (kg / 1000).toFixed(2) + " t";
  const percent = (kg) => ((kg / review.issued_kg) * 100).toFixed(2) + " %";
  for (const text of [tonnes(review.issued_kg), tonnes(review.lost_kg), percent(review.lost_kg), percent(review.expected_kg),
                      Math.round(review.beyond_expected_kg) + " kg", Math.round(review.below_expected_kg) + " kg",
                      Math.round(review.found_kg) + " kg", review.beyond_expected_value.toFixed(2) + " EUR"])
    assert.ok(sentence.includes(text), `${text} in: ${sentence}`);
  const figures = await page.locator("#figures dd").allInnerTexts();
  const due = [tonnes(review.issued_kg), tonnes(review.product_kg), tonnes(review.lost_kg),
               Math.round(review.found_kg) + " kg found", tonnes(account.sent_kg), review.waste_cost.toFixed(2)];
  figures.forEach((text, i) => assert.ok(text.replaceAll(" ", "").startsWith(due[i].replaceAll(" ", "")), `${due[i]}: ${text}`));
  for (const text of [percent(review.expected_kg), "target 9.50 %", percentOf(review.before), percentOf(review.year_ago)])
    assert.ok(figures[2].includes(text), `${text} in: ${figures[2]}`);
});

const percentOf = (other) => ((other.lost_kg / other.issued_kg) * 100).toFixed(2) + " %";

test("machines, orders, mills and the year of a month's page are its document's", async (t) => {
  const { plant, page, review } = await reviewed(t);
  await page.goto(plant.at("/months/" + month));
  const excesses = (row, parts) => parts.forEach((part, i) =>
    assert.equal(figure(row[i + 1]) ?? 0, part.excess_kg, `${row[0]} ${part.of}`));
  const byShift = await rowsOf(page, "Excess by machine and shift, in full width");
  const byMonth = await rowsOf(page, "Excess by machine and month, in full width");
  assert.equal(byMonth.length, review.machines.length);
  review.machines.forEach(({ machine, shifts, months }, i) => {
    assert.equal(byShift[i][0], machine);
    assert.equal(byMonth[i][0], machine);
    excesses(byShift[i], shifts);
    excesses(byMonth[i], months);
  });
  const orders = await rowsOf(page, "Orders by overspend, in full width");
  const due = review.orders.map((item) => [item.of, rounded(item.excess_value, 2), item.excess_kg, item.actual_kg, item.expected_kg]);
  assert.deepEqual(orders.map(([name, cash, bar, ...rest]) => [name, figure(cash), ...rest.map(figure)]), due);
  const mills = await rowsOf(page, "Mills, in full width");
  const sales = review.mills.map((sale) => [sale.mill, sale.tickets, sale.sent_kg, sale.paid_kg]);
  assert.deepEqual(mills.slice(0, -1).map(([mill, grade, ...rest]) => [mill, ...rest.slice(0, 3).map(figure)]), sales);
  assert.equal(figure(mills.at(-1).at(-1)), rounded(sum(mills.slice(0, -1).map((row) => figure(row.at(-1)))), 2));
  const [year] = await rowsOf(page, "The year to date, in full width");
  const { issued_kg, lost_kg, expected_kg, beyond_expected_kg, below_expected_kg, missing_kg, found_kg, waste_cost, excess_value } =
    review.year_to_date;
  assert.deepEqual(year.slice(1).map(figure),
                   [issued_kg, rounded((lost_kg / issued_kg) * 100, 2), rounded((expected_kg / issued_kg) * 100, 2), 9.5,
                    beyond_expected_kg, below_expected_kg, missing_kg, found_kg, rounded(waste_cost, 2), rounded(excess_value, 2)]);
});

test("what an order cost is its document's, line by line, and the waterfall comes to the difference", async (t) => {
  const plant = await begin(t, {}, { ledger: demoLedger() });
  const page = await plant.signedIn();
  const cost = await documentOf(page, plant.at(`/orders/${order}/cost`));
  await page.goto(plant.at(`/orders/${order}/cost`));
  const { volume, yield: yields, usage, price, total } = cost.variance;
  const steps = (await page.locator("svg.chart text.strong").allTextContents()).map(figure);
  assert.deepEqual(steps.length, 6);
  [cost.cost.quoted, volume, yields, usage, price, cost.cost.actual].forEach((value, i) =>
    assert.ok(Math.abs(steps[i] - value) < 0.01, `${steps[i]} for ${value}`));
  assert.equal(rounded(sum(steps.slice(0, 5)), 2), steps[5]);

  const rows = (await rowsOf(page, "lines")).filter((row) => row.length === 7 && figure(row[1]) !== null);
  const shown = rows.slice(0, -1).map((row) => row.slice(1).map(figure).join(" ")).sort();
  const due = cost.lines.map(({ cost: of, variance }) =>
    [of.quoted, variance.volume, variance.yield, variance.usage, variance.price, of.actual].join(" ")).sort();
  assert.deepEqual(shown, due);
  assert.deepEqual(rows.at(-1).slice(1).map(figure), [cost.cost.quoted, volume, yields, usage, price, cost.cost.actual]);
  assert.equal(rounded(cost.cost.actual - cost.cost.quoted, 4), total);
});
