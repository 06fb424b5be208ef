// Which way water runs from what sheds it, and what it meets; lines of equal level in the drawing.

import { describe, expect, it } from "vitest";
import { readPlain } from "../../src/engine/spread.ts";
import { pictureOf } from "../../src/site/picture.ts";
import { waterWays } from "../../src/site/water-way.ts";
import { planOf } from "../plan/resolved.ts";

/** A plane field that falls 1 in 20 to the south and 1 in 40 to the east: z = 10 + 0.05 north - 0.025 east. */
const text = `
survey:
  stations:
    A: {at: [0, 0], level: 10}
    B: {at: [40, 0], level: 9}
    C: {at: [40, 40], level: 11}
    D: {at: [0, 40], level: 12}
buildings: {barn: {outline: [[10, 30], [16, 30], [16, 36], [10, 36]], existing: true}}
surfaces: {yard: {outline: [[10, 10], [30, 10], [30, 16], [10, 16]], existing: true}}
tanks: {far: {at: [60, 60], existing: true}}
`;
const plan = planOf(text);
const ways = waterWays(plan, plan.features, readPlain(plan.numbers));
const from = (name: string) => ways.find((way) => way.from.name === name);

describe("water on a plane", () => {
  it("leaves the lowest corner and runs straight down, 1 east to 2 south, to the edge of the levels (COMPUTED)", () => {
    const points = from("barn")?.path?.points ?? [];
    expect(points[0]).toEqual([16, 30]);
    const [east = 0, north = 0] = points.at(-1) ?? [];
    expect([east, north]).toEqual([expect.closeTo(31, 9), expect.closeTo(0, 9)]);
    expect(from("barn")?.path?.end).toBe("edge");
  });
  it("meets the yard where it crosses into it: from (16, 30) to (23, 16), 15.652 m down (COMPUTED)", () => {
    expect(from("barn")?.meets.map(({ feature, run }) => [feature.name, Math.round(1000 * run)])).toEqual([
      ["yard", 15652],
    ]);
    expect(from("yard")?.meets).toEqual([]);
  });
  it("is not guessed where no levels were taken", () => {
    expect(from("far")?.path).toBeNull();
    expect(
      waterWays(planOf("buildings: {b: {outline: [[0, 0], [1, 0], [1, 1]], existing: true}}"), [], () => 0),
    ).toEqual([]);
  });
});

describe("the drawing", () => {
  const { marks } = pictureOf(plan, 0, readPlain(plan.numbers), null);
  it("has lines of equal level, straight and evenly apart on a plane", () => {
    const lines = marks.filter(({ kind }) => kind === "contour");
    expect(lines.map(({ label }) => label)).toEqual([
      "9.2",
      "9.4",
      "9.6",
      "9.8",
      "10.0",
      "10.2",
      "10.4",
      "10.6",
      "10.8",
      "11.0",
      "11.2",
      "11.4",
      "11.6",
      "11.8",
    ]);
    for (const { label, points } of lines)
      for (const [east, north] of points) expect(10 + 0.05 * north - 0.025 * east).toBeCloseTo(Number(label), 9);
  });
  it("has the ways of the water, and neither where nothing was levelled", () => {
    expect(marks.filter(({ kind }) => kind === "runoff").map(({ name }) => name)).toEqual([
      "water from barn",
      "water from yard",
    ]);
    const bare = planOf("walls: {w: {line: [[0, 0], [9, 0]], height: 1, existing: true}}");
    expect(pictureOf(bare, 0, readPlain(bare.numbers), null).marks.map(({ kind }) => kind)).toEqual(["wall"]);
  });
});
