// Expected numbers: by hand (COMPUTED).
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  areaFigure,
  figureBox,
  lineFigure,
  neighboursOf,
  pointFigure,
  ringFigure,
  sideAt,
  sideCount,
  type Figure,
} from "../../src/geometry/figure.ts";
import { distanceTo, meetingPlace, nearest, nearestOfSegments, nearestSide } from "../../src/geometry/nearest.ts";
import { between, distance, type Point } from "../../src/geometry/point.ts";
import { polygonOf } from "../../src/geometry/polygon.ts";
import { sidesOf } from "../../src/geometry/ring.ts";
import { allMoved, anyMove, hole, plotPoint, seeded, square, starRing } from "./figures.ts";

const frame = areaFigure(polygonOf(square, [hole]));
const post = (east: number, north: number): Figure => pointFigure([east, north]);

describe("figures", () => {
  it("counts sides and neighbours", () => {
    expect(sideCount({ points: square, ends: "closed" })).toBe(4);
    expect(sideCount({ points: square, ends: "open" })).toBe(3);
    expect(sideCount({ points: [[1, 1]], ends: "open" })).toBe(1);
    expect(sideAt({ points: square, ends: "closed" }, 3)).toEqual([square[3], square[0]]);
    expect(neighboursOf({ points: square, ends: "open" }, 0)).toEqual([square[1]]);
    expect(neighboursOf({ points: square, ends: "closed" }, 0)).toEqual([square[3], square[1]]);
    expect(figureBox(frame)).toEqual({ west: 0, south: 0, east: 10, north: 10 });
  });
});

describe("clear distance", () => {
  it("from a post to an area: outside, in the hole, inside, on the edge", () => {
    expect(nearest(post(13, 14), frame)).toEqual({
      distance: 5,
      onA: [13, 14],
      onB: [10, 10],
      pair: { vertexOf: "a", chain: 0, vertex: 0, sideChain: 0, side: 1 },
    });
    expect(nearest(post(5, 5.5), frame)?.distance).toBe(0.5);
    expect(nearest(frame, post(5, 5.5))?.pair?.vertexOf).toBe("b");
    expect(nearest(post(2, 2), frame)).toEqual({ distance: 0, onA: [2, 2], onB: [2, 2], pair: null });
    expect(nearest(post(0, 5), frame)?.distance).toBe(0);
    expect(nearest(post(1, 2), post(4, 6))?.distance).toBe(5);
    expect(nearest(lineFigure([]), frame)).toBeNull();
  });

  it("knows a closed line from an area", () => {
    expect(nearest(post(5, 5), ringFigure(square))?.distance).toBe(5);
    expect(nearest(post(5, 5), areaFigure(polygonOf(square)))?.distance).toBe(0);
  });

  it("is 0 where a line passes through, with the place", () => {
    const through = lineFigure([
      [-5, 2],
      [15, 2],
    ]);
    const met = meetingPlace(through, frame) as Point;
    expect(met[1]).toBe(2);
    expect(nearest(through, frame)?.distance).toBe(0);
    expect(nearest(frame, through)?.distance).toBe(0);
  });

  it("between segments: apart, crossing, overlapping", () => {
    const base = [
      [0, 0],
      [10, 0],
    ] as const;
    expect(
      nearestOfSegments(base, [
        [3, 4],
        [3, 9],
      ]),
    ).toEqual({ distance: 4, onA: [3, 0], onB: [3, 4] });
    expect(
      nearestOfSegments(
        [
          [3, 4],
          [3, 9],
        ],
        base,
      ),
    ).toEqual({ distance: 4, onA: [3, 4], onB: [3, 0] });
    expect(
      nearestOfSegments(base, [
        [3, -1],
        [3, 1],
      ]).onA,
    ).toEqual([3, 0]);
    expect(
      nearestOfSegments(base, [
        [8, 0],
        [12, 0],
      ]),
    ).toEqual({ distance: 0, onA: [10, 0], onB: [10, 0] });
  });

  it("of a point: 0 inside, nothing from nothing", () => {
    expect(distanceTo(frame, [1, 1])).toBe(0);
    expect(distanceTo(frame, [12, 5])).toBe(2);
    expect(distanceTo(lineFigure([]), [1, 1])).toBeNull();
    expect(nearestSide(frame, [12, 5])?.side).toBe(1);
  });

  it("is the same both ways, and after shift, turn and mirror", () => {
    let apart = 0;
    fc.assert(
      fc.property(starRing, starRing, anyMove, (one, two, move) => {
        const [a, b] = [areaFigure(polygonOf(one)), areaFigure(polygonOf(two))];
        const here = nearest(a, b);
        const back = nearest(b, a);
        const there = nearest(areaFigure(polygonOf(allMoved(move, one))), areaFigure(polygonOf(allMoved(move, two))));
        if (here === null || back === null || there === null) throw new Error("figures have vertices");
        expect(back.distance).toBeCloseTo(here.distance, 9);
        expect(there.distance).toBeCloseTo(here.distance, 7);
        expect(distance(here.onA, here.onB)).toBeCloseTo(here.distance, 9);
        if (here.distance > 0) apart++;
      }),
      seeded,
    );
    expect(apart).toBeGreaterThan(50);
  });

  it("is never more than between any two points on the sides, and reached by one pair (sampled)", () => {
    fc.assert(
      fc.property(starRing, plotPoint, plotPoint, (ring, from, to) => {
        const found = nearest(areaFigure(polygonOf(ring)), lineFigure([from, to]));
        for (const [start, end] of sidesOf(ring)) {
          for (let i = 0; i <= 4; i++) {
            for (let j = 0; j <= 4; j++) {
              const gap = distance(between(start, end, i / 4), between(from, to, j / 4));
              expect(found?.distance).toBeLessThanOrEqual(gap + 1e-9);
            }
          }
        }
      }),
      { ...seeded, numRuns: 100 },
    );
  });
});
