// One vertex against one side: where two figures come near.

import type { VertexAndSide } from "./nearest.ts";
import type { Point } from "./point.ts";
import { footOn, leftOf, type Segment } from "./segment.ts";

/**
 * A vertex of one figure against a side of the other. `distance` in metres is below 0 where the vertex lies inside the other area, or has crossed over
 * the other line: then it is the depth. `outside` is the side of the segment (1 left, -1 right) on which the
 * distance counts above 0, so that it can be worked out again with moved points: see `pairDistance`.
 */
export interface NearPair extends VertexAndSide {
  readonly how: "apart" | "inside" | "crossing";
  readonly outside: 1 | -1;
  readonly distance: number;
  readonly at: Point;
  readonly foot: Point;
}

/**
 * Distance of a pair with its points moved, metres, keeping what was decided before: smooth through 0 as long as
 * the foot lies within the side, and continuing past its ends as the distance to the end.
 */
export function pairDistance(pair: Pick<NearPair, "how" | "outside">, at: Point, side: Segment): number {
  const { share, distance } = footOn(side, at);
  const within = share > 0 && share < 1;
  if (within) return pair.outside * leftOf(side, at) || 0;
  return pair.how === "apart" ? distance : -distance || 0;
}
