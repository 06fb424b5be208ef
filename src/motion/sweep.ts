// The exact test of a path: does any rectangle of the vehicle meet the boundary of its ground on the way?
// Two rigid outlines that start apart can only meet where a corner of one meets a side of the other. On an arc every
// corner runs on a circle about the turning centre, and seen from the vehicle so does every vertex of the ground.
// Testing both kinds of circle against both kinds of side is therefore complete; nothing is sampled.

import { firstTouch } from "./arc-segment.ts";
import type { PointPath } from "./arc-segment.ts";
import { asDriven, cornerPath, nearEdges, vertexPath } from "./checked.ts";
import type { Checked, Four } from "./checked.ts";
import type { Envelope } from "./envelope.ts";
import { liesOnGround } from "./ground.ts";
import { poseAfter } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import { tightestPlace } from "./tightest.ts";
import type { Tightest } from "./tightest.ts";

export type SweepResult =
  | { readonly is: "accepted"; readonly tightest: Tightest }
  | {
      readonly is: "rejected";
      /** The arc on which it first happens; -1 where the start itself is not free. */
      readonly arc: number;
      readonly along: number;
      readonly part: Envelope["part"];
      readonly pose: Pose;
    };

/** Checks a whole path of exact arcs. The tightest place is searched only where the path is accepted. */
export function sweepPath(checked: readonly Checked[], start: Pose, arcs: readonly Arc[]): SweepResult {
  const rejected = whereRejected(checked, start, arcs);
  return rejected ?? { is: "accepted", tightest: tightestPlace(checked, start, arcs) };
}

/** Where a path of exact arcs first meets a boundary; null where it meets none. */
export function whereRejected(
  checked: readonly Checked[],
  start: Pose,
  arcs: readonly Arc[],
): Extract<SweepResult, { is: "rejected" }> | null {
  for (const one of checked) {
    if (!standsFree(one, start)) return { is: "rejected", arc: -1, along: 0, part: one.envelope.part, pose: start };
  }
  let pose = start;
  for (const [index, given] of arcs.entries()) {
    const arc = asDriven(given);
    let first = Infinity;
    let part: Envelope["part"] = "body";
    for (const one of checked) {
      const share = firstContact(one, pose, arc);
      if (share < first) [first, part] = [share, one.envelope.part];
    }
    if (first <= 1) {
      const reached = { curvature: arc.curvature, length: first * arc.length };
      return { is: "rejected", arc: index, along: Math.abs(reached.length), part, pose: poseAfter(pose, reached) };
    }
    pose = poseAfter(pose, arc);
  }
  return null;
}

/** Whether an envelope stands clear of its boundary, on its ground, at a pose. */
export function standsFree(checked: Checked, pose: Pose): boolean {
  const { boundary, rectangle } = checked;
  const { 0: back, 1: front, 2: right, 3: left } = rectangle as unknown as Four;
  const c = Math.cos(pose.heading);
  const s = Math.sin(pose.heading);
  const midX = (back + front) / 2;
  const midY = (right + left) / 2;
  if (!liesOnGround(boundary, pose.x + c * midX - s * midY, pose.y + s * midX + c * midY)) return false;
  for (let i = 0; i < boundary.count; i++) {
    const ax = boundary.ax[i]! - pose.x;
    const ay = boundary.ay[i]! - pose.y;
    const bx = boundary.bx[i]! - pose.x;
    const by = boundary.by[i]! - pose.y;
    if (crossesRectangle(rectangle, [c * ax + s * ay, c * ay - s * ax, c * bx + s * by, c * by - s * bx])) return false;
  }
  return true;
}

/** Whether a segment meets a rectangle with sides along the axes (clipping by the four sides). */
function crossesRectangle(rectangle: Float64Array, [ax, ay, bx, by]: Readonly<Four>): boolean {
  const { 0: back, 1: front, 2: right, 3: left } = rectangle as unknown as Four;
  let from = 0;
  let to = 1;
  const clip = (start: number, step: number, low: number, high: number): boolean => {
    if (step === 0) return start > low && start < high;
    const a = (low - start) / step;
    const b = (high - start) / step;
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
    return from < to;
  };
  return clip(ax, bx - ax, back, front) && clip(ay, by - ay, right, left);
}

const path: PointPath = { x: 0, y: 0, centreX: 0, centreY: 0, turn: 0 };

/** Share of an arc at which an envelope first meets its boundary; Infinity where it does not. */
export function firstContact(checked: Checked, pose: Pose, arc: Arc): number {
  const { ax, ay, bx, by } = checked.boundary;
  let first = Infinity;
  const near = nearEdges(checked, pose, arc);
  for (const corner of checked.corners) {
    cornerPath(path, corner, pose, arc);
    for (const i of near) first = Math.min(first, firstTouch(path, ax[i]!, ay[i]!, bx[i]!, by[i]!));
  }
  for (const i of near) {
    vertexPath(path, [ax[i]!, ay[i]!], pose, arc);
    first = Math.min(first, touchRectangle(checked.rectangle));
  }
  return first;
}

function touchRectangle(rectangle: Float64Array): number {
  const { 0: back, 1: front, 2: right, 3: left } = rectangle as unknown as Four;
  return Math.min(
    firstTouch(path, back, right, front, right),
    firstTouch(path, front, right, front, left),
    firstTouch(path, front, left, back, left),
    firstTouch(path, back, left, back, right),
  );
}
