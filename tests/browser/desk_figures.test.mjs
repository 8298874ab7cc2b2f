// Every figure that the pages of a quote show is one of the answer's document: on the desk, on a saved quote, on its
// sheet, and beside an enquiry.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin } from "./served_plant.mjs";

const line = "0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15";
const asked = "/quotes/new?line=" + encodeURIComponent(line);

// The tables of a page, by the name that they are announced by: [[head or cell texts]...]. A page's tables of one name
// follow one another. Signs between thousands and the minus are those of a printer.
async function tablesOf(page) {
  return page.evaluate(() => {
    const text = (cell) => cell.textContent.replace(/[\u00a0\u202f\u2009]/g, " ").replace(/\u2212/g, "-").trim();
    const all = {};
    for (const table of document.querySelectorAll("table")) {
      const name = table.closest("[aria-label]")?.getAttribute("aria-label") ?? "";
      const rows = [...table.querySelectorAll("tr:not(.opened):not(.said)")].map((row) => [...row.cells].map(text));
      (all[name] ??= []).push(rows);
    }
    return all;
  });
}

const number = (text) => Number(text.replace(/ (?=\d{3})/g, "").replace(/[^\d.+-].*$/, "").replace("+", ""));
const places = (text) => (text.match(/\.(\d+)/)?.[1] ?? "").length;

// Whether a printed text is this number, rounded as it is printed; of parts that add up the last place may be moved.
function isPrinted(text, value, moved = 0.5) {
  return Math.abs(number(text) - Number(value)) <= (moved + 1e-6) * 10 ** -places(text);
}

function agrees(text, value, what, moved) {
  assert.ok(isPrinted(text, value, moved), `${what}: ${text} is printed, and ${value} is answered`);
}

async function documentOf(page, address) {
  const response = await page.request.get(address, { headers: { Accept: "application/json" } });
  assert.equal(response.status(), 200);
  return response.json();
}

const rowOf = (rows, head) => rows.find((row) => row[0].startsWith(head));

function checkLadder(rows, quotes) {
  assert.deepEqual(rows[0].slice(1).map(number), quotes.map((quote) => quote.quantity));
  const keys = { "price per thousand": "price_per_thousand", "order value": "order_value", profit: "profit" };
  for (const [head, key] of Object.entries(keys))
    quotes.forEach((quote, i) => agrees(rowOf(rows, head)[i + 1], quote[key], `${head} at ${quote.quantity}`));
  quotes.forEach((quote, i) => agrees(rowOf(rows, "cost")[i + 1], quote.cost, `cost at ${quote.quantity}`, 1));
}

// Rows with a quantity, a rate and an amount are the lines of the document, one for one.
function checkCost(rows, quote) {
  const heads = rows.find((row) => row.some((cell) => cell.startsWith("rate")));
  const [quantity, rate, amount] = ["quantity", "rate", "EUR"].map((head) =>
    heads.findIndex((cell) => cell.startsWith(head) && !(head === "EUR" && cell.startsWith("rate"))));
  const printed = rows.filter((row) => row.length === heads.length && /\d/.test(row[rate])).map((row) =>
    [row[quantity], row[rate], row[amount]]);
  assert.equal(printed.length, quote.lines.length);
  const left = [...quote.lines];
  for (const [of, at, comes] of printed) {
    const found = left.findIndex((item) => isPrinted(comes, item.amount) && isPrinted(of, item.quantity) &&
                                           isPrinted(at, item.rate));
    assert.ok(found >= 0, `no line of the document is ${of} x ${at} = ${comes}`);
    left.splice(found, 1);
  }
  agrees(rowOf(rows, "cost, net").at(amount), quote.cost, "the cost");
}

// Parts of a balance add up as they are printed, so the last place of one may be moved.
function checkMass(rows, quote) {
  const kg = (head) => rowOf(rows, head).find((cell, i) => i > 0 && /\d\.\d/.test(cell));
  agrees(kg("paper issued"), quote.mass_kg.issued, "paper issued", 1);
  agrees(kg("adhesive, dry"), quote.mass_kg.adhesive, "adhesive", 1);
  agrees(kg("boxes shipped"), quote.mass_kg.product, "boxes shipped", 1);
  for (const loss of quote.losses) {
    const lost = rows.findIndex((row) => row[0] === loss.title || row[0].startsWith(loss.title));
    const steps = loss.kg_by_step.filter((mass) => mass > 0);
    if (steps.length === 0) continue;
    assert.ok(lost >= 0, `${loss.title} is not printed`);
    steps.forEach((mass, i) => {
      const cell = rows[lost + i].find((text, at) => at > 0 && /\d\.\d/.test(text));
      agrees(cell, mass, loss.title, 1);
    });
  }
}

