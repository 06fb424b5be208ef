// Finding the triangle under a point.

import { boxOf } from "../geometry/box.ts";
import { sideOf } from "../geometry/orientation.ts";
import { isFinitePoint, type Point } from "../geometry/point.ts";
import { footOn, type Segment } from "../geometry/segment.ts";
import { nextEdge } from "./delaunay.ts";
import { samePlace } from "./distinct-points.ts";
import type { Net } from "./net.ts";

/**
 * The triangle that holds `at` (of several on whose edge it lies, the first), or that it lies beside by less than the
 * grid on which two points are one; null farther outside the net.
 */
export function triangleAt(net: Net, at: Point): number | null {
  const box = isFinitePoint(at) ? boxOf([at]) : null;
  if (box === null) return null;
  const held = net.index.meeting(box).find((t) => sidesOf(net, t).every(([from, to]) => sideOf(from, to, at) !== -1));
  if (held !== undefined) return held;
  const beside = (t: number): boolean => sidesOf(net, t).some((side) => footOn(side, at).distance <= samePlace);
  return net.index.within(box, samePlace).find(beside) ?? null;
}

function sidesOf({ points, corners }: Net, t: number): readonly Segment[] {
  const at = (e: number): Point => points[corners[e] as number] as Point;
  return [3 * t, 3 * t + 1, 3 * t + 2].map((e): Segment => [at(e), at(nextEdge(e))]);
}
