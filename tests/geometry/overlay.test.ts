// Expected numbers: by hand (COMPUTED) unless said otherwise.
import { featureCollection, intersect, polygon as turfPolygon, union as turfUnion } from "@turf/turf";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { difference, grown, intersection, stripAlong, union } from "../../src/geometry/overlay.ts";
import type { Point } from "../../src/geometry/point.ts";
import { polygonArea, polygonOf, totalArea, type Polygon } from "../../src/geometry/polygon.ts";
import { signedArea } from "../../src/geometry/ring.ts";
import { allMoved, anyMove, hole, seeded, square, starRing } from "./figures.ts";

const whole = polygonOf(square);
const frame = polygonOf(square, [hole]);
const beside = polygonOf(square.map(([x, y]): Point => [x + 6, y + 6]));
const areaOf = (found: readonly Polygon[] | null): number => (found === null ? Number.NaN : totalArea(found));
const turfArea = (geometry: { type: string; coordinates: unknown[] } | undefined): number => {
  if (geometry === undefined) return 0;
  const parts = (geometry.type === "Polygon" ? [geometry.coordinates] : geometry.coordinates) as Point[][][];
  const open = (ring: Point[]): readonly Point[] => ring.slice(0, -1);
  return parts.reduce(
    (sum, [outline, ...holes]) => sum + polygonArea(polygonOf(open(outline as Point[]), holes.map(open))),
    0,
  );
};
const toTurf = (ring: readonly Point[]) => turfPolygon([[...ring, ring[0] as Point].map((point) => [...point])]);

describe("areas laid over each other", () => {
  it("shares, covers, leaves: two squares 6 m apart along the diagonal", () => {
    expect(areaOf(intersection([whole], [beside]))).toBeCloseTo(16, 6);
    expect(areaOf(union([whole, beside]))).toBeCloseTo(184, 6);
    expect(areaOf(difference([whole], [beside]))).toBeCloseTo(84, 6);
  });

  it("keeps holes, whichever way rings are drawn, and lets another area fill them", () => {
    const turned = polygonOf(square.toReversed(), [hole.toReversed()]);
    for (const area of [frame, turned]) {
      const [found] = union([area]) as [Polygon];
      expect(found.holes).toHaveLength(1);
      expect(polygonArea(found)).toBeCloseTo(96, 6);
      expect(signedArea(found.outline)).toBeGreaterThan(0);
      expect(signedArea(found.holes[0] as readonly Point[])).toBeLessThan(0);
    }
    expect(areaOf(union([frame, polygonOf(hole)]))).toBeCloseTo(100, 6);
    expect(difference([whole], [polygonOf(hole)])?.[0]?.holes).toHaveLength(1);
  });

  it("gives an island in a hole as an area of its own", () => {
    const island = polygonOf(hole.map(([x, y]): Point => [5 + (x - 5) / 2, 5 + (y - 5) / 2]));
    expect(union([frame, island])).toHaveLength(2);
    expect(areaOf(union([frame, island]))).toBeCloseTo(97, 6);
  });

  it("refuses numbers that it could not hold", () => {
    const bad = (value: number): Polygon => polygonOf([...square, [value, 3]]);
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 1e7, -1e12]) {
      expect(intersection([whole], [bad(value)])).toBeNull();
      expect(union([bad(value)])).toBeNull();
      expect(difference([bad(value)], [whole])).toBeNull();
      expect(grown([bad(value)], 1, { corners: "round" })).toBeNull();
      expect(
        stripAlong(
          [
            [0, 0],
            [value, 0],
          ],
          1,
          { corners: "round", ends: "square" },
        ),
      ).toBeNull();
    }
    expect(grown([whole], Number.NaN, { corners: "round" })).toBeNull();
    expect(stripAlong(square, -1, { corners: "round", ends: "square" })).toBeNull();
  });

  it("finds nothing in nothing", () => {
    expect(union([])).toEqual([]);
    expect(intersection([whole], [])).toEqual([]);
    expect(
      union([
        polygonOf([
          [0, 0],
          [1, 1],
        ]),
      ]),
    ).toEqual([]);
  });

  it("keeps its digits far from the origin", () => {
    const far = (area: Polygon): Polygon =>
      polygonOf(area.outline.map(([x, y]): Point => [x + 4_500_000, y + 4_500_000]));
    expect(areaOf(intersection([far(whole)], [far(beside)]))).toBeCloseTo(16, 6);
  });

  it("agrees with the planar operations of turf, and shared + left = whole", () => {
    let overlapping = 0;
    fc.assert(
      fc.property(starRing, starRing, anyMove, (one, two, move) => {
        const [a, b] = [[polygonOf(one)], [polygonOf(two)]];
        const shared = areaOf(intersection(a, b));
        const both = featureCollection([toTurf(one), toTurf(two)]);
        expect(Math.abs(shared - turfArea(intersect(both)?.geometry))).toBeLessThan(2e-4);
        expect(Math.abs(areaOf(union([...a, ...b])) - turfArea(turfUnion(both)?.geometry))).toBeLessThan(2e-4);
        expect(Math.abs(shared + areaOf(difference(a, b)) - totalArea(a))).toBeLessThan(2e-4);
        const there = intersection([polygonOf(allMoved(move, one))], [polygonOf(allMoved(move, two))]);
        expect(Math.abs(areaOf(there) - shared)).toBeLessThan(2e-4);
        if (shared > 0) overlapping++;
      }),
      { ...seeded, numRuns: 100 },
    );
    expect(overlapping).toBeGreaterThan(20);
  });
});

