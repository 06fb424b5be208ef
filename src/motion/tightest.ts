// The tightest place of a path: where a vehicle comes nearest to the boundary of its ground.

import type { Point } from "../model/reading.ts";
import { approach } from "./arc-segment.ts";
import type { Approach, PointPath } from "./arc-segment.ts";
import { asDriven, cornerPath, cornersOf, nearEdges, vertexPath } from "./checked.ts";
import type { Checked } from "./checked.ts";
import type { Envelope } from "./envelope.ts";
import { poseAfter } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";

/** Where a path is nearest to leaving its ground: distance (m, of the envelope as given), place, and where on the path. */
export interface Tightest {
  readonly clearance: number;
  /** The point of the boundary that is nearest. */
  readonly at: Point;
  readonly part: Envelope["part"];
  readonly arc: number;
  /** Metres into that arc, unsigned. */
  readonly along: number;
}

const path: PointPath = { x: 0, y: 0, centreX: 0, centreY: 0, turn: 0 };

/** Tightest place of a path that meets no boundary, by closed forms. */
export function tightestPlace(checked: readonly Checked[], start: Pose, arcs: readonly Arc[]): Tightest {
  const best: Approach = { distance: Infinity, share: 0, x: 0, y: 0 };
  let found: Tightest = { clearance: Infinity, at: [start.x, start.y], part: "body", arc: 0, along: 0 };
  let pose = start;
  for (const [index, given] of arcs.entries()) {
    const arc = asDriven(given);
    for (const one of checked) {
      const at = approachOnArc(one, pose, arc, best);
      if (at === null) continue;
      const along = best.share * Math.abs(arc.length);
      found = { clearance: best.distance, at, part: one.envelope.part, arc: index, along };
    }
    pose = poseAfter(pose, arc);
  }
  return found;
}

/** Brings `best` down over one arc; the nearest boundary point where it changed. */
function approachOnArc(checked: Checked, pose: Pose, arc: Arc, best: Approach): Point | null {
  const { back, front, right, left } = checked.envelope;
  const { ax, ay, bx, by } = checked.boundary;
  const corners = cornersOf(Float64Array.of(back, front, right, left));
  let at: Point | null = null;
  const near = nearEdges(checked, pose, arc, Math.min(best.distance, 1e6));
  for (const corner of corners) {
    cornerPath(path, corner, pose, arc);
    for (const i of near) {
      if (approach(best, path, [ax[i]!, ay[i]!, bx[i]!, by[i]!])) at = [best.x, best.y];
    }
  }
  for (const i of near) {
    vertexPath(path, [ax[i]!, ay[i]!], pose, arc);
    for (const [side, from] of corners.entries()) {
      const to = corners[(side + 1) % 4]!;
      if (approach(best, path, [from[0], from[1], to[0], to[1]])) at = [ax[i]!, ay[i]!];
    }
  }
  return at;
}
