// Level books: the closed run with three change points, misses, named spots, feet of walls.

import { describe, expect, it } from "vitest";
import type { Spot } from "../../src/model/quantity.ts";
import { featureOf, planOf, pointOf, resolveText, uOf, valueOf } from "./resolved.ts";

const pegs = ["TBM", "A", "B", "C", "D"].map((name, i) => `    ${name}: {at: [${i * 10}, 0]}`).join("\n");
const book = `
survey:
  levelling: {plus_minus: 4 mm}
  stations:
${pegs}
  level_book:
    - {at: TBM, bs: 1.245, level: 50.000}
    - {at: A, is: 1.870}
    - {at: B, is: 2.405}
    - {change: true, fs: 2.910, bs: 0.655}
    - {at: C, is: 1.335}
    - {change: true, fs: 1.960, bs: 2.780}
    - {at: D, is: 1.115}
    - {change: true, fs: 0.940, bs: 1.905}
    - {at: TBM, fs: 0.778}
`;

describe("a closed run", () => {
  const plan = planOf(book);
  const level = (name: string) => plan.pegs.get(name)?.level as never;

  it("comes home at 49.997 and spreads 0.75 mm a set-up", () => {
    // COMPUTED (invented field data): reduced levels A 49.375, B 48.840, C 47.655, D 48.695, home 49.997; 4 set-ups.
    const [run] = plan.surveyFacts?.levelRuns ?? [];
    expect(run?.misclosure).toBeCloseTo(-0.003, 9);
    expect(run?.setUps).toBe(4);
    const reduced = { A: 49.375 + 0.00075, B: 48.84 + 0.00075, C: 47.655 + 0.0015, D: 48.695 + 0.00225 };
    for (const [name, expected] of Object.entries(reduced)) expect(valueOf(plan, level(name))).toBeCloseTo(expected, 9);
    expect(valueOf(plan, level("TBM"))).toBe(50);
  });

  it("knows the doubt of each level, set-up by set-up", () => {
    const u = 0.002;
    // COMPUTED: after k of n set-ups a share k/n of all eight readings is taken out again.
    // A: (1 - 1/4)^2 for its backsight, 1 for its own sight, (1/4)^2 for each of the other seven.
    expect(uOf(plan, level("A"))).toBeCloseTo(u * Math.sqrt((3 / 4) ** 2 + 1 + 7 * (1 / 4) ** 2), 9);
    expect(uOf(plan, level("TBM"))).toBe(0);
    expect(plan.surveyFacts?.levelRuns[0]?.u).toBeCloseTo(u * Math.sqrt(8), 9);
  });

  it("keeps a gross miss as data for a rule, never as an exception", () => {
    const wrong = resolveText(book.replace("fs: 0.778", "fs: 0.878"));
    expect(wrong.problems).toEqual([]);
    expect(wrong.plan.surveyFacts?.levelRuns[0]?.misclosure).toBeCloseTo(-0.103, 9);
  });
});

describe("rows of the book", () => {
  it("level a named spot and use it as a peg", () => {
    const plan = planOf(`
survey:
  stations:
    P1: {at: [0, 0]}
    P2: {line_to: P1, tape: 20}
  level_book:
    - {at: P1, bs: 1.5, level: 10}
    - {spot: {along: P1 to P2, run: 8, right: 2}, name: S1, is: 1.0}
obstacles:
  rock: {at: S1}
`);
    expect(pointOf(plan, plan.pegs.get("S1") as Spot)).toEqual([8, -2]);
    const { shape } = featureOf(plan, "rock");
    expect(shape?.form === "point" ? valueOf(plan, shape.at.level as never) : null).toBeCloseTo(10.5, 9);
    expect(plan.surveyFacts?.levelRuns).toEqual([]);
  });

  it("average a peg that was read twice", () => {
    const plan = planOf(book.replace("    - {at: B, is: 2.405}", "    - {at: A, is: 1.874}\n    - {at: B, is: 2.405}"));
    expect(valueOf(plan, plan.pegs.get("A")?.level as never)).toBeCloseTo(49.373 + 0.00075, 9);
  });

  it("need a start of known level", () => {
    const { problems, plan } = resolveText(book.replace(", level: 50.000", ""));
    expect(problems.map((one) => one.code)).toEqual(["missing-key"]);
    expect(problems[0]?.hint).toContain("level: 100.000");
    expect(plan.pegs.size).toBe(5);
  });
});

describe("a run that closes on a spot with a name", () => {
  it("comes home to it", () => {
    // 50.000 + 1.204 - 0.873 + 1.012 - 1.345 = 49.998 (COMPUTED).
    const plan = planOf(`
survey:
  stations: {A: {at: [0, 0]}}
  level_book:
    - {spot: [4, 4], name: BM, bs: 1.204, level: 50.000}
    - {change: true, fs: 0.873, bs: 1.012}
    - {spot: BM, fs: 1.345}
`);
    expect(plan.surveyFacts?.levelRuns.map(({ to, misclosure }) => [to, Math.round(1e6 * misclosure)])).toEqual([
      ["BM", -2000],
    ]);
    expect(plan.levels.length).toBe(1);
  });
});
