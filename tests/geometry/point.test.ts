// Expected numbers: by hand (COMPUTED).
import { describe, expect, it } from "vitest";
import * as point from "../../src/geometry/point.ts";

describe("points", () => {
  it("measures the distance of the 5-12-13 triangle", () => {
    expect(point.distance([1, 1], [6, 13])).toBe(13);
  });

  it("meets both ends exactly", () => {
    expect(point.between([0.1, 0.7], [0.3, 0.2], 0)).toEqual([0.1, 0.7]);
    expect(point.between([0.1, 0.7], [0.3, 0.2], 1)).toEqual([0.3, 0.2]);
    expect(point.midpoint([0, 0], [4, 6])).toEqual([2, 3]);
  });

  it("tells same points and finite points", () => {
    expect(point.samePoint([1, 2], [1, 2])).toBe(true);
    expect(point.samePoint([1, 2], [1, 2.000001])).toBe(false);
    expect(point.isFinitePoint([1, 2])).toBe(true);
    expect(point.isFinitePoint([Number.NaN, 2])).toBe(false);
    expect(point.isFinitePoint([1, Number.POSITIVE_INFINITY])).toBe(false);
  });

  it("turns about a centre", () => {
    const [east, north] = point.turnedAbout([3, 1], [1, 1], Math.PI / 2);
    expect(east).toBeCloseTo(1, 12);
    expect(north).toBeCloseTo(3, 12);
    // by hand: (3, 4) from the centre, turned by the angle whose cosine is 0.6
    const bent = point.turnedAbout([13, 24], [10, 20], Math.acos(0.6));
    expect(bent[0]).toBeCloseTo(10 - 1.4, 12);
    expect(bent[1]).toBeCloseTo(20 + 4.8, 12);
  });

  it("has no mean of nothing", () => {
    expect(point.meanPoint([])).toBeNull();
    expect(
      point.meanPoint([
        [0, 0],
        [2, 4],
      ]),
    ).toEqual([1, 2]);
  });
});
