// Expected numbers: by hand (COMPUTED).
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crossingPairs } from "../../src/geometry/crossing-pairs.ts";
import { areaFigure, lineFigure, pointFigure, sideAt, type Figure } from "../../src/geometry/figure.ts";
import { pairDistance, type NearPair } from "../../src/geometry/near-pair.ts";
import { nearestPairs } from "../../src/geometry/near-pairs.ts";
import { nearest } from "../../src/geometry/nearest.ts";
import type { Point } from "../../src/geometry/point.ts";
import { polygonOf } from "../../src/geometry/polygon.ts";
import { allMoved, anyMove, hole, plotPoint, seeded, square, starRing } from "./figures.ts";

const area = areaFigure(polygonOf(square));
const least = (pairs: readonly NearPair[]): number => Math.min(...pairs.map((pair) => pair.distance));
const again = (pair: NearPair, a: Figure, b: Figure): number => {
  const [own, other] = pair.vertexOf === "a" ? [a, b] : [b, a];
  const at = own.chains[pair.chain]?.points[pair.vertex] as Point;
  return pairDistance(
    pair,
    at,
    sideAt(other.chains[pair.sideChain] as NonNullable<(typeof other.chains)[0]>, pair.side),
  );
};

describe("pairs of vertex and side", () => {
  it("tells the depth of areas that overlap along a common edge, and that neighbours only touch", () => {
    const box = (west: number, south: number, east: number, north: number) =>
      areaFigure(
        polygonOf([
          [west, south],
          [east, south],
          [east, north],
          [west, north],
        ]),
      );
    const of = (b: Figure) => least(nearestPairs(area, b, 5));
    // by hand: a square of 10 m; the shortest way out of each other (COMPUTED).
    expect(of(box(0, 7, 10, 15))).toBeCloseTo(-3, 9);
    expect(of(box(6, 0, 16, 10))).toBeCloseTo(-4, 9);
    expect(of(box(0, 0, 10, 10))).toBeCloseTo(-10, 9);
    expect(of(box(10, 0, 20, 10))).toBe(0);
    expect(of(box(10, 10, 20, 20))).toBe(0);
  });
  it("lists every pair within reach, and none beyond", () => {
    const pairs = nearestPairs(pointFigure([12, 5]), area, 5.4);
    // by hand: the east side at 2; its corners at sqrt(29) = 5.385, each on two sides; and each corner from the post.
    expect(pairs.map(({ distance }) => Number(distance.toFixed(3)))).toEqual([5.385, 2, 5.385, 5.385, 5.385]);
    expect(nearestPairs(pointFigure([12, 5]), area, 1.9)).toEqual([]);
  });

  it("gives the depth of a point inside, against its nearest side only", () => {
    expect(nearestPairs(pointFigure([8, 5]), area, 1)).toMatchObject([
      { how: "inside", vertexOf: "a", side: 1, distance: -2, foot: [10, 5] },
    ]);
  });

  it("counts inside a hole as outside, and its edge outward from the area", () => {
    const frame = areaFigure(polygonOf(square, [hole]));
    expect(least(nearestPairs(pointFigure([5, 5.5]), frame, 3))).toBe(0.5);
    const onEdge = nearestPairs(pointFigure([6, 5]), frame, 0.1);
    expect(onEdge).toHaveLength(1);
    const pair = onEdge[0] as NearPair;
    expect(pair.distance).toBe(0);
    expect(pairDistance(pair, [5.9, 5], sideAt(frame.chains[1] as never, pair.side))).toBeCloseTo(0.1, 12);
    expect(pairDistance(pair, [6.1, 5], sideAt(frame.chains[1] as never, pair.side))).toBeCloseTo(-0.1, 12);
  });

  it("passes smoothly through 0 when a point moves over the boundary, either way the ring runs", () => {
    for (const ring of [square, square.toReversed()]) {
      const figure = areaFigure(polygonOf(ring));
      const [pair] = nearestPairs(pointFigure([10, 4]), figure, 0) as [NearPair];
      const side = sideAt(figure.chains[0] as never, pair.side);
      expect(pairDistance(pair, [10.3, 4], side)).toBeCloseTo(0.3, 12);
      expect(pairDistance(pair, [9.7, 4], side)).toBeCloseTo(-0.3, 12);
    }
  });

  it("takes the far side of a thin thing for far, not for deep", () => {
    const thin = areaFigure(
      polygonOf([
        [0, 0],
        [0.1, 0],
        [0.1, 10],
        [0, 10],
      ]),
    );
    expect(least(nearestPairs(pointFigure([2.1, 5]), thin, 5))).toBeCloseTo(2, 12);
  });

  it("touching lines: 0, and above 0 on the side from which the line comes", () => {
    const wall = lineFigure([
      [0, 0],
      [10, 0],
    ]);
    const comes = lineFigure([
      [5, 4],
      [5, 0],
    ]);
    const [pair] = nearestPairs(comes, wall, 0) as [NearPair];
    expect(pair.distance).toBe(0);
    expect(
      pairDistance(
        pair,
        [5, 0.2],
        [
          [0, 0],
          [10, 0],
        ],
      ),
    ).toBeCloseTo(0.2, 12);
    expect(
      pairDistance(
        pair,
        [5, -0.2],
        [
          [0, 0],
          [10, 0],
        ],
      ),
    ).toBeCloseTo(-0.2, 12);
    const fromBelow = lineFigure([
      [5, -4],
      [5, 0],
    ]);
    expect(nearestPairs(fromBelow, wall, 0)[0]?.outside).toBe(-1);
  });
});

