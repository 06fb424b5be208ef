// The tightest convex outline round points.

import { samePoint, type Point } from "./point.ts";
import { sideOf } from "./orientation.ts";

/**
 * Corners of the convex hull, counter-clockwise from the westernmost (southernmost of those); points along its
 * sides are left out. One or two points where all coincide or lie on a line. Andrew 1979, monotone chain (MEMORY).
 */
export function convexHull(points: readonly Point[]): readonly Point[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const distinct = sorted.filter((point, i) => i === 0 || !samePoint(point, sorted[i - 1] as Point));
  if (distinct.length < 3) return distinct;
  const lower = halfHull(distinct);
  const upper = halfHull(distinct.toReversed());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function halfHull(sorted: readonly Point[]): readonly Point[] {
  const hull: Point[] = [];
  for (const point of sorted) {
    while (hull.length > 1 && sideOf(hull.at(-2) as Point, hull.at(-1) as Point, point) <= 0) hull.pop();
    hull.push(point);
  }
  return hull;
}
