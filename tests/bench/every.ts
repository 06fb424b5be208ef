// Runs every bench of this folder, one after the other: npx tsx tests/bench/every.ts. Prints; asserts nothing.

import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../house/rule-files.ts";

const folder = join(root, "tests/bench");
const benches = readdirSync(folder)
  .filter((name) => name.endsWith(".bench.ts"))
  .sort();
for (const name of benches) {
  const file = join(folder, name);
  const byVitest = readFileSync(file, "utf8").includes('from "vitest"');
  const program = byVitest ? ["vitest", "bench", "--run", "--config", "tests/vitest.config.ts", file] : ["tsx", file];
  console.log(`\n${name}`);
  spawnSync("npx", program, { cwd: root, stdio: "inherit" });
}
