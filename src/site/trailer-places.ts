// Where a trailer comes near to something on a found path: the place readable again with moved numbers.

import { type Nearest, nearestOnWay, rectangleDistance } from "../motion/advance.ts";
import { asDriven, prepareEnvelopes } from "../motion/checked.ts";
import type { Envelope } from "../motion/envelope.ts";
import type { Ground } from "../motion/ground.ts";
import { type Arc, type Pose } from "../motion/pose.ts";
import { type Trailer, trailerPose, trainAfter, type TrainPose } from "../motion/trailer-pose.ts";
import { towedAlong, trailerEnvelopes } from "../motion/trailer-sweep.ts";
import type { Point } from "../model/reading.ts";

/** The nearest approach of a trailer: distance (m), the boundary point, the arc and the metres into it. */
export interface TrailerNear {
  readonly distance: number;
  readonly at: Point;
  readonly arc: number;
  readonly along: number;
}

/** Distances beyond this are of no account, m. */
const lookedFor = 5;

/** Rectangles of a trailer that keep to a ground: its body grown by a margin (m), or its tyres. */
export function trailerParts(
  trailer: Trailer,
  part: Envelope["part"],
  ground: Ground,
  margin: number,
): readonly Envelope[] {
  const nowhere: Ground = { rings: [] };
  const around = part === "body" ? { clear: ground, running: ground } : { clear: nowhere, running: ground };
  return trailerEnvelopes(trailer, around, margin).filter((one) => one.part === part);
}

/** Where a trailer on its path is nearest to the boundary that its rectangles keep to; null where nothing is near. */
export function nearestToTrailer(
  trailer: Trailer,
  envelopes: readonly Envelope[],
  start: Pose,
  arcs: readonly Arc[],
): TrailerNear | null {
  const checked = prepareEnvelopes(envelopes);
  let at: TrainPose = { ...start, hitchAngle: 0 };
  let best: TrailerNear | null = null;
  for (const [index, given] of arcs.entries()) {
    const arc = asDriven(given);
    for (const one of checked) {
      const below: number = best?.distance ?? lookedFor;
      const found: Nearest = nearestOnWay(towedAlong(trailer, one, at, arc), below) ?? touchedAt(at);
      if (found.distance >= below) continue;
      best = { distance: found.distance, at: found.at, arc: index, along: found.share * Math.abs(arc.length) };
    }
    at = trainAfter(trailer, at, arc);
  }
  return best;
}

const touchedAt = ({ x, y }: Pose): Nearest => ({ distance: 0, share: 0, at: [x, y] });

/** Where a train stands some metres into an arc of a path. */
export function trainAt(
  trailer: Trailer,
  start: Pose,
  arcs: readonly Arc[],
  at: { arc: number; along: number },
): TrainPose {
  const before = arcs.slice(0, at.arc).map(asDriven);
  const reached = before.reduce<TrainPose>((train, arc) => trainAfter(trailer, train, arc), {
    ...start,
    hitchAngle: 0,
  });
  const arc = arcs[at.arc];
  return arc ? trainAfter(trailer, reached, { ...arc, length: Math.sign(arc.length) * at.along }) : reached;
}

/** Distance (m) of rectangles from their ground with the train standing at a place of its path. */
export function distanceThere(trailer: Trailer, envelopes: readonly Envelope[], train: TrainPose): number {
  const pose = trailerPose(trailer, train, train.hitchAngle);
  return Math.min(
    ...prepareEnvelopes(envelopes).map((one) => {
      const edges = Array.from({ length: one.boundary.count }, (_, i) => i);
      return rectangleDistance(one, pose, edges).distance;
    }),
  );
}
