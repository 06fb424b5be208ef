// The place that decides: not always the nearest one, where one far corner is known less well; never a number that is none.

import { describe, expect, it } from "vitest";
import { checkPlan, type Finding } from "../../src/index.ts";

const rule = "fences/jumped-in-from-stand";
const jumped = (line: readonly object[], height: string | number = 1.8): Finding | undefined =>
  checkPlan(
    {
      file: "corner.yaml",
      text: JSON.stringify({
        sightrail: 1,
        title: "a wall along a fence",
        place: ["england"],
        survey: { stations: { A: { at: [0, 0] }, B: { line_to: "A", tape: 300 } } },
        walls: { old: { along: "A to B", line, height: 1, existing: true } },
        fences: { paddock: { line: ["A", "B"], height, keep_out: ["fox"], keep_out_side: "left" } },
      }),
    },
    { asOf: "2026-11-25", remedies: false },
  ).findings.find((finding) => finding.rule === rule);

describe("the place that decides", () => {
  it("is a farther corner where that one is hardly known", () => {
    // 3.2 m off asks for 2.05 m, the ends at 2.6 m for 1.76 m; but 3.2 ± 4 may be 0, where 0.8 m is enough.
    const line = [
      { run: 5, left: 2.6 },
      { run: 12, left: "3.2 ± 4" },
      { run: 20, left: 2.6 },
    ];
    expect(jumped(line)).toMatchObject({ verdict: "undecided", grade: "must" });
  });
  it("is found among more corners than are looked at closely", () => {
    const line = Array.from({ length: 150 }, (_, i) => ({ run: 2 * i, left: i === 149 ? "3.2 ± 4" : 2.6 + i * 1e-3 }));
    expect(jumped(line)).toMatchObject({ verdict: "undecided", grade: "must" });
  });
  it("is the nearest one where all are known alike", () => {
    const line = [
      { run: 5, left: 2.6 },
      { run: 12, left: 3.2 },
    ];
    expect(jumped(line)?.found?.value).toBeCloseTo((0.8 + Math.hypot(0.8, 2.6)) / 2, 3); // COMPUTED: parabola of reach
  });
});

describe("a doubt beyond all numbers", () => {
  const line = [
    { run: 5, left: 2.6 },
    { run: 12, left: 2.6 },
  ];
  it.each(["2.6 ± 1e200", "2.6 ± 1e308"])("%s is never a pass", (height) => {
    expect(["undecided", "not-given", undefined]).toContain(jumped(line, height)?.verdict);
  });
});
