// Every example gives the report, the data and the drawing that stand beside it, to the byte; twice.
// `REGENERATE=1 npx vitest run --config tests/vitest.config.ts tests/examples.test.ts` writes them anew: read the difference.

import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { exitCode, inspect, printed } from "../src/index.ts";
import { type Verdict, verdictOrder } from "../src/model/finding.ts";
import { root } from "./house/rule-files.ts";

const folder = join(root, "examples");
const examples = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, "plan.yaml")))
  .map((entry) => entry.name)
  .sort();
/** Plans with texts that must be refused; which ones, their own tests say. */
const refused: ReadonlySet<string> = new Set(["heather-garth-hostile"]);
const regenerate = process.env["REGENERATE"] === "1";

const look = (name: string) => {
  const file = `examples/${name}/plan.yaml`;
  return inspect([{ file, text: readFileSync(join(root, file), "utf8") }], { asOf: "2026-11-25" });
};

describe.each(examples)("examples/%s", (name) => {
  const inspection = look(name);
  it("is read without a problem, unless it is there to be refused", () => {
    if (!refused.has(name)) expect(inspection.report.problems).toEqual([]);
  });
  it.each([".txt", ".svg"] as const)("gives the report%s beside it", async (ending) => {
    const file = join(folder, name, `report${ending}`);
    const got = await printed(inspection, ending);
    if (regenerate) writeFileSync(file, got);
    expect(got).toBe(readFileSync(file, "utf8"));
  });
  it("gives the same bytes twice", async () => {
    const again = look(name);
    for (const ending of [".txt", ".json", ".sarif", ".svg"] as const) {
      expect(await printed(again, ending)).toBe(await printed(inspection, ending));
    }
  });
});

describe("the first example", () => {
  it("shows every verdict", () => {
    const { report } = look("sallow-yard");
    const seen = verdictOrder.filter((verdict: Verdict) => report.counts[verdict] > 0);
    expect(seen).toEqual([...verdictOrder]);
    expect(exitCode(report)).toBe(1);
  });
});
