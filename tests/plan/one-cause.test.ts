// One slip in the survey is told once, not again for everything that is measured from it.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { checkPlan } from "../../src/index.ts";
import { root } from "../house/rule-files.ts";

test("a decimal comma in the base line is one problem, though all runs and offsets hang on it", () => {
  const text = readFileSync(join(root, "examples/sallow-yard/plan.yaml"), "utf8").replace("tape: 36.40", "tape: 36,40");
  const { problems } = checkPlan({ file: "plan.yaml", text }, { asOf: "2026-11-25", remedies: false });
  expect(problems.map(({ line, got }) => [line, got])).toEqual([[14, '"36,40"']]);
});

test("a word in a peg's pair is one problem, not a second one of the list that it leaves behind", () => {
  const text = readFileSync(join(root, "examples/sallow-yard/plan.yaml"), "utf8").replace("[0, 0]", "[0, nought]");
  const { problems } = checkPlan({ file: "plan.yaml", text }, { asOf: "2026-11-25", remedies: false });
  expect(problems.map(({ line, got }) => [line, got])).toEqual([[13, '"nought"']]);
});
