// The sheet of the ground, on a plane field: sections, cut and fill and the way of the water by hand (COMPUTED).

import { describe, expect, it } from "vitest";
import { groundSheet } from "../../src/sheets/ground.ts";
import { planOf } from "../plan/resolved.ts";

/** z = 10 + 0.05 east - 0.02 north over 40 by 30 m. */
const text = `
stages: [now, yard]
survey:
  coordinates: {plus_minus: 0 mm}
  stations:
    A: {at: [0, 0], level: 10.00 ± 0.006}
    B: {at: [40, 0], level: 12.00 ± 0.006}
    C: {at: [40, 30], level: 11.40 ± 0.006}
    D: {at: [0, 30], level: 9.40 ± 0.006}
    M: {at: [30, 10]}
    N: {at: [10, 10]}
buildings: {barn: {outline: [[20, 5], [26, 5], [26, 9], [20, 9]], existing: true}}
surfaces:
  track: {centre_line: [[5, 20], [25, 20]], width: 4, existing: true}
  pad: {outline: [[12, 22], [24, 22], [24, 28], [12, 28]], finished: {level: 9.90}, layers: [{of: crushed rock, thickness: 200 mm}], from: yard}
drains:
  pipe: {line: [M, N], carries: rain, bore: 100 mm, inverts: {M: 10.50, N: 10.00}, from: yard}
`;
const sheet = groundSheet(planOf(text));
const words = sheet.parts.flatMap(({ entries }) => entries.map((entry) => entry.words));
const notes = (start: string) =>
  sheet.parts.flatMap(({ entries }) => entries).find((entry) => entry.words.startsWith(start))?.notes ?? [];

describe("the sheet of the ground", () => {
  it("says how it lies", () => {
    expect(words[0]).toBe("4 levels over 40 by 30 m, from 9.40 to 12.00");
  });
  it("follows the water down: 5 west to 2 north from the barn's lowest corner, past the track", () => {
    // From (20, 9) to (0, 17), where the levels end: 21.541 m, 1.16 m down; the track begins at north 18.
    expect(words).toContain(
      'From building "barn" it runs 21.5 m to the west of the plan, falling 1.16 m, then leaves the levels that were taken',
    );
  });
  it("gives cut and fill down to the formation at 9.70", () => {
    // Ground 10 + 0.05 e - 0.02 n over e 12..24, n 22..28 lies 9.90 +- 0.36 about: above 9.70 but for a corner at the west.
    // Net = area x (ground at the middle - 9.70) = 72 x (10.40 - 9.70) = 50.4, with 10 + 0.9 - 0.5 = 10.40 there.
    const row = sheet.table.rows.find(([sort]) => sort === "earth");
    expect(Number(row?.[9]) - Number(row?.[10])).toBeCloseTo(50.4, 1);
  });
  it("gives the long section of a drain with the depth of its invert", () => {
    // Ground at M 10 + 1.5 - 0.2 = 11.30, at N 10 + 0.5 - 0.2 = 10.30.
    const lines = notes('Drain "pipe"');
    expect(lines[0]).toBe("at 0.00 m ground 11.30, invert 10.50, 0.80 below the ground");
    expect(lines.at(-1)).toBe("at 20.00 m ground 10.30, invert 10.00, 0.30 below the ground");
  });
  it("gives cross sections of a way with a width", () => {
    // Left of eastwards is north: 2 m on 0.02 is 0.04 lower than the middle, 0.08 in 4 m is 2 in 100.
    const lines = notes('Surface "track", ground across');
    expect(lines).toEqual([
      "at 0.00 m left 9.81, middle 9.85, right 9.89; 2.0 in 100 down to the left",
      "at 20.00 m left 10.81, middle 10.85, right 10.89; 2.0 in 100 down to the left",
    ]);
  });
  it("has a table as wide as its head, and says what is wanted where nothing was levelled", () => {
    for (const row of sheet.table.rows) expect(row.length).toBe(sheet.table.columns.length);
    expect(groundSheet(planOf("stages: [now]")).foot[0]).toMatch(/^The ground needs levels/);
  });
});
