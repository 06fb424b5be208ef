// The ground of a plan: levels along one foot, crest or bed are joined, so that a bank is not bridged.

import { describe, expect, it } from "vitest";
import type { Read } from "../../src/model/quantity.ts";
import { groundOf, levelAtPoint } from "../../src/site/ground.ts";
import { planOf } from "../plan/resolved.ts";

const levelAt = (text: string, at: readonly [number, number]) => {
  const plan = planOf(text);
  const read: Read = ({ id }) => plan.numbers.values[id] as number;
  return levelAtPoint(groundOf({ levels: plan.levels, read }), () => at, read)?.(read) ?? null;
};

/** A terrace edge that runs slantwise between level 10 above and level 8 below; its pegs stand far apart. */
const bank = (drawn: string) => `
survey:
  stations:
    A: {at: [0, 0], level: 8}
    B: {at: [40, 0], level: 8}
    C: {at: [40, 30], level: 10}
    D: {at: [0, 30], level: 10}
    T1: {at: [2, 12], level: 8}
    T2: {at: [38, 16], level: 8}
    C1: {at: [2, 14], level: 10}
    C2: {at: [38, 18], level: 10}
    S1: {at: [20, 12], level: 8}
    S2: {at: [20, 18], level: 10}
${drawn}
`;

describe("a bank with levelled crest and toe", () => {
  // Crest y = 14 + (x - 2) / 9, toe two metres below it on the plan; at x = 20 the crest lies at 16, the toe at 14.
  const drawn = "banks: {edge: {crest: [C1, C2], toe: [T1, T2], existing: true}}";
  it("is level above its crest and below its toe, and half way down half way between (COMPUTED)", () => {
    expect(levelAt(bank(drawn), [20, 16.2])).toBeCloseTo(10, 9);
    expect(levelAt(bank(drawn), [20, 13.8])).toBeCloseTo(8, 9);
    expect(levelAt(bank(drawn), [20, 15])).toBeCloseTo(9, 9);
  });
  it("would be bridged where the plan does not draw it", () => {
    const without = [16.2, 15, 13.8].map((north, k) =>
      Math.abs((levelAt(bank(""), [20, north]) ?? 0) - [10, 9, 8][k]!),
    );
    expect(Math.max(...without)).toBeGreaterThan(0.05);
  });
});

describe("levels along the two feet of a wall", () => {
  // A wall 40 m long that holds 1.5 m: between its feet, half a metre apart, the ground steps; beside it it does not.
  const text = `
survey:
  stations:
    A: {at: [0, 0], level: 10}
    B: {line_to: A, tape: 40, level: 10}
    C: {at: [0, 20], level: 11.5}
    D: {at: [40, 20], level: 11.5}
    H: {at: [20, 9], level: 10}
    K: {at: [20, 12], level: 11.5}
  level_book:
    - {at: A, bs: 2.0, level: 10}
    - {of: walls terrace, at: 0, foot: right, is: 2.0}
    - {of: walls terrace, at: 20, foot: right, is: 2.0}
    - {of: walls terrace, at: 40, foot: right, is: 2.0}
    - {of: walls terrace, at: 0, foot: left, is: 0.5}
    - {of: walls terrace, at: 20, foot: left, is: 0.5}
    - {of: walls terrace, at: 40, foot: left, is: 0.5}
    - {at: A, fs: 2.0}
walls: {terrace: {line: [[0, 10], [40, 10]], height: 1.6, thickness: 0.5, existing: true}}
`;
  it("keep the step in the wall", () => {
    for (const east of [3, 11, 27, 36]) {
      expect(levelAt(text, [east, 9.7])).toBeCloseTo(10, 9);
      expect(levelAt(text, [east, 10.3])).toBeCloseTo(11.5, 9);
    }
  });
});
