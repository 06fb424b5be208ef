import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/point.ts";
import {
  cornersOf,
  fallAzimuth,
  groundAt,
  levelOnPlane,
  levelPlane,
  planeOf,
  planeThrough,
  slopeOf,
  weightsAt,
  type Plane,
} from "../../src/terrain/surface.ts";
import { allMoved, anyMove } from "../geometry/figures.ts";
import { gridSurface, seeded, surfaceOver } from "./ground.ts";

describe("plane through three levels", () => {
  // z = a x + b y + c through (0, 0, 10.0) (10, 0, 10.6) (0, 8, 10.2): COMPUTED, exact by the 5-12-13 triangle.
  const plane = planeThrough(
    [
      [0, 0],
      [10, 0],
      [0, 8],
    ],
    [10, 10.6, 10.2],
  ) as Plane;

  it("slopes 6.5 % and falls to azimuth 247.380 degrees", () => {
    expect(plane.east).toBeCloseTo(0.06, 12);
    expect(plane.north).toBeCloseTo(0.025, 12);
    expect(slopeOf(plane)).toBeCloseTo(0.065, 12);
    expect(Math.abs(((fallAzimuth(plane) as number) * 180) / Math.PI - 247.38)).toBeLessThan(1e-3);
    expect(levelOnPlane(plane, [10, 8])).toBeCloseTo(10.8, 12);
  });

  it("has no fall where it is level, and is none where the points lie on one line", () => {
    expect(fallAzimuth(levelPlane(3))).toBeNull();
    expect(slopeOf(levelPlane(3))).toBe(0);
    expect(levelOnPlane(levelPlane(3), [7, 8])).toBe(3);
    expect(
      planeThrough(
        [
          [0, 0],
          [1, 1],
          [2, 2],
        ],
        [0, 0, 0],
      ),
    ).toBeNull();
  });

  it("keeps its slope under shift, turn and mirror, and turns its fall", () => {
    fc.assert(
      fc.property(anyMove, (move) => {
        const there = allMoved(move, [
          [0, 0],
          [10, 0],
          [0, 8],
        ]) as [Point, Point, Point];
        const turned = planeThrough(there, [10, 10.6, 10.2]) as Plane;
        expect(slopeOf(turned)).toBeCloseTo(0.065, 8);
      }),
      seeded,
    );
  });
});

describe("ground over a net", () => {
  const sloping = surfaceOver([
    [0, 0, 10],
    [10, 0, 10.6],
    [0, 8, 10.2],
  ]);

  it("has the level of the plane inside, on edges and corners", () => {
    expect(groundAt(sloping, [2, 2])?.level).toBeCloseTo(10.17, 12); // by hand: 10 + 0.12 + 0.05
    expect(groundAt(sloping, [0, 8])?.level).toBeCloseTo(10.2, 12);
    expect(groundAt(sloping, [5, 0])?.level).toBeCloseTo(10.3, 12);
    expect(planeOf(sloping, 0)?.east).toBeCloseTo(0.06, 12);
    expect(cornersOf(sloping, 0).levels.toSorted((a, b) => a - b)).toEqual([10, 10.2, 10.6]);
  });

  it("guesses nothing outside the points", () => {
    expect(groundAt(sloping, [9, 8])).toBeNull();
    expect(groundAt(sloping, [-0.001, 1])).toBeNull();
  });

  it("has no ground where moved points leave a triangle without area", () => {
    const flat = {
      net: {
        ...sloping.net,
        points: [
          [0, 0],
          [10, 0],
          [5, 0],
        ] as const,
      },
      levels: sloping.levels,
    };
    expect(planeOf(flat, 0)).toBeNull();
    expect(groundAt(flat, [5, 0])).toBeNull();
    expect(weightsAt(flat.net, 0, [5, 0]).map(({ weight }) => weight)).toEqual([1 / 3, 1 / 3, 1 / 3]);
  });

  it("weighs the corners: sum 1, and the sum of weight x level is the level", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2000 }), fc.integer({ min: 0, max: 2000 }), (x, y) => {
        const surface = gridSurface(5, (east, north) => Math.sin(east) + north * 0.1);
        const at: Point = [x / 100, y / 100];
        const ground = groundAt(surface, at);
        if (ground === null) throw new Error("the point lies on the grid");
        const weights = weightsAt(surface.net, ground.triangle, at);
        expect(weights.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
        const level = weights.reduce((sum, { point, weight }) => sum + weight * (surface.levels[point] as number), 0);
        expect(level).toBeCloseTo(ground.level, 9);
      }),
      seeded,
    );
  });

  it("takes other levels over the same triangles", () => {
    const nudged = { net: sloping.net, levels: [10, 10.6, 10.28] };
    // by hand: the weight of the third corner at (2, 2) is 2/8, so + 0.02
    expect(groundAt(nudged, [2, 2])?.level).toBeCloseTo(10.19, 12);
  });
});
