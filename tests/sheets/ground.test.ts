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
/** Swell and shrinkage as the table of weights has them; the ± of rolled clay left out, so that the usual tenth stands. */
const ratio = (value: number, u = 0) => ({ value, u, source: "" });
const densities = {
  name: "densities",
  dimension: "density",
  rows: new Map([
    ["clay", { bulking: ratio(1.3, 0.04), shrinkage: ratio(0.9) }],
    ["common earth", { bulking: ratio(1.25), shrinkage: ratio(0.9) }],
  ]),
} as const;
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
  describe("with the table of weights", () => {
    const half = `${text.replace("level: 9.90}, layers: [{of: crushed rock, thickness: 200 mm}]", "level: 10.40}")}ground: {soil: firm clay}`;
    const told = groundSheet(planOf(half), densities);
    const [entry] = told.parts.find(({ heading }) => heading.startsWith("CUT"))?.entries ?? [];
    const rows = told.table.rows.filter(([sort]) => String(sort).startsWith("earth"));
    it("tells the cut loose, the fill as it must be dug, and what is over or lacks", () => {
      // At 10.40, the level of the ground at the middle of the pad, cut and fill are alike: half of 72 m2 by the mean of
      // |0.05 x - 0.02 y|, (0.3^2 + 0.0012) / 0.6 = 0.152 m, is 5.472 m3; 7.11 loose, 6.08 to dig (COMPUTED).
      const [plain, loose, dig] = rows;
      const cut = Number(plain?.[9]);
      expect(cut).toBeCloseTo(5.472, 2);
      expect(Number(plain?.[10])).toBeCloseTo(cut, 2);
      expect(Number(loose?.[9])).toBeCloseTo(1.3 * cut, 1);
      expect(Number(dig?.[10])).toBeCloseTo(cut / 0.9, 1);
      expect(entry?.notes[0]).toMatch(/^the cut takes up 7\.1 ± \d\.\d m3 loose in the heap \(as clay\)$/);
      expect(entry?.notes[1]).toMatch(/^the fill wants 6\.1 ± \d\.\d m3 as it lies in the ground \(as clay\)$/);
      expect(entry?.notes[2]).toMatch(/^rolled into the fill the cut comes out even, within ± \d\.\d m3/);
    });
    it("counts the doubt of the ratio with that of the volume", () => {
      const [plain, loose] = rows;
      const [cut, u] = [Number(plain?.[9]), Number(plain?.[11]) / 2];
      // u^2 = (1.3 u)^2 + (0.04 V)^2 (JCGM 100:2008 5.1.2, MEMORY).
      expect(Number(loose?.[11]) / 2).toBeCloseTo(Math.hypot(1.3 * u, 0.04 * cut), 1);
    });
    it("takes common earth where the soil is not named, and says what is over and what lacks", () => {
      const notes = (level: string) => {
        const plan = planOf(
          text.replace("level: 9.90}, layers: [{of: crushed rock, thickness: 200 mm}]", `level: ${level}}`),
        );
        return (
          groundSheet(plan, densities).parts.find(({ heading }) => heading.startsWith("CUT"))?.entries[0]?.notes ?? []
        );
      };
      expect(notes("10.30")[0]).toContain("(as common earth)");
      expect(notes("10.30")[2]).toMatch(/^after the fill is rolled \d\.\d ± \d\.\d m3 are over/);
      expect(notes("10.52")[2]).toMatch(/^\d+\.\d ± \d\.\d m3 lack for the fill/);
    });
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
