// The pages of what a plant has: files, models, styles, guides. Looked for, walked through, and looked at by axe.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin, faultsOf } from "./served_plant.mjs";

const sizes = [{ width: 1280, height: 900 }, { width: 390, height: 800 }];
const addresses = ["/guide", "/guide/accountant", "/guide/keeper", "/plant", "/plant/machines.yaml#L11", "/models",
                   "/models/run", "/models/delivery", "/facts", "/styles?for=tray", "/styles/0201",
                   "/styles/0301?inside=400x300&board=B-140"];

// From a model's setting to the line that says it.
async function walkToTheLine(page, plant) {
  await page.goto(plant.at("/models"));
  await page.locator("#graph-starch a").first().click();
  await page.waitForURL("**/models/starch");
  await page.locator("#setting-starch_price a.place").click();
  await page.waitForURL("**/plant/plugins.yaml#L*");
  const line = page.locator(new URL(page.url()).hash);
  assert.match(await line.innerText(), /starch_price/);
  assert.ok(await line.evaluate((row) => row.getBoundingClientRect().top < innerHeight));
}

test("a reader types a style's words and sees its picture, and walks from a setting to its line", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
  await page.goto(plant.at("/styles"));
  await page.locator("#search [name=for]").pressSequentially("lid corner tabs");
  await page.waitForFunction(() => document.querySelectorAll("#found tbody tr").length === 1);
  assert.equal(await page.evaluate(() => document.activeElement.name), "for");
  assert.match(await page.locator("#picture h2").innerText(), /^0301 /);
  assert.match(page.url(), /\/styles\?for=lid\+corner\+tabs$/);
  await page.locator("#picture a").first().click();
  await page.waitForURL("**/styles/0301");
  assert.match(await page.locator("#proof").innerText(), /folds/);
  await walkToTheLine(page, plant);
  assert.deepEqual(plant.faults, []);
});

test("the same without scripts, by the form's button", async (t) => {
  const plant = await begin(t, { javaScriptEnabled: false });
  const page = await plant.signedIn();
  await page.goto(plant.at("/styles"));
  await page.locator("#search [name=for]").fill("lid corner tabs");
  await page.locator("#search button").click();
  await page.waitForURL("**/styles?for=lid+corner+tabs");
  assert.match(await page.locator("#picture h2").innerText(), /^0301 /);
  await walkToTheLine(page, plant);
});

test("these pages have no fault that axe finds, and none is wider than its window, by day and by night", async (t) => {
  const plant = await begin(t, {});
  const page = await plant.signedIn();
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
  assert.deepEqual(plant.faults, []);
});
