// `npm run outside`: checks against programs that Debian has and npm test must not need. What is not installed is named and passed over.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inspect, printed } from "../../src/index.ts";
import { root } from "../house/rule-files.ts";
import { compareTurning } from "./turning-search.ts";

interface Outcome {
  readonly name: string;
  readonly fault: string | null;
}

const folder = mkdtempSync(join(tmpdir(), "sightrail-outside-"));
const installed = (program: string): boolean => spawnSync(program, ["--version"], { stdio: "ignore" }).status === 0;
const file = "examples/sallow-yard/plan.yaml";
const inspection = inspect([{ file, text: readFileSync(join(root, file), "utf8") }], { asOf: "2026-11-25" });

/** A browser opens the page and the drawing, and shows what they hold. */
async function browser(): Promise<readonly Outcome[]> {
  if (!installed("chromium")) return [];
  const outcomes: Outcome[] = [];
  for (const ending of [".html", ".svg"] as const) {
    const path = join(folder, `page${ending}`);
    writeFileSync(path, await printed(inspection, ending));
    const flags = ["--headless", "--no-sandbox", "--disable-gpu", `--user-data-dir=${join(folder, "profile")}`];
    const dom = spawnSync("chromium", [...flags, "--dump-dom", `file://${path}`], { encoding: "utf8" }).stdout;
    const picture = join(folder, `page${ending}.png`);
    spawnSync("chromium", [...flags, "--window-size=1200,900", `--screenshot=${picture}`, `file://${path}`]);
    const shown = dom.includes("Sallow Yard") && dom.includes("goat paddock");
    const drawn = statSync(picture, { throwIfNoEntry: false })?.size ?? 0;
    outcomes.push({
      name: `browser ${ending}`,
      fault: shown && drawn > 20_000 ? null : `shown ${shown}, ${drawn} bytes`,
    });
  }
  return outcomes;
}

const outcomes = await browser();
const left = outcomes.length === 0 ? ["chromium"] : [];
rmSync(folder, { recursive: true });
for (const { name, fault } of outcomes)
  console.log(`${fault === null ? "fine " : "FAULT"}  ${name}${fault ? `: ${fault}` : ""}`);
if (!(await compareTurning())) left.push("libompl-dev and g++ (the turning search beside a general-purpose planner)");
for (const program of left) console.log(`not installed: ${program}`);
process.exit(outcomes.some(({ fault }) => fault !== null) ? 1 : 0);
