// A straight piece between two points.

import { between, distance, type Point } from "./point.ts";
import { sideOf } from "./orientation.ts";
import { cross, minus } from "./vector.ts";

/** Start and end. */
export type Segment = readonly [Point, Point];

/** The point of a segment that lies nearest to another point. */
export interface Foot {
  readonly foot: Point;
  /** Where the foot lies: 0 at the start of the segment, 1 at its end. */
  readonly share: number;
  readonly distance: number;
}

/** Foot of `point` on `segment`, and the distance in metres. A segment without length is taken as a point. */
export function footOn([start, end]: Segment, point: Point): Foot {
  // Written out by coordinates: this is asked for every vertex against every side.
  const east = end[0] - start[0];
  const north = end[1] - start[1];
  const square = east * east + north * north;
  const along = (point[0] - start[0]) * east + (point[1] - start[1]) * north;
  const share = square > 0 ? Math.min(1, Math.max(0, along / square)) : 0;
  const foot: Point = share === 1 ? end : [start[0] + east * share, start[1] + north * share];
  return { foot, share, distance: distance(point, foot) };
}

/**
 * Distance of `point` from the endless straight line through the segment, metres, positive on its left.
 * A segment without length answers with the distance from its point.
 */
export function leftOf([start, end]: Segment, point: Point): number {
  const east = end[0] - start[0];
  const north = end[1] - start[1];
  const length = Math.sqrt(east * east + north * north);
  if (length === 0) return distance(start, point);
  return (east * (point[1] - start[1]) - north * (point[0] - start[0])) / length;
}

/**
 * How two segments meet: `cross` where each passes through the inside of the other, `touch` where they share one
 * point that is an end of at least one, `overlap` where they share a stretch, `apart` where they share nothing.
 * Exact for any finite coordinates.
 */
export type Meeting = "apart" | "touch" | "cross" | "overlap";

export function meeting(a: Segment, b: Segment): Meeting {
  const [a1, a2] = a;
  const [b1, b2] = b;
  if (boundsApart(a, b)) return "apart";
  const sideB1 = sideOf(a1, a2, b1);
  const sideB2 = sideOf(a1, a2, b2);
  const sideA1 = sideOf(b1, b2, a1);
  const sideA2 = sideOf(b1, b2, a2);
  if (sideB1 === 0 && sideB2 === 0 && sideA1 === 0 && sideA2 === 0) return meetingOnOneLine(a, b);
  if (sideB1 * sideB2 > 0 || sideA1 * sideA2 > 0) return "apart";
  return sideB1 * sideB2 < 0 && sideA1 * sideA2 < 0 ? "cross" : "touch";
}

/** Whether the upright boxes of two segments share nothing; then neither do the segments. */
export function boundsApart([a1, a2]: Segment, [b1, b2]: Segment): boolean {
  return (
    Math.max(a1[0], a2[0]) < Math.min(b1[0], b2[0]) ||
    Math.max(b1[0], b2[0]) < Math.min(a1[0], a2[0]) ||
    Math.max(a1[1], a2[1]) < Math.min(b1[1], b2[1]) ||
    Math.max(b1[1], b2[1]) < Math.min(a1[1], a2[1])
  );
}

/** Both segments lie on one straight line: compare them along the axis on which that line is longest. */
function meetingOnOneLine(a: Segment, b: Segment): Meeting {
  const points = [...a, ...b];
  const spread = (axis: 0 | 1): number => {
    const along = points.map((point) => point[axis]);
    return Math.max(...along) - Math.min(...along);
  };
  const axis = spread(0) >= spread(1) ? 0 : 1;
  const from = Math.max(Math.min(a[0][axis], a[1][axis]), Math.min(b[0][axis], b[1][axis]));
  const to = Math.min(Math.max(a[0][axis], a[1][axis]), Math.max(b[0][axis], b[1][axis]));
  return from > to ? "apart" : from === to ? "touch" : "overlap";
}

/** The one point that two segments share, where they cross or touch; null where they are apart or overlap. */
export function crossingPoint(a: Segment, b: Segment): Point | null {
  const how = meeting(a, b);
  if (how === "apart" || how === "overlap") return null;
  if (how === "touch") return touchPoint(a, b);
  const wayA = minus(a[1], a[0]);
  const wayB = minus(b[1], b[0]);
  const share = cross(minus(b[0], a[0]), wayB) / cross(wayA, wayB);
  return between(a[0], a[1], Math.min(1, Math.max(0, share)));
}

/** Of the four ends, the one that lies on the other segment. */
function touchPoint(a: Segment, b: Segment): Point {
  const ends: readonly (readonly [Point, Segment])[] = [
    [b[0], a],
    [b[1], a],
    [a[0], b],
    [a[1], b],
  ];
  let best = b[0];
  let least = Number.POSITIVE_INFINITY;
  for (const [end, other] of ends) {
    const off = footOn(other, end).distance;
    if (off < least) [best, least] = [end, off];
  }
  return best;
}

/** Where the endless straight lines through two segments cross; null where they are parallel. */
export function linesCross(a: Segment, b: Segment): Point | null {
  const wayA = minus(a[1], a[0]);
  const wayB = minus(b[1], b[0]);
  const turn = cross(wayA, wayB);
  if (turn === 0) return null;
  return between(a[0], a[1], cross(minus(b[0], a[0]), wayB) / turn);
}
