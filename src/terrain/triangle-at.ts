// Finding the triangle under a point.

import { boxOf } from "../geometry/box.ts";
import { sideOf } from "../geometry/orientation.ts";
import { isFinitePoint, type Point } from "../geometry/point.ts";
import { nextEdge } from "./delaunay.ts";
import type { Net } from "./net.ts";

/** The triangle that holds `at` (of several on whose edge it lies, the first); null outside the net. */
export function triangleAt(net: Net, at: Point): number | null {
  const box = isFinitePoint(at) ? boxOf([at]) : null;
  if (box === null) return null;
  for (const t of net.index.meeting(box)) {
    const held = [0, 1, 2].every((k) => {
      const e = 3 * t + k;
      const [from, to] = [
        net.points[net.corners[e] as number] as Point,
        net.points[net.corners[nextEdge(e)] as number] as Point,
      ];
      return sideOf(from, to, at) !== -1;
    });
    if (held) return t;
  }
  return null;
}
