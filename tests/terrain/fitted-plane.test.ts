// The plane nearest to levels. Expected numbers: planes themselves, and the normal equations (COMPUTED).

import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/point.ts";
import { fittedPlane } from "../../src/terrain/fitted-plane.ts";
import { levelOnPlane } from "../../src/terrain/surface.ts";
import { seeded } from "../seeded.ts";

describe("the plane nearest to levels", () => {
  it("is the plane they lie in, far from the origin too", () => {
    const points: readonly Point[] = [
      [0, 0],
      [7, 1],
      [3, 9],
      [12, 4],
    ].map(([x, y]) => [4e5 + (x ?? 0), 5e6 + (y ?? 0)]);
    const plane = fittedPlane(
      points,
      points.map(([x, y]) => 20 + 0.03 * (x - 4e5) - 0.05 * (y - 5e6)),
    );
    expect(plane?.east).toBeCloseTo(0.03, 9);
    expect(plane?.north).toBeCloseTo(-0.05, 9);
    expect(plane && levelOnPlane(plane, [4e5, 5e6])).toBeCloseTo(20, 9);
  });
  it("leaves residuals that are square to east, to north and to a constant (normal equations)", () => {
    const draw = seeded(5);
    const points = Array.from({ length: 30 }, (): Point => [20 * draw(), 30 * draw()]);
    const levels = points.map(() => draw());
    const plane = fittedPlane(points, levels);
    const off = points.map((at, k) => (levels[k] as number) - (plane ? levelOnPlane(plane, at) : Number.NaN));
    for (const by of [() => 1, (k: number) => points[k]?.[0] ?? 0, (k: number) => points[k]?.[1] ?? 0])
      expect(Math.abs(off.reduce((sum, one, k) => sum + one * by(k), 0))).toBeLessThan(1e-11);
  });
  it("is none through points on one line, nor through two", () => {
    expect(
      fittedPlane(
        [
          [0, 0],
          [1, 1],
          [3, 3],
        ],
        [0, 1, 2],
      ),
    ).toBeNull();
    expect(
      fittedPlane(
        [
          [0, 0],
          [1, 1],
        ],
        [0, 1],
      ),
    ).toBeNull();
  });
});
