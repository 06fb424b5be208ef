// Two floods of a train's poses towards each other, as `two-sided.ts` does for one vehicle.

import { giveBack } from "./heap.ts";
import { register } from "./kernel.ts";
import type { Gear } from "./pose.ts";
import { bitsAt, emptySide, seed } from "./side.ts";
import type { Field } from "./side.ts";
import type { Node } from "./trace.ts";
import { closeTrain } from "./train-flood.ts";
import type { TrainSide } from "./train-flood.ts";
import type { TrainLattice } from "./train-lattice.ts";
import type { TrainMotion } from "./train-motion.ts";
import { trainMotions } from "./train-motions.ts";
import type { AngleLimits } from "./trailer-sweep.ts";

/** One question on a lattice of trains. */
export interface TrainFloodProblem {
  readonly lattice: TrainLattice;
  readonly field: Field;
  readonly start: Node;
  readonly ends: readonly Node[];
  readonly firstGear: Gear;
  readonly lastGear: Gear;
  readonly limits: AngleLimits;
  /** Words of log after which it is given up. */
  readonly mostLog: number;
}

interface TrainFront {
  readonly own: TrainSide;
  readonly motions: Readonly<Record<Gear, readonly TrainMotion[]>>;
  gear: Gear;
  changes: number;
  idle: number;
}

/** Two fronts; `met` tells how many changes their meeting stands for. */
export interface TrainFronts {
  readonly problem: TrainFloodProblem;
  readonly start: TrainFront;
  readonly end: TrainFront;
  met: number | null;
  exhausted: boolean;
}

/** Fronts closed under the first and the last gear. */
export function beginTrainFronts(problem: TrainFloodProblem): TrainFronts {
  const { lattice, field, limits, firstGear, lastGear } = problem;
  const motions = trainMotions(lattice, limits);
  const front = (index: number, inTime: 1 | -1, gear: Gear): TrainFront => {
    const side = emptySide(field, index);
    return {
      own: { side, passes: [] },
      motions: inTime === 1 ? motions.inTime : motions.against,
      gear,
      changes: 0,
      idle: 0,
    };
  };
  const start = front(0, 1, firstGear);
  const end = front(1, -1, lastGear);
  seed(start.own.side, problem.start.heading, problem.start.bit);
  for (const node of problem.ends) seed(end.own.side, node.heading, node.bit);
  const fronts: TrainFronts = { problem, start, end, met: null, exhausted: false };
  spreadOn(fronts, start);
  if (firstGear === lastGear && meets(fronts)) fronts.met = 0;
  spreadOn(fronts, end);
  if (firstGear !== lastGear && meets(fronts)) fronts.met = 1;
  return fronts;
}

/** Goes on until the fronts meet, or could only meet with more than `most` changes, or nothing grows any more. */
export function growTrainFronts(fronts: TrainFronts, most: number): void {
  while (fronts.met === null && !fronts.exhausted) {
    if (changesOf(fronts) + (gearsDiffer(fronts) ? 2 : 1) > most) return;
    extend(fronts);
    if (gearsDiffer(fronts) && meets(fronts)) fronts.met = changesOf(fronts);
  }
}

/** Lets fronts that have met look for a way of more changes, which is roomier. */
export function goOnTrains(fronts: TrainFronts, most: number): void {
  if (fronts.met === null) return;
  const least = Math.max(2, fronts.met + 2);
  fronts.met = null;
  if (least > most) return;
  while (!fronts.exhausted && (!gearsDiffer(fronts) || changesOf(fronts) < least)) extend(fronts);
  if (gearsDiffer(fronts) && changesOf(fronts) >= least && meets(fronts)) fronts.met = changesOf(fronts);
}

const gearsDiffer = ({ start, end }: TrainFronts): boolean => start.gear !== end.gear;

const changesOf = ({ start, end }: TrainFronts): number => start.changes + end.changes + 1;

function extend(fronts: TrainFronts): void {
  const { start, end, problem } = fronts;
  const front = start.own.side.gained <= end.own.side.gained ? start : end;
  front.gear = front.gear === "forward" ? "reverse" : "forward";
  front.changes += 1;
  const grown = spreadOn(fronts, front);
  front.idle = grown === 0 ? front.idle + 1 : 0;
  const full = problem.field.logEnd >= problem.mostLog;
  if (start.idle >= 2 || end.idle >= 2 || full) fronts.exhausted = true;
}

function spreadOn({ problem }: TrainFronts, front: TrainFront): number {
  return closeTrain(front.own, front.motions[front.gear], problem.mostLog);
}

function meets({ start, end }: TrainFronts): boolean {
  const [a, b] = [start.own.side, end.own.side];
  const { words, kernel } = a.field.heap;
  for (let layer = 0; layer < a.lattice.headings; layer++) {
    const from = Math.max(a.low[layer]!, b.low[layer]!);
    const to = Math.min(a.high[layer]!, b.high[layer]!);
    if (from > to) continue;
    words[register.source] = bitsAt(a, layer) + from;
    words[register.target] = bitsAt(b, layer) + from;
    words[register.last] = bitsAt(a, layer) + to;
    kernel.meet();
    if (words[register.met] === 1) return true;
  }
  return false;
}

/** Gives back the memory of fronts, which must not be used any more. */
export function releaseTrains(fronts: TrainFronts): void {
  giveBack(fronts.problem.field.heap);
}
