// Joining a train's way exactly to its end.

import { joinAll } from "./join.ts";
import { wrapAngle } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import { trainAfter } from "./trailer-pose.ts";
import type { TrainPose } from "./trailer-pose.ts";
import type { TowedUnit } from "./trailer.ts";

/** A way and where it is to end: pose of the towing vehicle, the trailer in line with it. */
export interface OpenTrainWay {
  readonly trailer: TowedUnit;
  readonly start: TrainPose;
  readonly end: Pose;
  readonly arcs: readonly Arc[];
  readonly largestCurvature: number;
}

/** How near the end must be reached: m, rad, rad of hitch angle (the trailer's tail then lies within a hand's breadth). */
export const trainEndTolerance = { distance: 0.02, heading: 0.01, hitch: 0.02 } as const;

/** A radian at the end counts as so many metres. */
const lever = 3;

/** The arcs changed so that they end at the end; null where they cannot be. Clearances are not looked at. */
export function joinToEnd({ trailer, start, end, arcs, largestCurvature }: OpenTrainWay): readonly Arc[] | null {
  const misses = (driven: readonly Arc[]): readonly number[] => {
    const at = driven.reduce((train, arc) => trainAfter(trailer, train, arc), start);
    return [at.x - end.x, at.y - end.y, lever * wrapAngle(at.heading - end.heading), lever * at.hitchAngle];
  };
  return joinAll({ arcs, misses, closes, largestCurvature });
}

function closes([x = 0, y = 0, heading = 0, hitch = 0]: readonly number[]): boolean {
  const { distance, heading: turn, hitch: angle } = trainEndTolerance;
  return Math.hypot(x, y) <= distance && Math.abs(heading) <= lever * turn && Math.abs(hitch) <= lever * angle;
}
