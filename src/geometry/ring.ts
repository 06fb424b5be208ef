// A closed outline: three or more points, the first not repeated at the end.

import { distance, meanPoint, type Point } from "./point.ts";
import { sideOf } from "./orientation.ts";
import type { Segment } from "./segment.ts";

/** The sides of a ring. Side i runs from vertex i to the next, the last one back to vertex 0. */
export function sidesOf(ring: readonly Point[]): readonly Segment[] {
  return ring.map((start, i): Segment => [start, ring[(i + 1) % ring.length] as Point]);
}

/** The ring without a repetition of its first point at the end, as some formats write it. */
export function openedRing(ring: readonly Point[]): readonly Point[] {
  const first = ring[0];
  const last = ring.at(-1);
  if (ring.length < 2 || first === undefined || last === undefined) return ring;
  return first[0] === last[0] && first[1] === last[1] ? ring.slice(0, -1) : ring;
}

/** Length all round, metres. */
export function ringLength(ring: readonly Point[]): number {
  let sum = 0;
  for (const [start, end] of sidesOf(ring)) sum += distance(start, end);
  return sum;
}

/**
 * Signed area, square metres, positive where the ring runs counter-clockwise (the inside on its left):
 * A = 1/2 sum (x_i y_(i+1) - x_(i+1) y_i), taken about the first point so that far-off coordinates lose nothing.
 */
export function signedArea(ring: readonly Point[]): number {
  const origin = ring[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (const [[x1, y1], [x2, y2]] of sidesOf(ring)) {
    twice += (x1 - origin[0]) * (y2 - origin[1]) - (x2 - origin[0]) * (y1 - origin[1]);
  }
  return twice / 2;
}

/** Area without its sign, square metres. */
export function ringArea(ring: readonly Point[]): number {
  return Math.abs(signedArea(ring));
}

/**
 * Centroid of the area of a ring: C = 1/(6A) sum (p_i + p_(i+1)) (x_i y_(i+1) - x_(i+1) y_i), about the first point.
 * The mean of the vertices where the ring holds no area; null for an empty ring.
 */
export function ringCentroid(ring: readonly Point[]): Point | null {
  const origin = ring[0];
  const area = signedArea(ring);
  if (origin === undefined || area === 0) return meanPoint(ring);
  let east = 0;
  let north = 0;
  for (const [start, end] of sidesOf(ring)) {
    const x1 = start[0] - origin[0];
    const y1 = start[1] - origin[1];
    const x2 = end[0] - origin[0];
    const y2 = end[1] - origin[1];
    const part = x1 * y2 - x2 * y1;
    east += (x1 + x2) * part;
    north += (y1 + y2) * part;
  }
  return [origin[0] + east / (6 * area), origin[1] + north / (6 * area)];
}

/** The ring turned, if need be, so that its inside lies on its left. The first vertex stays the first. */
export function counterClockwise(ring: readonly Point[]): readonly Point[] {
  const first = ring[0];
  if (first === undefined || signedArea(ring) >= 0) return ring;
  return [first, ...ring.slice(1).toReversed()];
}

/** Where a point lies with regard to an area. */
export type Where = "inside" | "boundary" | "outside";

/**
 * Where `point` lies with regard to the ring. Exact: `boundary` only where the point lies on a side to the last digit.
 * Counts the sides that cross the ray from the point to the east (even-odd rule).
 */
export function whereInRing(ring: readonly Point[], point: Point): Where {
  const [x, y] = point;
  let inside = false;
  for (const [start, end] of sidesOf(ring)) {
    const [x1, y1] = start;
    const [x2, y2] = end;
    if ((y1 > y && y2 > y) || (y1 < y && y2 < y) || (x1 < x && x2 < x)) continue;
    const side = sideOf(start, end, point);
    const withinBox = Math.min(x1, x2) <= x && x <= Math.max(x1, x2);
    if (side === 0 && withinBox) return "boundary";
    if (y1 > y === y2 > y) continue;
    if (y2 > y1 ? side > 0 : side < 0) inside = !inside;
  }
  return inside ? "inside" : "outside";
}
