// The pages of the quote desk as axe sees them, wide and narrow, by day and by night.
import assert from "node:assert/strict";
import { test } from "node:test";
import { begin, faultsOf } from "./served_plant.mjs";

const line = "0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15";
const sizes = [{ width: 1280, height: 900 }, { width: 390, height: 800 }];

test("no page of the desk has a fault that axe finds, or says anything on the console", async (t) => {
  const plant = await begin(t, {});
  const saving = await plant.signedIn();
  await saving.goto(plant.at("/quotes/new?line=" + encodeURIComponent(line)));
  await saving.locator("#save button").click();
  await saving.waitForURL("**/quotes/Q000001");
  const asked = "/quotes/new?line=" + encodeURIComponent(line);
  const pages = ["/quotes", "/quotes/new", asked, asked + "&quantity=1000&explain=price", "/quotes/new?line=nonsense",
                 "/quotes/new?line=" + encodeURIComponent("0201 2400x1900x1250 B-140 500 18%"), "/quotes/Q000001",
                 "/quotes/Q000001?beside=Q000001", "/quotes/Q000001/recheck",
                 "/quotes/Q000001/lines/starch?quantity=1000", asked + "&with=papers.*.price%3D%2B5%25",
                 asked + "&boards=B-140&boards=C-125", asked + "&ect=5", asked + "&rank=1000", asked + "&roll=2050",
                 asked + "&margins=15&prices=590", "/models", "/quotes/Q000099"];
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
