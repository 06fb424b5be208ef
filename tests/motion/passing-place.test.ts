import { describe, expect, it } from "vitest";
import { passingPlaceLength, sidestepLength } from "../../src/motion/passing-place.ts";
import { posesAlong } from "../../src/motion/pose.ts";
import { b85 } from "./published-vehicles.ts";

describe("drawing aside", () => {
  it.each([0.5, 2.5, 6])(
    "two arcs against each other end %s m aside, after sqrt(y (4r - y)) of way (COMPUTED)",
    (y) => {
      const r = 4.6;
      const turn = Math.acos(1 - y / (2 * r));
      const arcs = [
        { curvature: 1 / r, length: r * turn },
        { curvature: -1 / r, length: r * turn },
      ];
      const end = posesAlong({ x: 0, y: 0, heading: 0 }, arcs).at(-1)!;
      expect(end.y).toBeCloseTo(y, 12);
      expect(end.heading).toBeCloseTo(0, 12);
      expect(sidestepLength(y, r)).toBeCloseTo(end.x, 12);
    },
  );

  it("a half circle each way is the farthest that it reckons: 2r aside in 2r of way", () => {
    expect(sidestepLength(10, 5)).toBeCloseTo(10, 12);
    expect(sidestepLength(30, 5)).toBeCloseTo(10, 12);
  });

  it("no step aside needs no more than the vehicle's length", () => {
    expect(passingPlaceLength(b85, 0)).toBeCloseTo(4.91, 12);
  });

  it("a B85 car drawing 2.5 m aside needs 4.91 + 2 sqrt(2.5 (4 x 4.194 - 2.5)) = 16.86 m (COMPUTED, 1 cm)", () => {
    expect(Math.abs(passingPlaceLength(b85, 2.5) - 16.86)).toBeLessThan(0.01);
  });
});
