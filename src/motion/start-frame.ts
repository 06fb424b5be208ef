// The plan as seen from the start pose: start at the origin, heading along x. The search runs in this frame, so moving
// and turning the plan changes nothing.

import type { Point } from "../model/reading.ts";
import type { Surroundings } from "./envelope.ts";
import type { Ground } from "./ground.ts";
import { wrapAngle } from "./pose.ts";
import type { Pose } from "./pose.ts";

/** Coordinates are rounded to this (m), so that the rounding noise of moving and turning disappears. */
const grain = 1e-7;

/** Surroundings in the frame of a start pose. Grounds that were one object stay one. */
export function seenFrom(start: Pose, around: Surroundings): Surroundings {
  const clear = groundFrom(start, around.clear);
  const running = around.running === around.clear ? clear : groundFrom(start, around.running);
  if (around.mirrors === undefined) return { clear, running };
  const { mirrors } = around;
  const ground = mirrors.ground === around.clear ? clear : groundFrom(start, mirrors.ground);
  return { clear, running, mirrors: { ...mirrors, ground } };
}

/** A pose in the frame of a start pose. */
export function poseFrom(start: Pose, pose: Pose): Pose {
  const [x, y] = pointFrom(start, [pose.x, pose.y]);
  return { x, y, heading: wrapAngle(rounded(pose.heading - start.heading)) };
}

function groundFrom(start: Pose, ground: Ground): Ground {
  const move = (ring: readonly Point[]): readonly Point[] => ring.map((point) => pointFrom(start, point));
  return { rings: ground.rings.map(move), obstacles: (ground.obstacles ?? []).map(move) };
}

/** A point in the frame of a start pose. */
export function pointFrom(start: Pose, [x, y]: Point): Point {
  const c = Math.cos(start.heading);
  const s = Math.sin(start.heading);
  const dx = x - start.x;
  const dy = y - start.y;
  return [rounded(c * dx + s * dy), rounded(c * dy - s * dx)];
}

function rounded(value: number): number {
  // Without minus nought.
  return Math.round(value / grain) * grain + 0;
}
