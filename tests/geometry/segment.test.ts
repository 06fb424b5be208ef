// Expected numbers: by hand (COMPUTED) unless said otherwise.
import { booleanIntersects, lineString } from "@turf/turf";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crossingPoint, footOn, leftOf, linesCross, meeting, type Segment } from "../../src/geometry/segment.ts";
import { plotPoint, seeded } from "./figures.ts";

const base: Segment = [
  [0, 0],
  [10, 0],
];
const segmentOf = (a: readonly number[], b: readonly number[]): Segment => [
  [a[0] as number, a[1] as number],
  [b[0] as number, b[1] as number],
];

describe("foot on a segment", () => {
  it("falls inside, or on an end", () => {
    expect(footOn(base, [3, 4])).toEqual({ foot: [3, 0], share: 0.3, distance: 4 });
    expect(footOn(base, [13, 4])).toEqual({ foot: [10, 0], share: 1, distance: 5 });
    expect(footOn(base, [-3, -4])).toEqual({ foot: [0, 0], share: 0, distance: 5 });
  });

  it("takes a segment without length for a point", () => {
    expect(footOn(segmentOf([1, 1], [1, 1]), [4, 5])).toEqual({ foot: [1, 1], share: 0, distance: 5 });
    expect(leftOf(segmentOf([1, 1], [1, 1]), [4, 5])).toBe(5);
  });

  it("signs the offset: left above 0", () => {
    expect(leftOf(base, [3, 4])).toBe(4);
    expect(leftOf(base, [30, -4])).toBe(-4);
  });
});

describe("meeting of segments", () => {
  it.each([
    ["cross", [5, -1], [5, 1]],
    ["touch", [5, 0], [5, 1]],
    ["touch", [10, 0], [12, 3]],
    ["touch", [10, 0], [15, 0]],
    ["overlap", [9, 0], [15, 0]],
    ["overlap", [2, 0], [3, 0]],
    ["apart", [11, 0], [15, 0]],
    ["apart", [5, 0.001], [5, 1]],
    ["apart", [11, -1], [11, 1]],
    ["touch", [4, 0], [4, 0]],
    ["apart", [4, 1], [4, 1]],
  ] as const)("%s: %j %j", (expected, from, to) => {
    expect(meeting(base, segmentOf(from, to))).toBe(expected);
    expect(meeting(segmentOf(from, to), base)).toBe(expected);
  });

  it.each([
    ["overlap", [0, 9], [0, 15]],
    ["touch", [0, 10], [0, 15]],
    ["apart", [0, 11], [0, 15]],
  ] as const)("%s on a line to the north: %j %j", (expected, from, to) => {
    const upright = segmentOf([0, 0], [0, 10]);
    expect(meeting(upright, segmentOf(from, to))).toBe(expected);
    expect(meeting(segmentOf(to, from), upright)).toBe(expected);
  });

  it("agrees with the planar test of turf on whether anything is shared", () => {
    let met = 0;
    fc.assert(
      fc.property(plotPoint, plotPoint, plotPoint, plotPoint, (a, b, c, d) => {
        fc.pre(meeting([a, b], [a, b]) === "overlap" && meeting([c, d], [c, d]) === "overlap");
        const shared = meeting([a, b], [c, d]) !== "apart";
        if (shared) met++;
        expect(shared).toBe(booleanIntersects(lineString([[...a], [...b]]), lineString([[...c], [...d]])));
      }),
      seeded,
    );
    expect(met).toBeGreaterThan(20);
  });

  it("gives the point that is shared", () => {
    expect(crossingPoint(base, segmentOf([2, -1], [6, 3]))).toEqual([3, 0]);
    expect(crossingPoint(base, segmentOf([10, 0], [12, 3]))).toEqual([10, 0]);
    expect(crossingPoint(base, segmentOf([4, 7], [4, 0]))).toEqual([4, 0]);
    expect(crossingPoint(base, segmentOf([9, 0], [15, 0]))).toBeNull();
    expect(crossingPoint(base, segmentOf([9, 1], [15, 1]))).toBeNull();
  });

  it("finds where endless lines cross", () => {
    expect(linesCross(base, segmentOf([12, 5], [12, 6]))).toEqual([12, 0]);
    expect(linesCross(base, segmentOf([0, 5], [1, 5]))).toBeNull();
  });
});
