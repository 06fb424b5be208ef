// Expected numbers: by hand (COMPUTED), from the 3-4-5 triangle and quarter turns.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as vector from "../../src/geometry/vector.ts";
import { plotPoint, seeded } from "./figures.ts";

describe("vectors", () => {
  it("adds, takes away and stretches", () => {
    expect(vector.minus([4, 6], [1, 2])).toEqual([3, 4]);
    expect(vector.plus([1, 2], [3, 4])).toEqual([4, 6]);
    expect(vector.times([3, 4], 2)).toEqual([6, 8]);
  });

  it("has products and lengths of the 3-4-5 triangle", () => {
    expect(vector.dot([3, 4], [2, 1])).toBe(10);
    expect(vector.cross([3, 4], [2, 1])).toBe(-5);
    expect(vector.norm([3, 4])).toBe(5);
    expect(vector.unit([3, 4])).toEqual([0.6, 0.8]);
    expect(vector.unit([0, 0])).toBeNull();
  });

  it("turns counter-clockwise", () => {
    expect(vector.toTheLeft([1, 0])).toEqual([-0, 1]);
    const [east, north] = vector.turned([2, 0], Math.PI / 2);
    expect(east).toBeCloseTo(0, 12);
    expect(north).toBeCloseTo(2, 12);
    // by hand: 3-4-5 turned by the angle whose cosine is 0.6
    const bent = vector.turned([3, 4], Math.acos(0.6));
    expect(bent[0]).toBeCloseTo(3 * 0.6 - 4 * 0.8, 12);
    expect(bent[1]).toBeCloseTo(3 * 0.8 + 4 * 0.6, 12);
  });

  it("counts azimuths clockwise from north", () => {
    expect(vector.azimuth([0, 1])).toBe(0);
    expect(vector.azimuth([1, 0])).toBeCloseTo(Math.PI / 2, 12);
    expect(vector.azimuth([0, -1])).toBeCloseTo(Math.PI, 12);
    expect(vector.azimuth([-1, 0])).toBeCloseTo(1.5 * Math.PI, 12);
    expect(vector.azimuth([0, 0])).toBe(0);
    const [east, north] = vector.fromAzimuth(Math.PI / 6);
    expect(east).toBeCloseTo(0.5, 12);
    expect(north).toBeCloseTo(Math.sqrt(0.75), 12);
  });

  it("counts a turn to the left above 0", () => {
    expect(vector.turnBetween([1, 0], [0, 5])).toBeCloseTo(Math.PI / 2, 12);
    expect(vector.turnBetween([1, 0], [1, -1])).toBeCloseTo(-Math.PI / 4, 12);
  });

  it("finds the same vector again from its azimuth", () => {
    fc.assert(
      fc.property(plotPoint, (v) => {
        const again = vector.times(vector.fromAzimuth(vector.azimuth(v)), vector.norm(v));
        expect(again[0]).toBeCloseTo(v[0], 9);
        expect(again[1]).toBeCloseTo(v[1], 9);
      }),
      seeded,
    );
  });
});
