// The README's two pictures, taken of the program that FLUTEBOOK_PROGRAM names. As a program of its own it writes them:
//
//   node pictures.mjs LEDGER FOLDER
import { join } from "node:path";
import { begin } from "./served_plant.mjs";

const line = "0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15";

export const size = { width: 1280, height: 860 };
export const pictures = {
  "quote-desk.png": "/quotes/new?quantity=1000&line=" + encodeURIComponent(line),
  "month-review.png": "/months/2026-10",
};

export async function takePictures(plant, folder) {
  const page = await plant.signedIn({ viewport: size, colorScheme: "light" });
  for (const [name, address] of Object.entries(pictures)) {
    await page.goto(plant.at(address));
    // Whose machine it was is nobody's business.
    await page.evaluate(() => (document.querySelector(".who a").hidden = true));
    await page.screenshot({ path: join(folder, name) });
  }
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  const [ledger, folder] = process.argv.slice(2);
  const ends = [];
  const plant = await begin({ after: (end) => ends.push(end) }, {}, { ledger });
  await takePictures(plant, folder);
  for (const end of ends) await end();
}
