// Conservative advancement: a rectangle that moves in any way, against a boundary. It goes on by no more than its
// distance over the greatest speed of its points, so nothing between two looks can be passed over.

import type { Point } from "../model/reading.ts";
import { type Checked, edgesAbout, type Four } from "./checked.ts";
import type { Pose } from "./pose.ts";

/** A rectangle on its way: its frame's pose at any share of the way, and how far its points can move on the whole of it. */
export interface Moving {
  readonly checked: Checked;
  readonly poseAt: (share: number) => Pose;
  /** Upper bound of the path length of any point of the rectangle over the whole way, m. */
  readonly travel: number;
}

/** The least distance on a way, m: where (share of it) and the nearest point of the boundary. */
export interface Nearest {
  readonly distance: number;
  readonly share: number;
  readonly at: Point;
}

/** Looks at equal shares of a way before it is gone along. */
const looksAhead = 16;

/** Distances are known to this (m); a rectangle that comes nearer than this counts as touching. */
export const touching = 1e-3;

/**
 * Least distance of a moving rectangle from a boundary, where that is less than `below` (m), to within `touching`; null
 * where it touches or starts across it. Whether it starts on its ground is for `standsFree` to say. Each step is
 * (d - best + touching) * share / travel, so the distance cannot fall below best - touching between two looks.
 */
export function nearestOnWay(moving: Moving, below: number): Nearest | null {
  const near = edgesInReach(moving, below);
  let best: Nearest = { distance: below, share: 0, at: [0, 0] };
  // A few looks ahead: as it comes nearer every step would only be as long as `touching`, were the least not known roughly.
  for (let k = 1; k <= looksAhead; k++) {
    const found = rectangleDistance(moving.checked, moving.poseAt(k / looksAhead), near);
    if (found.distance < best.distance) best = { ...found, share: k / looksAhead };
  }
  let share = 0;
  for (;;) {
    const found = rectangleDistance(moving.checked, moving.poseAt(share), near);
    if (found.distance <= touching) return null;
    if (found.distance < best.distance) best = { ...found, share };
    if (share >= 1) return best;
    const margin = found.distance - Math.min(best.distance, found.distance) + touching;
    share = moving.travel === 0 ? 1 : Math.min(1, share + margin / moving.travel);
  }
}

/**
 * Whether a moving rectangle keeps off a boundary: quicker than `nearestOnWay`. True means that it nowhere comes nearer
 * than half of `gap` (m, above 0); a look that finds it within `gap` is false.
 */
export function keepsClear(moving: Moving, gap: number): boolean {
  const near = edgesInReach(moving, gap);
  if (near.length === 0) return true;
  for (let share = 0; ;) {
    const { distance } = rectangleDistance(moving.checked, moving.poseAt(share), near);
    if (distance <= gap) return false;
    if (share >= 1) return true;
    share = moving.travel === 0 ? 1 : Math.min(1, share + Math.max(distance - gap, gap / 2) / moving.travel);
  }
}

/** Edges that come within `within` (m) of the circle round all of the way. */
function edgesInReach({ checked, poseAt, travel }: Moving, within: number): readonly number[] {
  return edgesAbout(checked, poseAt(0.5), travel / 2 + within);
}

/** Distance of a rectangle at a pose from edges of its boundary (0 where they meet), and the nearest boundary point. */
export function rectangleDistance(
  checked: Checked,
  pose: Pose,
  edges: readonly number[],
): { readonly distance: number; readonly at: Point } {
  const { boundary, rectangle } = checked;
  const c = Math.cos(pose.heading);
  const s = Math.sin(pose.heading);
  let squared = Infinity;
  let [atX, atY] = [0, 0];
  for (const i of edges) {
    const ax = boundary.ax[i]! - pose.x;
    const ay = boundary.ay[i]! - pose.y;
    const bx = boundary.bx[i]! - pose.x;
    const by = boundary.by[i]! - pose.y;
    const found = segmentNear(rectangle, [c * ax + s * ay, c * ay - s * ax, c * bx + s * by, c * by - s * bx]);
    if (found >= squared) continue;
    squared = found;
    atX = pose.x + c * nearest.x - s * nearest.y;
    atY = pose.y + s * nearest.x + c * nearest.y;
    if (squared === 0) break;
  }
  return { distance: Math.sqrt(squared), at: [atX, atY] };
}

/** The nearest point of the segment last looked at, in the rectangle's frame. */
const nearest = { x: 0, y: 0 };

/** Squared distance of a segment from a rectangle with sides along the axes; fills `nearest`. */
function segmentNear(rectangle: Float64Array, segment: Readonly<Four>): number {
  const [back, front, right, left] = rectangle as unknown as Four;
  const [ax, ay, bx, by] = segment;
  let best = keepPoint(Infinity, ax, ay, rectangle);
  best = keepPoint(best, bx, by, rectangle);
  if (best === 0) return 0;
  if (crosses(rectangle, segment)) return 0;
  const dx = bx - ax;
  const dy = by - ay;
  const size = dx * dx + dy * dy;
  for (let corner = 0; corner < 4; corner++) {
    const x = corner < 2 ? back : front;
    const y = corner % 2 === 0 ? right : left;
    const t = ((x - ax) * dx + (y - ay) * dy) / size;
    if (t <= 0 || t >= 1) continue;
    const [fx, fy] = [ax + t * dx, ay + t * dy];
    const squared = (x - fx) ** 2 + (y - fy) ** 2;
    if (squared >= best) continue;
    best = squared;
    nearest.x = fx;
    nearest.y = fy;
  }
  return best;
}

function keepPoint(best: number, x: number, y: number, rectangle: Float64Array): number {
  const [back, front, right, left] = rectangle as unknown as Four;
  const outX = Math.max(back - x, 0, x - front);
  const outY = Math.max(right - y, 0, y - left);
  const squared = outX * outX + outY * outY;
  if (squared >= best) return best;
  nearest.x = x;
  nearest.y = y;
  return squared;
}

/** Whether a segment with both ends outside passes through the rectangle (clipping by the four sides). */
function crosses(rectangle: Float64Array, [ax, ay, bx, by]: Readonly<Four>): boolean {
  const [back, front, right, left] = rectangle as unknown as Four;
  const [dx, dy] = [bx - ax, by - ay];
  let from = 0;
  let to = 1;
  for (let side = 0; side < 4; side++) {
    const step = side < 2 ? dx : dy;
    const start = side < 2 ? ax : ay;
    const bound = side === 0 ? back : side === 1 ? front : side === 2 ? right : left;
    const inwards = side % 2 === 0 ? 1 : -1;
    const outBy = (bound - start) * inwards;
    const going = step * inwards;
    if (going === 0) {
      if (outBy > 0) return false;
    } else if (going > 0) from = Math.max(from, outBy / going);
    else to = Math.min(to, outBy / going);
  }
  return from <= to;
}
