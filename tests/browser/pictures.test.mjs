// The README's pictures: they can be taken again from this program, and those that are kept are small and of that size.
import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { demoLedger } from "./demo_ledger.mjs";
import { pictures, size, takePictures } from "./pictures.mjs";
import { begin } from "./served_plant.mjs";

const config = new URL("../../config/", import.meta.url).pathname;
const most = 120 * 1024;

function measure(file) {
  const bytes = readFileSync(file);
  assert.equal(bytes.subarray(1, 4).toString(), "PNG", file);
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20), bytes: bytes.length };
}

test("the pictures of the README are those that the program makes, and small", async (t) => {
  const folder = mkdtempSync(join(tmpdir(), "flutebook-pictures-"));
  t.after(() => rmSync(folder, { recursive: true }));
  const plant = await begin(t, {}, { ledger: demoLedger() });
  await takePictures(plant, folder);
  const readme = readFileSync(config + "../README.md", "utf8");
  for (const name of Object.keys(pictures)) {
    const taken = measure(join(folder, name));
    const kept = measure(config + "pictures/" + name);
    assert.deepEqual({ width: taken.width, height: taken.height }, size, name);
    assert.deepEqual({ width: kept.width, height: kept.height }, size, name);
    // A page that could not be shown is a few kilobytes of one colour.
    assert.ok(taken.bytes > 30 * 1024, `${name} is empty: ${taken.bytes} bytes`);
    assert.ok(kept.bytes > 10 * 1024 && kept.bytes <= most, `${name}: ${kept.bytes} bytes, at most ${most}`);
    assert.match(readme, new RegExp(`!\\[[^\\]]{20,}\\]\\(config/pictures/${name}\\)`), `${name} stands in the README`);
  }
  assert.deepEqual(plant.faults, []);
});
