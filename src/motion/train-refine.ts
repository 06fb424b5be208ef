// From a rough way of a train to exact arcs: damped least squares on all arcs and knots at once, as `refine.ts` does for
// one vehicle. The last word is the sweep's.

import { clearBanded, newBanded, solveDamped } from "./banded.ts";
import type { Banded } from "./banded.ts";
import { directionChanges } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import type { RoughTrainWay } from "./train-meeting.ts";
import { evaluateTrain, trainSpanned, trainUnknowns } from "./train-shooting.ts";
import type { TrainKnot, TrainShooting } from "./train-shooting.ts";
import { joinToEnd } from "./trailer-join.ts";
import type { TrainPose } from "./trailer-pose.ts";
import { trainDrivesAll } from "./trailer-sweep.ts";
import type { AngleLimits, CheckedTrain } from "./trailer-sweep.ts";
import { wallsOf } from "./walls.ts";
import type { Walls } from "./walls.ts";

/** What a refined path must keep to. */
export interface TrainRefineWith {
  readonly train: CheckedTrain;
  readonly start: TrainPose;
  readonly end: Pose;
  readonly limits: AngleLimits;
  readonly largestCurvature: number;
  readonly mostChanges: number;
}

/** Clearance beyond what is asked at which refinement stops pushing, m; the same where that is too much to ask. */
const spare = 0.012;
const leastSpare = 0.002;
const mostSteps = 60;
/** Steps after which a path must have come down to a share of its cost, or it is given up. */
const patience = { steps: 8, share: 0.5 } as const;
const dampings = { first: 1e-3, least: 1e-7, tries: 7 } as const;
const shortest = 1e-4;

/** Walls of a train's two bodies, made once for many ways. */
export interface TrainWalls {
  readonly towing: readonly Walls[];
  readonly towed: readonly Walls[];
}

export function trainWalls({ towing, towed }: CheckedTrain): TrainWalls {
  return { towing: towing.map(wallsOf), towed: towed.map(wallsOf) };
}

/** Exact arcs near a rough way, joined to the end and checked; null where none was found. */
export function refineTrain(rough: RoughTrainWay, walls: TrainWalls, to: TrainRefineWith): readonly Arc[] | null {
  if (rough.arcs.length === 0) return null;
  const shooting = shootingOf(rough, walls, to);
  const size = trainUnknowns(shooting.arcs);
  const work = { system: newBanded(size, trainSpanned), held: new Uint8Array(size), step: new Float64Array(size) };
  let [damping, weight, earlier] = [dampings.first as number, 2, Infinity];
  for (let count = 0; count < mostSteps; count++) {
    clearBanded(work.system);
    const before = evaluateTrain(shooting, weight, work.system);
    if (count % patience.steps === 0) {
      if (before.cost > earlier * patience.share) {
        if (shooting.target <= leastSpare) return null;
        shooting.target = leastSpare;
      }
      earlier = before.cost;
    }
    if (before.gap < 5e-3 && before.clearance > -1e-3) {
      const arcs = accepted(shooting, to);
      if (arcs !== null) return arcs;
    }
    const taken = takeStep({ shooting, work, weight, largestCurvature: to.largestCurvature }, before.cost, damping);
    if (taken === null) return null;
    damping = taken;
    if (weight < 16) [weight, earlier] = [weight * 2, earlier * 4];
  }
  return null;
}

function shootingOf(rough: RoughTrainWay, walls: TrainWalls, to: TrainRefineWith): TrainShooting {
  const count = rough.arcs.length;
  const unknowns = new Float64Array(trainUnknowns(count));
  for (const [i, arc] of rough.arcs.entries()) {
    unknowns[6 * i] = arc.length;
    unknowns[6 * i + 1] = arc.curvature;
    if (i + 1 < count) unknowns.set(knotOf(rough.knots[i + 1]!), 6 * i + 2);
  }
  const last = rough.knots.at(-1)!;
  const turns = Math.round((last.heading - to.end.heading) / (2 * Math.PI));
  return {
    arcs: count,
    unknowns,
    gears: Int8Array.from(rough.arcs, ({ length }) => (length < 0 ? -1 : 1)),
    start: knotOf(to.start),
    end: [to.end.x, to.end.y, to.end.heading + 2 * Math.PI * turns, 0],
    trailer: to.train.trailer,
    ...walls,
    limits: to.limits,
    target: spare,
  };
}

const knotOf = ({ x, y, heading, hitchAngle }: TrainPose): TrainKnot => [x, y, heading, hitchAngle];

interface Setting {
  readonly shooting: TrainShooting;
  readonly work: { readonly system: Banded; readonly held: Uint8Array; readonly step: Float64Array };
  readonly weight: number;
  readonly largestCurvature: number;
}

/** Takes one step that lowers the cost; returns the next damping, or null where no step does. */
function takeStep(setting: Setting, cost: number, first: number): number | null {
  const { shooting, work, weight } = setting;
  const { unknowns } = shooting;
  const before = unknowns.slice();
  let damping = first;
  for (let tries = 0; tries < dampings.tries; tries++) {
    holdAtBounds(setting);
    if (solveDamped(work.system, damping, work.held, work.step)) {
      for (let i = 0; i < unknowns.length; i++) unknowns[i] = before[i]! + work.step[i]!;
      keepBounds(setting);
      if (evaluateTrain(shooting, weight, null).cost < cost) return Math.max(dampings.least, damping / 5);
    }
    damping = Math.max(1e-6, damping * 6);
  }
  unknowns.set(before);
  return null;
}

/** Holds lengths and curvatures that stand at a bound and are pushed beyond it. */
function holdAtBounds({ shooting, work, largestCurvature }: Setting): void {
  const { unknowns, gears } = shooting;
  work.held.fill(0);
  for (let arc = 0; arc < shooting.arcs; arc++) {
    // The step goes against the gradient.
    const lengthPush = -work.system.right[6 * arc]! * gears[arc]!;
    if (unknowns[6 * arc]! * gears[arc]! <= 0 && lengthPush < 0) work.held[6 * arc] = 1;
    const curvature = unknowns[6 * arc + 1]!;
    const bendPush = -work.system.right[6 * arc + 1]! * Math.sign(curvature);
    if (Math.abs(curvature) >= largestCurvature && bendPush > 0) work.held[6 * arc + 1] = 1;
  }
}

function keepBounds({ shooting, largestCurvature: most }: Setting): void {
  const { unknowns, gears } = shooting;
  for (let arc = 0; arc < shooting.arcs; arc++) {
    if (unknowns[6 * arc]! * gears[arc]! < 0) unknowns[6 * arc] = 0;
    unknowns[6 * arc + 1] = Math.max(-most, Math.min(most, unknowns[6 * arc + 1]!));
  }
}

/** The arcs as they stand, joined to the end, where they pass the exact sweep. */
function accepted({ arcs: count, unknowns }: TrainShooting, to: TrainRefineWith): readonly Arc[] | null {
  const { train, start, end, limits, largestCurvature, mostChanges } = to;
  const arcs: Arc[] = [];
  for (let i = 0; i < count; i++) {
    const length = unknowns[6 * i]!;
    if (Math.abs(length) >= shortest) arcs.push({ length, curvature: unknowns[6 * i + 1]! });
  }
  if (directionChanges(arcs) > mostChanges) return null;
  const joined = joinToEnd({ trailer: train.trailer, start, end, arcs, largestCurvature });
  return joined && trainDrivesAll(train, start, joined, limits) ? joined : null;
}
