// An upright bounding box.

import type { Point } from "./point.ts";

/** West, south, east and north edge, metres. */
export interface Box {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Smallest upright box around `points`; null for an empty list. */
export function boxOf(points: readonly Point[]): Box | null {
  const first = points[0];
  if (first === undefined) return null;
  let [west, south] = first;
  let [east, north] = first;
  for (const [x, y] of points) {
    if (x < west) west = x;
    if (x > east) east = x;
    if (y < south) south = y;
    if (y > north) north = y;
  }
  return { west, south, east, north };
}

/** The box pushed outward by `reach` metres on every side. */
export function grownBox(box: Box, reach: number): Box {
  return { west: box.west - reach, south: box.south - reach, east: box.east + reach, north: box.north + reach };
}

/** Smallest box around both. */
export function joinedBox(a: Box, b: Box): Box {
  return {
    west: Math.min(a.west, b.west),
    south: Math.min(a.south, b.south),
    east: Math.max(a.east, b.east),
    north: Math.max(a.north, b.north),
  };
}

/** Distance between two boxes, metres; 0 where they touch or overlap. Never more than that of what they hold. */
export function boxDistance(a: Box, b: Box): number {
  const east = Math.max(a.west - b.east, b.west - a.east, 0);
  const north = Math.max(a.south - b.north, b.south - a.north, 0);
  return Math.sqrt(east * east + north * north);
}

/** Whether two boxes share at least a point. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a.west <= b.east && b.west <= a.east && a.south <= b.north && b.south <= a.north;
}

/** Whether the point lies in the box or on its edge. */
export function boxHolds(box: Box, point: Point): boolean {
  return point[0] >= box.west && point[0] <= box.east && point[1] >= box.south && point[1] <= box.north;
}
