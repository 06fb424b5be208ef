// On which side of a line or a circle a point lies, decided without rounding error. Only this file imports the predicates.

import { incircle, orient2d } from "robust-predicates";
import type { Point } from "./point.ts";

/**
 * Twice the signed area of the triangle a, b, c in square metres: positive where `c` lies left of the way from
 * `a` to `b`, negative right of it, exactly 0 on it. The sign is exact for any finite coordinates.
 * (b - a) x (c - a), Shewchuk 1997, "Adaptive precision floating-point arithmetic" (MEMORY).
 */
export function orientation(a: Point, b: Point, c: Point): number {
  // The package counts a right-hand turn as positive, as on a screen whose second axis points down.
  return -orient2d(a[0], a[1], b[0], b[1], c[0], c[1]) || 0;
}

/** 1 where `c` lies left of the way from `a` to `b`, -1 right of it, 0 on it. */
export function sideOf(a: Point, b: Point, c: Point): -1 | 0 | 1 {
  const twice = orientation(a, b, c);
  return twice > 0 ? 1 : twice < 0 ? -1 : 0;
}

/**
 * 1 where `d` lies inside the circle through a, b and c (given counter-clockwise), -1 outside it, 0 on it. The sign is
 * exact for any finite coordinates. Shewchuk 1997 (MEMORY).
 */
export function sideOfCircle(a: Point, b: Point, c: Point, d: Point): -1 | 0 | 1 {
  const turn = incircle(a[0], a[1], b[0], b[1], c[0], c[1], d[0], d[1]);
  return turn > 0 ? 1 : turn < 0 ? -1 : 0;
}
