// A question about a train made ready for its search: everything in the frame of the trailer's axle where it starts.

import { envelopesOf } from "./envelope.ts";
import type { Box } from "./lattice.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import type { Gear, Pose } from "./pose.ts";
import { pose } from "./posed.ts";
import { seenFrom } from "./start-frame.ts";
import { largestAngleInReverse, trailerPose } from "./trailer-pose.ts";
import type { Trailer, TrainPose } from "./trailer-pose.ts";
import { prepareTrain, trailerEnvelopes } from "./trailer-sweep.ts";
import type { AngleLimits, CheckedTrain } from "./trailer-sweep.ts";

/** A manoeuvre of a vehicle with a trailer, both in line at its start and at its end. */
export interface TrainQuestion extends ManoeuvreQuestion {
  readonly trailer: Trailer;
}

/** A question in the frame of the trailer's axle at its start. */
export interface TrainProblem {
  readonly train: CheckedTrain;
  readonly start: TrainPose;
  /** The towing vehicle at the end, the trailer in line behind it. */
  readonly end: Pose;
  readonly firstGear: Gear;
  readonly lastGear: Gear;
  readonly mostChanges: number;
  /** Smallest radius of the towing vehicle's rear axle, m. */
  readonly radius: number;
  readonly limits: AngleLimits;
  /** Where either axle can be. */
  readonly box: Box;
}

export function trainProblem(question: TrainQuestion): TrainProblem {
  const { trailer, vehicle, margin, mostChanges } = question;
  const { end, firstGear, lastGear, radius, box } = pose(question);
  const around = seenFrom(trailerPose(trailer, question.start, 0), question);
  const ahead = trailer.hitchBehindAxle + trailer.hitchToAxle;
  return {
    train: prepareTrain(envelopesOf(vehicle, around, margin), trailer, trailerEnvelopes(trailer, around, margin)),
    start: { x: ahead, y: 0, heading: 0, hitchAngle: 0 },
    end: { ...end, x: end.x + ahead },
    firstGear,
    lastGear,
    mostChanges,
    radius,
    limits: { forward: trailer.greatestAngle, reverse: largestAngleInReverse(trailer, radius) },
    box: { ...box, left: box.left + ahead, right: box.right + ahead },
  };
}
