// How the time of a check grows with the plan, as whole processes run in turn: medians, and what a feature more costs.
// Run after a build: npx tsx tests/bench/many-features.bench.ts [rounds]. Prints; asserts nothing.

import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "../house/rule-files.ts";
import { inventedPlan } from "./invented-plan.ts";

const rounds = Number(process.argv[2] ?? 3);
const counts = [500, 1000, 2000, 4000];
const program = join(root, "dist/sightrail.cjs");
const folder = mkdtempSync(join(tmpdir(), "many-features-"));

/** A plan file; with more stages after the last in which nothing changes. */
function planFile(count: number, alike = 0): string {
  const file = join(folder, `${count}-${alike}.yaml`);
  const more = Array.from({ length: alike }, (_, i) => `, alike ${i + 1}`).join("");
  writeFileSync(file, inventedPlan(count).replace("finished]", `finished${more}]`));
  return file;
}

const examples = readdirSync(join(root, "examples"))
  .map((name) => join(root, "examples", name, "plan.yaml"))
  .filter((file) => existsSync(file));
const runs: readonly (readonly [string, readonly (readonly string[])[]])[] = [
  ["node -e 0", [["-e", "0"]]],
  ...counts.map((count) => [`${count} features`, [[program, "check", planFile(count)]]] as const),
  ["1000 features, three more stages all alike", [[program, "check", planFile(1000, 3)]]],
  [`all ${examples.length} examples, one process each`, examples.map((file) => [program, "check", file])],
];

const times = runs.map((): number[] => []);
for (let round = 0; round < rounds; round++) {
  for (const [i, [, commands]] of runs.entries()) {
    const start = performance.now();
    for (const args of commands) spawnSync(process.execPath, args, { stdio: "ignore", cwd: folder });
    times[i]?.push(performance.now() - start);
  }
}
rmSync(folder, { recursive: true });

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;
for (const [i, [name]] of runs.entries()) {
  const count = counts[i - 1];
  const own = median(times[i] ?? []);
  const each = count === undefined ? "" : `, ${((own - median(times[0] ?? [])) / count).toFixed(2)} ms a feature`;
  console.log(`${name.padEnd(46)} ${(own / 1000).toFixed(2)} s${each}`);
}
