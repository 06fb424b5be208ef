// The plane that lies nearest to a number of levels.

import type { Point } from "../geometry/point.ts";
import type { Plane } from "./surface.ts";

/** Least squares of fewer points than three, or of points on one line, is no plane: what remains of the determinant (method). */
const onOneLine = 1e-9;

/**
 * Plane z = z0 + a (x - x0) + b (y - y0) through the middle of the points with the least sum of squared heights off it:
 * [Sxx Sxy; Sxy Syy] [a; b] = [Sxz; Syz], sums about the mean (COMPUTED). Null where the points lie on one line.
 */
export function fittedPlane(points: readonly Point[], levels: readonly number[]): Plane | null {
  const count = points.length;
  const mean = (pick: (k: number) => number): number => points.reduce((sum, _, k) => sum + pick(k), 0) / count;
  const east = (k: number): number => (points[k] as Point)[0];
  const north = (k: number): number => (points[k] as Point)[1];
  const [x0, y0, z0] = [mean(east), mean(north), mean((k) => levels[k] as number)];
  const sum = (a: (k: number) => number, b: (k: number) => number): number => count * mean((k) => a(k) * b(k));
  const [x, y, z] = [
    (k: number) => east(k) - x0,
    (k: number) => north(k) - y0,
    (k: number) => (levels[k] as number) - z0,
  ];
  const [xx, xy, yy] = [sum(x, x), sum(x, y), sum(y, y)];
  const determinant = xx * yy - xy * xy;
  if (!(determinant > onOneLine * (xx + yy) ** 2)) return null;
  const [xz, yz] = [sum(x, z), sum(y, z)];
  return {
    origin: [x0, y0],
    atOrigin: z0,
    east: (xz * yy - yz * xy) / determinant,
    north: (yz * xx - xz * xy) / determinant,
  };
}
