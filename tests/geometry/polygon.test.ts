// Expected numbers: by hand (COMPUTED): a 10 m square with a 2 m square hole.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  holdsPoint,
  polygonArea,
  polygonCentroid,
  polygonEdge,
  polygonOf,
  ringsOf,
  totalArea,
  whereInPolygon,
} from "../../src/geometry/polygon.ts";
import type { Point } from "../../src/geometry/point.ts";
import { ringCentroid } from "../../src/geometry/ring.ts";
import { allMoved, anyMove, hole, moved, plotPoint, seeded, square } from "./figures.ts";

const frame = polygonOf(square, [hole]);

describe("areas with holes", () => {
  it("takes the hole off the area and adds its edge", () => {
    expect(polygonArea(frame)).toBe(96);
    expect(polygonEdge(frame)).toBe(48);
    expect(totalArea([frame, polygonOf(hole)])).toBe(100);
    expect(ringsOf(frame)).toHaveLength(2);
  });

  it("moves the centroid away from the hole", () => {
    expect(polygonCentroid(frame)).toEqual([5, 5]);
    const corner = hole.map(([x, y]): Point => [x + 3, y + 3]);
    // by hand: (100 x 5 - 4 x 8) / 96 = 4.875
    expect(polygonCentroid(polygonOf(square, [corner]))?.[0]).toBeCloseTo(4.875, 12);
    expect(polygonCentroid(polygonOf([]))).toBeNull();
    expect(polygonCentroid(polygonOf([[1, 2]]))).toEqual([1, 2]);
    expect(polygonCentroid(polygonOf(square, [[]]))).toEqual(ringCentroid(square));
  });

  it.each([
    ["inside", [2, 2], true],
    ["outside", [5, 5], false],
    ["boundary", [4, 5], true],
    ["boundary", [0, 0], true],
    ["outside", [11, 5], false],
  ] as const)("%s at %j", (expected, at, held) => {
    expect(whereInPolygon(frame, at)).toBe(expected);
    expect(holdsPoint(frame, at)).toBe(held);
  });

  it("says the same after shift, turn and mirror, for points off the boundary", () => {
    fc.assert(
      fc.property(plotPoint, anyMove, (at, move) => {
        fc.pre(whereInPolygon(frame, at) !== "boundary");
        const there = polygonOf(allMoved(move, square), [allMoved(move, hole)]);
        expect(whereInPolygon(there, moved(move, at))).toBe(whereInPolygon(frame, at));
      }),
      seeded,
    );
  });
});
