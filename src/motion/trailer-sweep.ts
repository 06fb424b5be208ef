// The exact sweep of a towing vehicle with the sweep of its trailer beside it: the trailer's path is no arc, so its
// rectangles go by conservative advancement.

import type { Moving } from "./advance.ts";
import { keepsClear, touching } from "./advance.ts";
import { asDriven, prepareEnvelopes } from "./checked.ts";
import type { Checked } from "./checked.ts";
import { grown } from "./envelope.ts";
import type { Envelope, Surroundings } from "./envelope.ts";
import type { Arc } from "./pose.ts";
import { standsFree, firstContact } from "./sweep.ts";
import { hitchAngleAfter, trailerPose, trainAfter } from "./trailer-pose.ts";
import type { Trailer, TrainPose } from "./trailer-pose.ts";
import { tyrePatchLength, tyrePatchWidth } from "./vehicle.ts";

/** A train made ready for tests: the towing vehicle's rectangles, and the trailer's in the frame of its axle. */
export interface CheckedTrain {
  readonly towing: readonly Checked[];
  readonly trailer: Trailer;
  readonly towed: readonly Checked[];
}

/** Rectangles of a trailer (m, x ahead of its axle), the body grown by `margin`; its two wheels on the running ground. */
export function trailerEnvelopes(trailer: Trailer, around: Surroundings, margin: number): readonly Envelope[] {
  const { hitchToAxle, hitchToFront, rearOverhang, bodyWidth, widthOverTyres } = trailer;
  const half = bodyWidth / 2;
  const body = {
    part: "body",
    back: -rearOverhang,
    front: hitchToAxle - hitchToFront,
    right: -half,
    left: half,
  } as const;
  const envelopes: Envelope[] = [grown({ ...body, ground: around.clear }, margin)];
  if (around.running === around.clear) return envelopes;
  const [outer, long] = [widthOverTyres / 2, tyrePatchLength / 2];
  const inner = outer - tyrePatchWidth;
  for (const [right, left] of [
    [inner, outer],
    [-outer, -inner],
  ] as const) {
    envelopes.push({ part: "tyre", back: -long, front: long, right, left, ground: around.running });
  }
  return envelopes;
}

/** A train in its surroundings, ready for tests. */
export function prepareTrain(towing: readonly Envelope[], trailer: Trailer, towed: readonly Envelope[]): CheckedTrain {
  const all = prepareEnvelopes([...towing, ...towed]);
  return { towing: all.slice(0, towing.length), trailer, towed: all.slice(towing.length) };
}

/** Whether nothing of a train lies across a boundary where it stands. */
export function trainStandsFree(train: CheckedTrain, at: TrainPose): boolean {
  const behind = trailerPose(train.trailer, at, at.hitchAngle);
  return train.towing.every((one) => standsFree(one, at)) && train.towed.every((one) => standsFree(one, behind));
}

/**
 * A rectangle of the trailer while its towing vehicle drives an arc. The hitch moves at h = sqrt(1 + S^2 k^2) for every
 * metre of the rear axle; a point at distance p from the trailer's axle moves at (h cos a, h sin a p / T) at most, so at
 * no more than h sqrt(1 + (p / T)^2) (Cauchy; COMPUTED).
 */
export function towedAlong(trailer: Trailer, checked: Checked, from: TrainPose, arc: Arc): Moving {
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const speed = Math.hypot(1, S * arc.curvature) * Math.hypot(1, checked.reach / T);
  return {
    checked,
    poseAt: (share) => {
      const train = trainAfter(trailer, from, { curvature: arc.curvature, length: share * arc.length });
      return trailerPose(trailer, train, train.hitchAngle);
    },
    travel: speed * Math.abs(arc.length),
  };
}

/** Turn of the hitch between two looks at its angle, rad: less than half a turn, so folding right over is not missed. */
const lookTurn = 1.5;

/**
 * Largest hitch angle (rad, unsigned) on an arc. It goes one way all along (its slope depends on itself alone), so looks
 * closer than half a turn apart see the largest; phi' is no more than |k| + sqrt(1 + S^2 k^2) / T.
 */
export function largestAngleOn(trailer: Trailer, from: number, arc: Arc): number {
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const rate = Math.abs(arc.curvature) + Math.hypot(1, S * arc.curvature) / T;
  const looks = Math.max(1, Math.ceil((rate * Math.abs(arc.length)) / lookTurn));
  let largest = Math.abs(from);
  for (let i = 1; i <= looks; i++) {
    const part = { curvature: arc.curvature, length: (arc.length * i) / looks };
    largest = Math.max(largest, Math.abs(hitchAngleAfter(trailer, from, part)));
  }
  return largest;
}

/** Angles that a train may reach, rad. */
export interface AngleLimits {
  readonly forward: number;
  readonly reverse: number;
}

/** Whether a train can drive an arc: no angle passed, nothing touched, and about `gap` (m) or more beside the trailer. */
export function trainDrives(
  train: CheckedTrain,
  from: TrainPose,
  arc: Arc,
  limits: AngleLimits & { gap: number },
): boolean {
  const most = arc.length < 0 ? limits.reverse : limits.forward;
  if (largestAngleOn(train.trailer, from.hitchAngle, arc) > most) return false;
  if (train.towing.some((one) => firstContact(one, from, arc) <= 1)) return false;
  return train.towed.every((one) => keepsClear(towedAlong(train.trailer, one, from, arc), limits.gap));
}

/** The same for a whole path, as it is driven: nothing of the trailer ever comes nearer than `touching` (1 mm). */
export function trainDrivesAll(
  train: CheckedTrain,
  start: TrainPose,
  arcs: readonly Arc[],
  limits: AngleLimits,
): boolean {
  let at = start;
  for (const given of arcs) {
    const arc = asDriven(given);
    if (!trainDrives(train, at, arc, { ...limits, gap: 2 * touching })) return false;
    at = trainAfter(train.trailer, at, arc);
  }
  return true;
}

/** Largest hitch angle (rad, unsigned) on a path. */
export function largestAngleAlong(trailer: Trailer, start: TrainPose, arcs: readonly Arc[]): number {
  let at = start;
  let largest = Math.abs(start.hitchAngle);
  for (const given of arcs) {
    const arc = asDriven(given);
    largest = Math.max(largest, largestAngleOn(trailer, at.hitchAngle, arc));
    at = trainAfter(trailer, at, arc);
  }
  return largest;
}
