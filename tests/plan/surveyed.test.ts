// What the survey says of itself: suspects named, wild tapes left out, pegs checked or not, runs of levels.

import { describe, expect, it } from "vitest";
import { misfitOf } from "../../src/adjustment/misfit.ts";
import type { Plan } from "../../src/model/plan.ts";
import { planOf, resolveText } from "./resolved.ts";

/** Every tape twice; E at (9, 6), its tapes worked from the adjusted places of the others. */
const braced = (check = "[19.052, 19.054]") => `
survey:
  stations:
    A: {at: [0, 0]}
    B: {line_to: A, tape: 24.003}
    C: {ties: {A: [26.395, 26.397], B: [16.284, 16.286]}, side: left of A to B}
    D: {ties: {A: [14.645, 14.647], B: [26.346, 26.348]}, side: left of A to B}
    E: {ties: {A: 10.817, B: 16.156, C: 15.618, D: 11.014}, side: left of A to B}
  checks:
    - {between: [C, D], tape: ${check}}
`;

const suspectsOf = (plan: Plan) => plan.surveyed?.find(({ kind }) => kind === "survey")?.properties["suspects"];

describe("a survey", () => {
  it("lists the whole, the pegs and the runs, and none of them among the features", () => {
    const plan = planOf(braced());
    const names = plan.surveyed?.map(({ kind, name }) => `${kind} ${name}`);
    expect(names).toEqual(["survey pegs and tapes", "peg A", "peg B", "peg C", "peg D", "peg E"]);
    expect(plan.features).toEqual([]);
    expect(plan.baseline).toEqual(["A", "B"]);
    expect(suspectsOf(plan)).toBe("");
  });
  it("names the one tape that is wrong, with how much", () => {
    expect(suspectsOf(planOf(braced("19.352")))).toMatch(/^measure again tape C to D; it looks 0\.3\d too large$/);
  });
  it("names the one that bends the whole plan", () => {
    expect(suspectsOf(planOf(braced("910.152")))).toBe("measure again tape C to D");
  });
  it("leaves out a tape that no place comes near, says so at its line, and places the pegs all the same", () => {
    const { plan, problems } = resolveText(braced("91.152"));
    expect(problems.map(({ code, line, got }) => ({ code, line, got }))).toEqual([
      { code: "cannot-close", line: 10, got: "tape C to D, 91.152 m, which no place of the pegs comes near" },
    ]);
    expect(plan.pegs.size).toBe(5);
    expect(plan.surveyFacts?.chiSquare).toBeLessThan(2);
  });
  it("has pegs with and without a check", () => {
    const told = (text: string) =>
      (planOf(text).surveyed ?? []).flatMap(({ kind, properties }) =>
        kind === "peg" ? [[properties["measured"], properties["checked"]]] : [],
      );
    expect(told(braced())).toEqual([[false, true], ...Array.from({ length: 4 }, () => [true, true])]);
    const bare = "survey: {stations: {A: {at: [0, 0]}, B: {line_to: A, tape: 24}}}";
    expect(told(bare)).toEqual([
      [false, true],
      [true, false],
    ]);
  });
});

describe("misfit", () => {
  const one = (standardised: number) => ({ id: "t", u: 1, residual: 0, redundancy: 0.5, standardised });
  // Chi-square 0.05 points, any table of the distribution (MEMORY): 5.991 at 2, 18.307 at 10. Two-sided 5 % is 1.96.
  it.each([
    [5.991, 2],
    [18.307, 10],
  ])("chi-square %d at %d degrees of freedom is 1.96", (chiSquare, degreesOfFreedom) => {
    const misfit = misfitOf({ chiSquare, degreesOfFreedom, probability: 0.05, observations: [one(0.1)] });
    expect(misfit).toBeCloseTo(1.96, 2);
  });
  it("is the residual itself with one redundancy, and null with none", () => {
    expect(misfitOf({ chiSquare: 20.4, degreesOfFreedom: 1, probability: 6e-6, observations: [] })).toBeCloseTo(
      4.517,
      3,
    );
    expect(misfitOf({ chiSquare: 0, degreesOfFreedom: 0, probability: null, observations: [] })).toBeNull();
  });
  it("counts a worst residual once for each that could have been it", () => {
    // 2 (1 - Phi(4)) = 6.334e-5 (any table, MEMORY); a hundred of them 6.334e-3, which is 2.7295 (COMPUTED).
    const observations = [one(4), ...Array.from({ length: 99 }, () => one(0))];
    expect(misfitOf({ chiSquare: 16, degreesOfFreedom: 60, probability: 1, observations })).toBeCloseTo(2.73, 2);
  });
  it("keeps growing where the chance is too small for a double", () => {
    const at = (size: number) =>
      misfitOf({ chiSquare: size * size, degreesOfFreedom: 5, probability: 0, observations: [one(size), one(1)] }) ?? 0;
    expect(at(50)).toBeGreaterThan(at(40));
    expect(at(1000)).toBeGreaterThan(900);
  });
});
