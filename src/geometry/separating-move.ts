// How far, and which way, one figure must move to come clear of another.

import { convexHull } from "./convex-hull.ts";
import type { Figure } from "./figure.ts";
import type { Point } from "./point.ts";
import { sidesOf } from "./ring.ts";
import { dot, minus, times, toTheLeft, unit, type Vector } from "./vector.ts";

/** A move of figure `a`: direction of length 1, and how far, in metres. */
export interface SeparatingMove {
  readonly direction: Vector;
  readonly distance: number;
}

/**
 * The shortest straight move of `a` after which a straight line runs between the figures, `gap` metres apart across
 * that line. Exact for convex figures; otherwise enough, though a shorter move may do. `distance` is 0 where a line
 * already does. Null where a figure has no vertices. By the separating-axis theorem the direction is square to a side
 * of one of the hulls (COMPUTED).
 */
export function separatingMove(a: Figure, b: Figure, gap: number): SeparatingMove | null {
  const hullA = convexHull(a.chains.flatMap(({ points }) => points));
  const hullB = convexHull(b.chains.flatMap(({ points }) => points));
  if (hullA.length === 0 || hullB.length === 0) return null;
  let best: SeparatingMove | null = null;
  for (const direction of [...normalsOf(hullA), ...normalsOf(hullB), ...cornersApart(hullA, hullB)]) {
    const needed = Math.max(0, farthest(hullB, direction) - nearestAlong(hullA, direction) + gap);
    if (best === null || needed < best.distance) best = { direction, distance: needed };
  }
  return best;
}

/** Directions square to the sides, both ways; for a single point or for two, those of the compass and the line too. */
function normalsOf(hull: readonly Point[]): readonly Vector[] {
  const normals: Vector[] = [];
  for (const [start, end] of sidesOf(hull)) {
    const way = unit(minus(end, start));
    if (way === null) continue;
    normals.push(toTheLeft(way), times(toTheLeft(way), -1));
    if (hull.length === 2) normals.push(way);
  }
  return normals.length > 0
    ? normals
    : [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ];
}

/** Directions from corner to corner: only they can be shortest where the figures are already apart. */
function cornersApart(hullA: readonly Point[], hullB: readonly Point[]): readonly Vector[] {
  const ways = hullA.flatMap((a) => hullB.map((b) => unit(minus(a, b))));
  return ways.filter((way) => way !== null);
}

function farthest(hull: readonly Point[], direction: Vector): number {
  return Math.max(...hull.map((point) => dot(point, direction)));
}

function nearestAlong(hull: readonly Point[], direction: Vector): number {
  return Math.min(...hull.map((point) => dot(point, direction)));
}
