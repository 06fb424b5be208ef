import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  crossingsWithCircle,
  cutOffArea,
  lineAlongArc,
  pointOnCircle,
  ringAround,
  sharedWithCircle,
  sidesForArc,
} from "../../src/geometry/circle.ts";
import { intersection } from "../../src/geometry/overlay.ts";
import { distance, type Point } from "../../src/geometry/point.ts";
import { polygonOf, totalArea } from "../../src/geometry/polygon.ts";
import { ringArea, sidesOf, whereInRing } from "../../src/geometry/ring.ts";
import { footOn } from "../../src/geometry/segment.ts";
import { allMoved, anyMove, hole, moved, plotPoint, seeded, square, starRing } from "./figures.ts";

describe("area cut off a circle by a line", () => {
  it("of radius 6 m, line 4 m from the centre: 12.39 m2 (COMPUTED, r^2 acos(d/r) - d sqrt(r^2 - d^2))", () => {
    expect(cutOffArea(6, 4)).toBeCloseTo(12.39, 2);
    expect(cutOffArea(6, 4) / (36 * Math.PI)).toBeCloseTo(0.1096, 4);
  });

  it("is half at the centre, nothing outside, all beyond, and the two pieces make the whole", () => {
    expect(cutOffArea(2, 0)).toBeCloseTo(2 * Math.PI, 12);
    expect(cutOffArea(2, 2)).toBe(0);
    expect(cutOffArea(2, 3)).toBe(0);
    expect(cutOffArea(2, -2)).toBeCloseTo(4 * Math.PI, 12);
    expect(cutOffArea(2, 0.7) + cutOffArea(2, -0.7)).toBeCloseTo(4 * Math.PI, 12);
  });
});

describe("area shared by a circle and a polygon", () => {
  const box = polygonOf(square);

  it.each([
    ["circle inside: pi r2", [5, 5], 2, 4 * Math.PI],
    ["polygon inside: its area", [5, 5], 20, 100],
    ["centre on a corner: a quarter", [0, 0], 3, (9 * Math.PI) / 4],
    ["centre on a side: a half", [5, 0], 3, (9 * Math.PI) / 2],
    ["apart", [20, 20], 3, 0],
    ["cut by one side: all but the piece cut off", [6, 5], 6, 36 * Math.PI - cutOffArea(6, 4) - 2 * cutOffArea(6, 5)],
  ] as const)("%s (COMPUTED)", (_, centre, radius, expected) => {
    expect(sharedWithCircle({ centre, radius }, box)).toBeCloseTo(expected, 9);
  });

  it("leaves the hole out", () => {
    expect(sharedWithCircle({ centre: [5, 5], radius: 20 }, polygonOf(square, [hole]))).toBeCloseTo(96, 9);
    expect(sharedWithCircle({ centre: [5, 5], radius: 1 }, polygonOf(square, [hole]))).toBeCloseTo(0, 9);
    expect(
      sharedWithCircle(
        { centre: [5, 5], radius: 1 },
        polygonOf([
          [0, 0],
          [0, 0],
          [1, 1],
        ]),
      ),
    ).toBe(0);
  });

  it("agrees with a many-sided circle laid over the polygon, before and after a move", () => {
    fc.assert(
      fc.property(starRing, plotPoint, fc.integer({ min: 50, max: 900 }), anyMove, (ring, centre, cm, move) => {
        const radius = cm / 100;
        const exact = sharedWithCircle({ centre, radius }, polygonOf(ring));
        const drawn = polygonOf(ringAround({ centre, radius }, 0.0001, "inscribed"));
        const shared = totalArea(intersection([polygonOf(ring)], [drawn]) ?? []);
        // The drawn circle lacks at most 0.1 mm all round.
        expect(Math.abs(exact - shared)).toBeLessThan(2 * Math.PI * radius * 0.0001 + 2e-4);
        const there = sharedWithCircle({ centre: moved(move, centre), radius }, polygonOf(allMoved(move, ring)));
        expect(there).toBeCloseTo(exact, 6);
      }),
      { ...seeded, numRuns: 150 },
    );
  });
});

describe("points of circles and arcs", () => {
  const circle = { centre: [1, 2] as Point, radius: 5 };

  it("finds where a segment crosses: 3-4-5", () => {
    expect(
      crossingsWithCircle(circle, [
        [-9, 6],
        [11, 6],
      ]),
    ).toEqual([
      [-2, 6],
      [4, 6],
    ]);
    expect(
      crossingsWithCircle(circle, [
        [1, 6],
        [11, 6],
      ]),
    ).toEqual([[4, 6]]);
    expect(
      crossingsWithCircle(circle, [
        [-9, 7],
        [11, 7],
      ]),
    ).toEqual([]);
    expect(
      crossingsWithCircle(circle, [
        [1, 1],
        [1, 1],
      ]),
    ).toEqual([]);
  });

  it("counts azimuths clockwise from north", () => {
    expect(pointOnCircle(circle, 0)).toEqual([1, 7]);
    expect(pointOnCircle(circle, Math.PI / 2)[0]).toBeCloseTo(6, 12);
  });

  it("draws as many sides as the slack asks for: sagitta r (1 - cos(a/2))", () => {
    expect(sidesForArc(1, Math.PI, 1 - Math.cos(Math.PI / 8))).toBe(4);
    expect(sidesForArc(1, Math.PI, 2)).toBe(2);
    expect(sidesForArc(5, 0, 0.01)).toBe(1);
  });

  it("draws rings inside and around, within the slack", () => {
    const inner = ringAround(circle, 0.01, "inscribed");
    const outer = ringAround(circle, 0.01, "around");
    expect(ringArea(inner)).toBeLessThan(25 * Math.PI);
    expect(ringArea(outer)).toBeGreaterThan(25 * Math.PI);
    for (const side of sidesOf(inner))
      expect(5 - footOn(side, circle.centre).distance).toBeLessThanOrEqual(0.01 + 1e-9);
    for (const side of sidesOf(outer)) expect(footOn(side, circle.centre).distance).toBeGreaterThan(5 - 1e-9);
    expect(whereInRing(inner, circle.centre)).toBe("inside");
    expect(ringAround(circle, 100, "inscribed")).toHaveLength(4);
  });

  it("draws arcs that meet both ends, either way round", () => {
    const line = lineAlongArc(circle, { from: 0, sweep: -Math.PI / 2 }, 0.01);
    expect(line[0]).toEqual([1, 7]);
    expect(line.at(-1)?.[0]).toBeCloseTo(-4, 12);
    for (const point of line) expect(distance(point, circle.centre)).toBeCloseTo(5, 12);
  });
});
