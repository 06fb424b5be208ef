// A frozen path or pose and the ground it lies on: when measured numbers are nudged, it goes where its ground goes as a whole.
// So a bearing that turns the whole plot moves the path with the walls, and brings no doubt into what lies between them.

import { cross, dot, minus, plus, turned, type Vector } from "../geometry/vector.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { type LiveRing, ringAt } from "./live-ring.ts";

/** Where points of the plan at its own values lie with numbers moved, and back. */
export interface Moved {
  readonly to: (point: Point) => Point;
  readonly back: (point: Point) => Point;
}

/** What moves with the ground, at a read. A read's numbers may change while it lives, so nothing is kept by it. */
export type Carried = (read: Read) => Moved;

const asItIs: Moved = { to: (point) => point, back: (point) => point };

/**
 * The rigid motion that brings the vertices of rings, as they lie at the plan's own values, nearest to where they lie at
 * another read: centroid onto centroid, and an angle tan a = sum(p x q) / sum(p . q) with p and q counted from them
 * (least squares in the plane, COMPUTED).
 */
export function carriedBy(rings: readonly LiveRing[], plain: Read): Carried {
  const nominal = rings.flatMap((ring) => ringAt(ring, plain));
  const from = middleOf(nominal);
  return (read) => {
    if (read === plain || nominal.length === 0) return asItIs;
    const now = rings.flatMap((ring) => ringAt(ring, read));
    const onto = middleOf(now);
    const angle = angleBetween(
      nominal.map((point) => minus(point, from)),
      now.map((point) => minus(point, onto)),
    );
    return {
      to: (point) => plus(onto, turned(minus(point, from), angle)),
      back: (point) => plus(from, turned(minus(point, onto), -angle)),
    };
  };
}

function angleBetween(before: readonly Vector[], after: readonly Vector[]): number {
  let [along, across] = [0, 0];
  for (const [i, p] of before.entries()) {
    const q = after[i] ?? p;
    along += dot(p, q);
    across += cross(p, q);
  }
  return Math.atan2(across, along);
}

function middleOf(points: readonly Point[]): Point {
  const count = Math.max(1, points.length);
  const [x, y] = points.reduce<Point>((sum, point) => plus(sum, point), [0, 0]);
  return [x / count, y / count];
}
