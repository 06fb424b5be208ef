// What a check adds to starting node at all: medians of runs taken in turn, printed, never asserted.

import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { root } from "../house/rule-files.ts";

const runs = 20;
const program = join(root, "dist/sightrail.cjs");
const commands: readonly (readonly [string, readonly string[]])[] = [
  ["node -e 0", ["-e", "0"]],
  ["sightrail --version", [program, "--version"]],
  ["sightrail check examples/sallow-yard", [program, "check", join(root, "examples/sallow-yard/plan.yaml")]],
];

const times = commands.map((): number[] => []);
for (let run = 0; run <= runs; run++) {
  for (const [i, [, args]] of commands.entries()) {
    const start = performance.now();
    spawnSync(process.execPath, args, { stdio: "ignore" });
    if (run > 0) times[i]?.push(performance.now() - start);
  }
}
const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;
const base = median(times[0] ?? []);
for (const [i, [name]] of commands.entries()) {
  const own = median(times[i] ?? []);
  console.log(
    `${name.padEnd(40)} ${own.toFixed(0)} ms, ${(own / base).toFixed(2)} x node, adds ${(own - base).toFixed(0)} ms`,
  );
}
