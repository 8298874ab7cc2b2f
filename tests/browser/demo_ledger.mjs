// The demo plant's fourteen months, as `config/demo.sh` posts them.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

const script = new URL("../../config/demo_history.sh", import.meta.url).pathname;

let made = null;

// The ledger's file, made once, and there until the tests end.
export function demoLedger() {
  if (made) return made;
  const folder = mkdtempSync(join(tmpdir(), "flutebook-history-"));
  process.on("exit", () => rmSync(folder, { recursive: true }));
  const tree = dirname(dirname(process.env.FLUTEBOOK_PROGRAM));
  execFileSync("sh", [script, tree, folder], { stdio: ["ignore", "ignore", "ignore"] });
  return (made = join(folder, "ledger.db"));
}
