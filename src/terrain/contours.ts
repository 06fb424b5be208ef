// Lines of equal level over a net.

import { between, type Point } from "../geometry/point.ts";
import { nextEdge } from "./delaunay.ts";
import type { Surface } from "./surface.ts";

/** One line of equal level, the higher ground on its left. `closed`: it runs back to its first point. */
export interface Contour {
  readonly level: number;
  readonly points: readonly Point[];
  readonly ends: "open" | "closed";
}

/**
 * Contours of a surface at one level, metres. A corner exactly at the level counts as just above it, so that every
 * triangle is crossed by one line or none; ground wholly at the level draws no line.
 */
export function contoursAt(surface: Surface, level: number): readonly Contour[] {
  const steps = crossedTriangles(surface, level);
  const entered = new Set(steps.values());
  const contours: Contour[] = [];
  // Open lines first: they start at an edge that no triangle leads to.
  const starts = [...steps.keys()].filter((edge) => !entered.has(edge));
  for (const start of [...starts, ...steps.keys()]) {
    if (!steps.has(start)) continue;
    const edges = [start];
    for (let next = take(steps, start); next !== undefined; next = take(steps, next)) edges.push(next);
    const closed = edges.length > 1 && edges.at(-1) === start;
    const points = (closed ? edges.slice(0, -1) : edges).map((edge) => placeOn(surface, edge, level));
    contours.push({ level, points: withoutRepeats(points), ends: closed ? "closed" : "open" });
  }
  return contours.filter(({ points }) => points.length > 1);
}

/** Whole multiples of `step` (metres) between the lowest and the highest level. */
export function contourLevels(levels: readonly number[], step: number): readonly number[] {
  if (!(step > 0) || levels.length === 0) return [];
  const [lowest, highest] = [Math.min(...levels), Math.max(...levels)];
  const first = Math.ceil(lowest / step);
  const count = Math.floor(highest / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
}

function take(steps: Map<number, number>, from: number): number | undefined {
  const to = steps.get(from);
  steps.delete(from);
  return to;
}

/** For every triangle that is crossed: the edge by which the line comes in, and that by which it leaves. */
function crossedTriangles({ net, levels }: Surface, level: number): Map<number, number> {
  const isHigh = (e: number): boolean => (levels[net.corners[e] as number] as number) >= level;
  const steps = new Map<number, number>();
  for (let t = 0; t < net.corners.length / 3; t++) {
    const edges = [3 * t, 3 * t + 1, 3 * t + 2];
    // Round the triangle counter-clockwise: the line comes in over the edge that falls below the level, the higher
    // ground on its left, and leaves over the one that rises above it.
    const into = edges.find((e) => isHigh(e) && !isHigh(nextEdge(e)));
    const out = edges.find((e) => !isHigh(e) && isHigh(nextEdge(e)));
    if (into !== undefined && out !== undefined) steps.set(sharedName(net.twins, into), sharedName(net.twins, out));
  }
  return steps;
}

/** One number for an edge, whichever of its two triangles it is seen from. */
function sharedName(twins: ArrayLike<number>, e: number): number {
  return Math.max(e, twins[e] as number);
}

function placeOn({ net, levels }: Surface, e: number, level: number): Point {
  const [from, to] = [net.corners[e] as number, net.corners[nextEdge(e)] as number];
  const [start, end] = [levels[from] as number, levels[to] as number];
  return between(net.points[from] as Point, net.points[to] as Point, (level - start) / (end - start));
}

function withoutRepeats(points: readonly Point[]): readonly Point[] {
  return points.filter((point, i) => i === 0 || point[0] !== points[i - 1]?.[0] || point[1] !== points[i - 1]?.[1]);
}