describe("areas grown and strips", () => {
  it("grows a 20 x 10 m box by 3 m with round corners: 200 + 60 x 3 + pi 9 = 408.2743 m2, from inside", () => {
    const box = polygonOf([
      [0, 0],
      [20, 0],
      [20, 10],
      [0, 10],
    ]);
    const exact = 200 + 180 + 9 * Math.PI;
    const fine = areaOf(grown([box], 3, { corners: "round" }));
    expect(fine).toBeLessThan(exact);
    expect(exact - fine).toBeLessThan(0.02); // arcs lie at most 1 mm inside, over 18.8 m of arc
    expect(exact - areaOf(grown([box], 3, { corners: "round", arcSlack: 0.0001 }))).toBeLessThan(0.002);
  });

  it("grows with mitred corners exactly, and cuts a long mitre off", () => {
    expect(areaOf(grown([whole], 1, { corners: "mitre" }))).toBeCloseTo(144, 6);
    const needle = polygonOf([
      [0, 0],
      [100, 0.5],
      [0, 1],
    ]);
    const [found] = grown([needle], 1, { corners: "mitre" }) as [Polygon];
    expect(Math.max(...found.outline.map(([x]) => x))).toBeLessThan(106);
  });

  it("shrinks a frame from both sides, and splits a waist", () => {
    expect(areaOf(grown([frame], -1, { corners: "mitre" }))).toBeCloseTo(64 - 16, 6);
    const waist = polygonOf([
      [0, 0],
      [10, 0],
      [10, 4],
      [20, 4],
      [20, 0],
      [30, 0],
      [30, 10],
      [20, 10],
      [20, 6],
      [10, 6],
      [10, 10],
      [0, 10],
    ]);
    expect(grown([waist], -0.99, { corners: "mitre" })).toHaveLength(1);
    expect(grown([waist], -1.01, { corners: "mitre" })).toHaveLength(2);
    expect(grown([whole], -6, { corners: "mitre" })).toEqual([]);
  });

  it("grows areas that overlap as one", () => {
    expect(areaOf(grown([whole, beside], 0.5, { corners: "mitre" }))).toBeCloseTo(11 * 11 * 2 - 5 * 5, 5);
  });

  it("lays a 3 m strip along a line: 20 m x 3 m, half circles at the ends if wanted", () => {
    const line: readonly Point[] = [
      [0, 0],
      [20, 0],
    ];
    expect(areaOf(stripAlong(line, 1.5, { ends: "square", corners: "round" }))).toBeCloseTo(60, 6);
    const rounded = areaOf(stripAlong(line, 1.5, { ends: "round", corners: "round" }));
    expect(60 + Math.PI * 2.25 - rounded).toBeGreaterThan(0);
    expect(60 + Math.PI * 2.25 - rounded).toBeLessThan(0.01);
    // by hand: two arms of 11.5 + 8.5 m at the outer and inner edge, mitred: 3 x (10 + 10) m2
    expect(
      areaOf(
        stripAlong(
          [
            [0, 0],
            [10, 0],
            [10, 10],
          ],
          1.5,
          { ends: "square", corners: "mitre" },
        ),
      ),
    ).toBeCloseTo(60, 6);
  });

  it("has no strip along nothing", () => {
    const how = { ends: "round", corners: "round" } as const;
    expect(stripAlong([], 1, how)).toEqual([]);
    expect(
      stripAlong(
        [
          [3, 3],
          [3, 3],
        ],
        1,
        how,
      ),
    ).toEqual([]);
    expect(
      stripAlong(
        [
          [3, 3],
          [6, 3],
        ],
        0,
        how,
      ),
    ).toEqual([]);
  });
});
