// Which months of a job are closed is said by name, and the months in which they are (the card's own: March to August).

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";

const sentenceOf = (months: readonly number[]) => {
  const plan = { sightrail: 1, title: "a hedge", place: ["ireland"], jobs: { cut: { does: "clear", months } } };
  const report = checkPlan({ file: "hedge.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25" });
  return report.findings.find(({ rule }) => rule === "works/clears-in-nesting-months")?.sentence;
};

describe("closed months", () => {
  it.each([
    [[5], "in 1 of the closed months (May; closed from March to August); none at all is wanted."],
    [[2, 3, 4], "in 2 of the closed months (March and April; closed from March to August); none at all is wanted."],
  ])("are named: %s", (months, words) => {
    expect(sentenceOf(months)).toContain(words);
  });

  it("are not named where none is touched", () => {
    expect(sentenceOf([10])).not.toContain("closed from");
  });
});
