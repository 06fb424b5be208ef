// Expected numbers: by hand (COMPUTED) unless said otherwise.
import { booleanPointInPolygon, polygon as turfPolygon } from "@turf/turf";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/point.ts";
import {
  counterClockwise,
  openedRing,
  ringArea,
  ringCentroid,
  ringLength,
  sidesOf,
  signedArea,
  whereInRing,
} from "../../src/geometry/ring.ts";
import { allMoved, anyMove, moved, plotPoint, seeded, square, starRing } from "./figures.ts";

const triangle: readonly Point[] = [
  [0, 0],
  [6, 0],
  [0, 3],
];

describe("rings", () => {
  it("has sides, length, area and centroid", () => {
    expect(sidesOf(square)).toHaveLength(4);
    expect(ringLength(square)).toBe(40);
    expect(signedArea(square)).toBe(100);
    expect(signedArea(square.toReversed())).toBe(-100);
    expect(ringArea(triangle)).toBe(9);
    expect(ringCentroid(triangle)).toEqual([2, 1]); // a third of the way, by hand
    expect(signedArea([])).toBe(0);
    expect(ringCentroid([])).toBeNull();
  });

  it("takes the mean of the vertices where there is no area", () => {
    expect(
      ringCentroid([
        [0, 0],
        [4, 0],
      ]),
    ).toEqual([2, 0]);
  });

  it("drops a first point that is written again at the end", () => {
    expect(openedRing([...square, [0, 0]])).toEqual(square);
    expect(openedRing(square)).toEqual(square);
    expect(openedRing([[1, 1]])).toEqual([[1, 1]]);
  });

  it("turns a clockwise ring, keeping its first vertex", () => {
    const clockwise = [square[0], square[3], square[2], square[1]] as readonly Point[];
    expect(counterClockwise(clockwise)).toEqual(square);
    expect(counterClockwise(square)).toBe(square);
    expect(counterClockwise([])).toEqual([]);
  });

  it("keeps area and centroid under shift, turn and mirror", () => {
    fc.assert(
      fc.property(starRing, anyMove, (ring, move) => {
        const there = allMoved(move, ring);
        expect(signedArea(there)).toBeCloseTo(signedArea(ring) * move.mirrored, 6);
        const centre = moved(move, ringCentroid(ring) as Point);
        expect(ringCentroid(there)?.[0]).toBeCloseTo(centre[0], 6);
        expect(ringCentroid(there)?.[1]).toBeCloseTo(centre[1], 6);
      }),
      seeded,
    );
  });

  it("keeps the square millimetre far from the origin", () => {
    const far = square.map(([x, y]): Point => [x * 0.1 + 5_000_000, y * 0.1 + 5_000_000]);
    expect(Math.abs(signedArea(far) - 1)).toBeLessThan(1e-8); // coordinates themselves carry 1e-9 m there
  });
});

describe("point in ring", () => {
  it.each([
    ["inside", [5, 5]],
    ["outside", [15, 5]],
    ["outside", [-5, 0]],
    ["outside", [-5, 10]],
    ["boundary", [0, 5]],
    ["boundary", [5, 10]],
    ["boundary", [10, 10]],
    ["outside", [10.000001, 10]],
  ] as const)("%s at %j", (expected, at) => {
    expect(whereInRing(square, at)).toBe(expected);
    expect(whereInRing(square.toReversed(), at)).toBe(expected);
  });

  it("counts a ray through a vertex once", () => {
    const kite: readonly Point[] = [
      [0, 0],
      [5, -5],
      [10, 0],
      [5, 5],
    ];
    expect(whereInRing(kite, [2, 0])).toBe("inside");
    expect(whereInRing(kite, [-2, 0])).toBe("outside");
    expect(whereInRing(kite, [12, 0])).toBe("outside");
    expect(whereInRing(kite, [0, 5])).toBe("outside");
  });

  it("agrees with the planar test of turf", () => {
    const seen = { inside: 0, boundary: 0, outside: 0 };
    fc.assert(
      fc.property(starRing, plotPoint, (ring, at) => {
        const where = whereInRing(ring, at);
        seen[where]++;
        const area = turfPolygon([[...ring, ring[0] as Point].map((point) => [...point])]);
        expect(where !== "outside").toBe(booleanPointInPolygon([...at], area));
      }),
      { ...seeded, numRuns: 1500 },
    );
    expect(seen.inside).toBeGreaterThan(20);
    expect(seen.outside).toBeGreaterThan(20);
  });
});
