import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { orientation, sideOf, sideOfCircle } from "../../src/geometry/orientation.ts";
import type { Point } from "../../src/geometry/point.ts";
import { plotPoint, seeded } from "./figures.ts";

describe("orientation", () => {
  it("counts left of the way as above 0, y to the north", () => {
    expect(orientation([0, 0], [1, 0], [0, 1])).toBe(1); // by hand: twice the area of half a square metre
    expect(sideOf([0, 0], [1, 0], [0, -1])).toBe(-1);
    expect(sideOf([0, 0], [1, 0], [5, 0])).toBe(0);
    expect(Object.is(orientation([0, 0], [1, 0], [5, 0]), 0)).toBe(true);
  });

  it("is never fooled by rounding: exact against whole-number arithmetic next to a long line", () => {
    // Reference: the same determinant in BigInt, coordinates scaled by 2^52 (COMPUTED, exact). Near (0.5, 0.5)
    // a line to (24, 24) is the known hard case of Kettner et al. 2008 (MEMORY).
    const scale = 2 ** 53;
    const big = (x: number): bigint => BigInt(x * scale);
    let checked = 0;
    for (let i = 0; i < 32; i++) {
      for (let j = 0; j < 32; j++) {
        const a: Point = [0.5 + i * 2 ** -53, 0.5 + j * 2 ** -53];
        const [b, c]: [Point, Point] = [
          [12, 12],
          [24, 24],
        ];
        const twice =
          (big(b[0]) - big(a[0])) * (big(c[1]) - big(a[1])) - (big(b[1]) - big(a[1])) * (big(c[0]) - big(a[0]));
        expect(sideOf(a, b, c)).toBe(twice > 0n ? 1 : twice < 0n ? -1 : 0);
        checked++;
      }
    }
    expect(checked).toBe(1024);
  });

  it("changes sign when two points change places", () => {
    fc.assert(
      fc.property(plotPoint, plotPoint, plotPoint, (a, b, c) => {
        expect(sideOf(a, b, c) + sideOf(b, a, c)).toBe(0);
        expect(sideOf(a, b, c)).toBe(sideOf(b, c, a));
      }),
      seeded,
    );
  });
});

describe("side of a circle", () => {
  it("is 1 inside, 0 on, -1 outside the circle through three points taken counter-clockwise", () => {
    expect(sideOfCircle([1, 0], [0, 1], [-1, 0], [0.2, 0.3])).toBe(1);
    expect(sideOfCircle([1, 0], [0, 1], [-1, 0], [0, -1])).toBe(0);
    expect(sideOfCircle([1, 0], [0, 1], [-1, 0], [0, -1.0001])).toBe(-1);
  });
});
