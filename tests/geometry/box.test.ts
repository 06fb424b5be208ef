// Expected numbers: by hand (COMPUTED).
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as box from "../../src/geometry/box.ts";
import { distance } from "../../src/geometry/point.ts";
import { plotPoint, seeded } from "./figures.ts";

const small = { west: 0, south: 0, east: 1, north: 2 };

describe("boxes", () => {
  it("holds the points it was made from", () => {
    expect(
      box.boxOf([
        [3, -1],
        [0, 4],
        [1, 1],
      ]),
    ).toEqual({ west: 0, south: -1, east: 3, north: 4 });
    expect(box.boxOf([])).toBeNull();
  });

  it("grows and joins", () => {
    expect(box.grownBox(small, 0.5)).toEqual({ west: -0.5, south: -0.5, east: 1.5, north: 2.5 });
    expect(box.joinedBox(small, { west: 5, south: -1, east: 6, north: 1 })).toEqual({
      west: 0,
      south: -1,
      east: 6,
      north: 2,
    });
  });

  it("measures across the corner: 3-4-5", () => {
    expect(box.boxDistance(small, { west: 4, south: 6, east: 9, north: 9 })).toBe(5);
    expect(box.boxDistance(small, { west: 1, south: 1, east: 9, north: 9 })).toBe(0);
  });

  it("meets where it touches, and holds its edge", () => {
    expect(box.boxesMeet(small, { west: 1, south: 2, east: 3, north: 3 })).toBe(true);
    expect(box.boxesMeet(small, { west: 1.01, south: 0, east: 3, north: 3 })).toBe(false);
    expect(box.boxHolds(small, [1, 2])).toBe(true);
    expect(box.boxHolds(small, [1, 2.01])).toBe(false);
  });

  it("is never farther apart than what it holds", () => {
    fc.assert(
      fc.property(plotPoint, plotPoint, plotPoint, plotPoint, (a, b, c, d) => {
        const [one, two] = [box.boxOf([a, b]), box.boxOf([c, d])];
        if (one === null || two === null) throw new Error("two points have a box");
        const least = Math.min(distance(a, c), distance(a, d), distance(b, c), distance(b, d));
        expect(box.boxDistance(one, two)).toBeLessThanOrEqual(least + 1e-12);
        expect(box.boxesMeet(one, two)).toBe(box.boxDistance(one, two) === 0);
      }),
      seeded,
    );
  });
});