describe("crossings", () => {
  const wall = lineFigure([
    [0, 0],
    [10, 0],
  ]);

  it("gives the shortest way back", () => {
    const through = lineFigure([
      [4, -1],
      [4, 7],
    ]);
    expect(crossingPairs(through, wall)).toMatchObject([{ how: "crossing", vertexOf: "a", vertex: 0, distance: -1 }]);
    expect(crossingPairs(wall, through)).toMatchObject([{ how: "crossing", vertexOf: "b", vertex: 0, distance: -1 }]);
    expect(least(nearestPairs(through, wall, 2))).toBe(-1);
  });

  it("sees a line that passes through exactly at its own vertex", () => {
    const through = lineFigure([
      [4, -3],
      [4, 0],
      [4, 2],
    ]);
    expect(crossingPairs(through, wall)).toMatchObject([{ vertexOf: "a", vertex: 2, distance: -2 }]);
    expect(crossingPairs(wall, through)).toMatchObject([{ vertexOf: "b", vertex: 2, distance: -2 }]);
  });

  it("sees no crossing where a line only touches, or where it touches from one side at a vertex", () => {
    const bounce = lineFigure([
      [2, 3],
      [4, 0],
      [6, 3],
    ]);
    expect(crossingPairs(bounce, wall)).toEqual([]);
    expect(
      crossingPairs(
        lineFigure([
          [10, 0],
          [12, 3],
        ]),
        wall,
      ),
    ).toEqual([]);
    expect(crossingPairs(pointFigure([4, 0]), wall)).toEqual([]);
  });

  it("finds two bars laid across each other, where no corner lies inside", () => {
    const bar = (w: number, h: number): Figure =>
      areaFigure(
        polygonOf([
          [-w, -h],
          [w, -h],
          [w, h],
          [-w, h],
        ] as readonly Point[]),
      );
    expect(least(nearestPairs(bar(5, 1), bar(1, 5), 0))).toBeLessThan(0);
  });
});

describe("the least of the list", () => {
  it("is the clear distance where figures are apart, below 0 where they overlap", () => {
    const seen = { apart: 0, overlapping: 0 };
    fc.assert(
      fc.property(starRing, starRing, anyMove, (one, two, move) => {
        const [a, b] = [areaFigure(polygonOf(one)), areaFigure(polygonOf(two))];
        const pairs = nearestPairs(a, b, Number.POSITIVE_INFINITY);
        const clear = nearest(a, b)?.distance as number;
        if (clear > 0) {
          expect(least(pairs)).toBeCloseTo(clear, 12);
          seen.apart++;
        } else {
          expect(least(pairs)).toBeLessThanOrEqual(0);
          seen.overlapping++;
        }
        for (const pair of pairs) expect(again(pair, a, b)).toBeCloseTo(pair.distance, 9);
        const [movedA, movedB] = [
          areaFigure(polygonOf(allMoved(move, one))),
          areaFigure(polygonOf(allMoved(move, two))),
        ];
        expect(least(nearestPairs(movedA, movedB, Number.POSITIVE_INFINITY))).toBeCloseTo(least(pairs), 6);
      }),
      { ...seeded, numRuns: 200 },
    );
    expect(seen.apart).toBeGreaterThan(30);
    expect(seen.overlapping).toBeGreaterThan(30);
  });

  it("is below 0 exactly where two segments cross", () => {
    fc.assert(
      fc.property(plotPoint, plotPoint, plotPoint, plotPoint, (p, q, r, s) => {
        const [a, b] = [lineFigure([p, q]), lineFigure([r, s])];
        const clear = nearest(a, b)?.distance as number;
        const signed = least(nearestPairs(a, b, Number.POSITIVE_INFINITY));
        expect(Math.max(0, signed)).toBeCloseTo(clear, 12);
      }),
      seeded,
    );
  });
});
