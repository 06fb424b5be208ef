// A point of the plane: metres east, metres north.

import type { Point } from "../model/reading.ts";

export type { Point } from "../model/reading.ts";

/** Distance between two points, metres. */
export function distance(a: Point, b: Point): number {
  // Plots are metres to kilometres: the squares neither overflow nor vanish, and this is many times as quick as Math.hypot.
  const east = b[0] - a[0];
  const north = b[1] - a[1];
  return Math.sqrt(east * east + north * north);
}

/** The point at `share` of the way from `a` (0) to `b` (1). Both ends are met exactly. */
export function between(a: Point, b: Point, share: number): Point {
  if (share === 1) return b;
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** Half way from `a` to `b`. */
export function midpoint(a: Point, b: Point): Point {
  return between(a, b, 0.5);
}

/** Whether two points have the same coordinates. */
export function samePoint(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** Whether both coordinates are finite numbers. */
export function isFinitePoint(a: Point): boolean {
  return Number.isFinite(a[0]) && Number.isFinite(a[1]);
}

/** `a` turned counter-clockwise about `centre` by `angle` radians. */
export function turnedAbout(a: Point, centre: Point, angle: number): Point {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const east = a[0] - centre[0];
  const north = a[1] - centre[1];
  return [centre[0] + east * cosine - north * sine, centre[1] + east * sine + north * cosine];
}

/** Mean of the coordinates of `points`; null for an empty list. */
export function meanPoint(points: readonly Point[]): Point | null {
  if (points.length === 0) return null;
  let east = 0;
  let north = 0;
  for (const point of points) {
    east += point[0];
    north += point[1];
  }
  return [east / points.length, north / points.length];
}
