// Expected numbers: by hand (COMPUTED); areas against GEOS in geos.test.ts.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convexHull } from "../../src/geometry/convex-hull.ts";
import { sideOf } from "../../src/geometry/orientation.ts";
import { sidesOf } from "../../src/geometry/ring.ts";
import { hole, plotPoint, seeded, square } from "./figures.ts";

describe("convex hull", () => {
  it("keeps the corners only, counter-clockwise", () => {
    expect(convexHull([...hole, ...square, [5, 0], [0, 0]])).toEqual(square);
  });

  it("is a point or a line where there is no more", () => {
    expect(convexHull([])).toEqual([]);
    expect(
      convexHull([
        [1, 1],
        [1, 1],
      ]),
    ).toEqual([[1, 1]]);
    expect(
      convexHull([
        [2, 2],
        [0, 0],
        [1, 1],
      ]),
    ).toEqual([
      [0, 0],
      [2, 2],
    ]);
  });

  it("has every point on the left of every side, and turns left at every corner", () => {
    fc.assert(
      fc.property(fc.array(plotPoint, { minLength: 3, maxLength: 30 }), (points) => {
        const hull = convexHull(points);
        fc.pre(hull.length > 2);
        for (const [start, end] of sidesOf(hull))
          for (const point of points) expect(sideOf(start, end, point)).not.toBe(-1);
      }),
      seeded,
    );
  });
});
