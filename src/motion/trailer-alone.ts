// What is sure not to be possible for a train because its trailer could not even do it by itself.

import { findManoeuvre } from "./find-manoeuvre.ts";
import type { ManoeuvreAnswer } from "./manoeuvre.ts";
import { trailerPose } from "./trailer-pose.ts";
import type { TrainQuestion } from "./train-problem.ts";

/** Sharpest angle at which a trailer is still drawn along for sure, rad: beyond it nothing is said of it. */
const drawnAlong = 1.48;

/**
 * Whether a trailer that drives by itself could do it, as freely as any towing vehicle could lead it: its axle goes no
 * sharper than T / tan(a), a = greatest hitch angle + atan(S / R) the greatest angle between trailer and the way of its
 * hitch; its gears are those of the train while a is less than a right angle (COMPUTED). Null where that is more.
 */
export function trailerByItself(question: TrainQuestion): ManoeuvreAnswer | null {
  const { trailer, vehicle, start, goal } = question;
  const { hitchBehindAxle: S, hitchToAxle: T, hitchToFront, rearOverhang, bodyWidth, widthOverTyres } = trailer;
  const sharpest = trailer.greatestAngle + Math.atan2(Math.abs(S), vehicle.rearAxleRadius);
  if (sharpest > drawnAlong) return null;
  const body = { wheelbase: 0, frontOverhang: T - hitchToFront, rearOverhang, bodyWidth, widthOverTyres };
  const { clear, running, margin, mostChanges, firstGear, lastGear } = question;
  return findManoeuvre({
    vehicle: { ...body, rearAxleRadius: T / Math.tan(sharpest) },
    clear,
    running,
    margin,
    mostChanges,
    ...(firstGear && { firstGear }),
    ...(lastGear && { lastGear }),
    start: trailerPose(trailer, start, 0),
    goal: trailerPose(trailer, goal, 0),
  });
}