function checkWays(rows, quote) {
  const printed = rows.filter((row) => row[0].includes("roll"));
  assert.deepEqual(printed.map((row) => row[0]), quote.runners_up.map((way) => way.candidate));
  printed.forEach((row, i) => {
    agrees(row[1], quote.runners_up[i].cost, row[0]);
    agrees(row[2], quote.runners_up[i].dearer_by, row[0]);
  });
}

test("the desk, a saved quote and its sheet show the figures of the document", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  const { quotes } = (await documentOf(page, plant.at(asked))).requests[0];
  await page.goto(plant.at(asked));
  await page.locator("#save button").click();
  await page.waitForURL("**/quotes/Q000001");
  for (const address of [asked, "/quotes/Q000001"])
    for (const quote of quotes) {
      await page.goto(plant.at(address + (address.includes("?") ? "&" : "?") + "quantity=" + quote.quantity));
      const tables = await tablesOf(page);
      const names = Object.keys(tables);
      checkLadder(tables[names.find((name) => name.startsWith("Price ladder"))][0], quotes);
      checkCost(tables.cost[0], quote);
      checkMass(tables.mass[0], quote);
      checkWays(tables["next best"][0], quote);
    }
  await page.goto(plant.at("/quotes/Q000001.html"));
  const sheet = await tablesOf(page);
  assert.equal(sheet.cost.length, quotes.length);
  quotes.forEach((quote, i) => {
    checkCost(sheet.cost[i], quote);
    checkMass(sheet.mass[i], quote);
    checkWays(sheet["next best"][i], quote);
  });
});

test("what stands beside an enquiry shows the figures of its document", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  const open = async (query) => {
    const { requests } = await documentOf(page, plant.at(asked + query));
    await page.goto(plant.at(asked + query));
    return { request: requests[0], tables: await tablesOf(page) };
  };

  const changed = await open("&with=papers.*.price%3D%2B5%25");
  changed.request.quantities.forEach((item, i) => {
    const row = changed.tables.prices[0][i + 1];
    agrees(row[1], item.before.price_per_thousand, "before");
    agrees(row[2], item.after.price_per_thousand, "after");
    agrees(row[3], item.difference.price_per_thousand, "difference", 1);
    const lines = changed.tables.lines[i];
    const moved = item.lines.filter((one) => Number(one.difference) !== 0);
    const rows = lines.filter((one) => one.length === 5 && /\d/.test(one[4])).slice(0, moved.length);
    rows.forEach((one, at) => {
      agrees(one[2], moved[at].before, "a line before");
      agrees(one[3], moved[at].after, "a line after");
      agrees(one[4], moved[at].difference, "a line's difference");
    });
    agrees(rowOf(lines, "cost, net")[4], item.difference.cost, "the cost's difference");
  });

  const boards = await open("&boards=B-140&boards=C-125");
  const prices = boards.request.alternatives.flatMap((one) => one.quotes.map((quote) => quote.price_per_thousand));
  const columns = boards.tables.alternatives[0][0];
  const at = columns.findIndex((cell) => cell.startsWith("price"));
  const printed = boards.tables.alternatives[0].slice(1).map((row) => row[at]);
  assert.equal(printed.length, prices.length);
  for (const price of prices) assert.ok(printed.some((text) => isPrinted(text, price)), `${price} is not printed`);

  const rank = await open("&rank=1000");
  const ranked = rank.request.quantities[0].moved;
  const rows = rank.tables.rank[0].slice(1);
  assert.equal(rows.length, ranked.length);
  rows.forEach((row, i) => {
    assert.equal(row[0], ranked[i].path);
    agrees(row[3], ranked[i].price_per_thousand, row[0]);
    agrees(row[4], ranked[i].change, row[0], 1);
  });
});
