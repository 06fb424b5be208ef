// A line drawn beside another at a constant offset, with mitred corners.

import type { Point } from "./point.ts";
import { samePoint } from "./point.ts";
import { dot, minus, norm, plus, times, toTheLeft, unit, type Vector } from "./vector.ts";

/** A parallel line. `turned` lists the pieces that came out backwards: the offset is too great for a bend there. */
export interface Parallel {
  readonly points: readonly Point[];
  readonly turned: readonly number[];
}

// Two directions whose sum is shorter than this (radians, nearly) run straight back on each other.
const straightBack = 1e-6;

/**
 * The line `left` metres to the left of `line` (below 0: to its right), piece for piece, corners mitred:
 * p' = p + left (n1 + n2) / (1 + n1.n2), n1 and n2 the left normals of the pieces before and after p.
 * Vertices stay in step with those of `line`, except that repeated points count once and that a bend straight
 * back on itself gets two corners. No limit is put on the length of a mitre. Null where the line has no length.
 */
export function parallelLine(line: readonly Point[], left: number): Parallel | null {
  return parallel(withoutRepeats(line), left, "open");
}

/** As `parallelLine`, for a ring (first point not repeated at the end): inward where `left` is inward. */
export function parallelRing(ring: readonly Point[], left: number): Parallel | null {
  const points = withoutRepeats(ring);
  const first = points[0];
  const closesTwice = first !== undefined && points.length > 1 && samePoint(first, points.at(-1) as Point);
  return parallel(closesTwice ? points.slice(0, -1) : points, left, "closed");
}

function withoutRepeats(points: readonly Point[]): readonly Point[] {
  return points.filter((point, i) => i === 0 || !samePoint(point, points[i - 1] as Point));
}

function parallel(points: readonly Point[], left: number, ends: "open" | "closed"): Parallel | null {
  const count = points.length;
  if (count < 2) return null;
  const pieces = ends === "open" ? count - 1 : count;
  const ways: Vector[] = [];
  for (let i = 0; i < pieces; i++) {
    const way = unit(minus(points[(i + 1) % count] as Point, points[i] as Point));
    if (way === null) return null;
    ways.push(way);
  }
  const corners = points.map((point, i) => {
    const before = ways[i - 1] ?? (ends === "closed" ? ways.at(-1) : undefined);
    return corner(point, { before, after: ways[i], left });
  });
  return { points: corners.flat(), turned: turnedPieces(corners, ways) };
}

interface Bend {
  readonly before: Vector | undefined;
  readonly after: Vector | undefined;
  readonly left: number;
}

function corner(point: Point, { before, after, left }: Bend): readonly Point[] {
  const first = toTheLeft(before ?? (after as Vector));
  const second = toTheLeft(after ?? (before as Vector));
  const sum = plus(first, second);
  if (norm(sum) < straightBack) return [plus(point, times(first, left)), plus(point, times(second, left))];
  return [plus(point, times(sum, left / (1 + dot(first, second))))];
}

function turnedPieces(corners: readonly (readonly Point[])[], ways: readonly Vector[]): readonly number[] {
  const backwards: number[] = [];
  for (const [i, way] of ways.entries()) {
    const from = corners[i]?.at(-1) as Point;
    const to = corners[(i + 1) % corners.length]?.[0] as Point;
    if (dot(minus(to, from), way) < 0) backwards.push(i);
  }
  return backwards;
}
