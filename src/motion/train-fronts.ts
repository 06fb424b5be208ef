// Two floods of a train's poses towards each other, as `two-sided.ts` does for one vehicle; where they meet, rough ways.

import { giveBack } from "./heap.ts";
import { register } from "./kernel.ts";
import { wrapAngle } from "./pose.ts";
import type { Arc, Gear } from "./pose.ts";
import { placeOf } from "./rough-path.ts";
import { bitsAt, emptySide, seed } from "./side.ts";
import type { Field } from "./side.ts";
import type { Node } from "./trace.ts";
import { closeTrain, traceTrain } from "./train-flood.ts";
import type { TrainRun, TrainSide } from "./train-flood.ts";
import { angleOf, trainMotions, turnOf } from "./train-lattice.ts";
import type { TrainLattice, TrainMotion } from "./train-lattice.ts";
import type { TrainPose } from "./trailer-pose.ts";
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

/** A rough way: arcs of the towing vehicle that need not quite join, and the train's pose after each. */
export interface RoughTrainWay {
  readonly arcs: readonly Arc[];
  readonly knots: readonly TrainPose[];
}

/** Up to `most` ways over meetings that lie apart, those of the fewest arcs first. The frame is that of the start. */
export function trainWays(fronts: TrainFronts, most: number): readonly RoughTrainWay[] {
  const nodes = meetings(fronts, 3 * most);
  const towards = traceTrain(fronts.start.own, nodes);
  const onwards = traceTrain(fronts.end.own, nodes);
  const ways = nodes.map((_, i) =>
    roughWay(fronts.problem.lattice, [...towards[i]!, ...onwards[i]!.toReversed().map(turned)]),
  );
  return ways.toSorted((a, b) => a.arcs.length - b.arcs.length).slice(0, most);
}

/** A run of the end's side as it is driven: the other way round. */
function turned({ motion, layers, from, to }: TrainRun): TrainRun {
  const gear = motion.gear === 1 ? -1 : 1;
  return { motion: { ...motion, gear }, layers: layers.toReversed(), from: to, to: from };
}

/** Poses in common, one in the middle of the longest row of each layer; those of the longest rows, well apart. */
function meetings(fronts: TrainFronts, most: number): readonly Node[] {
  const [a, b] = [fronts.start.own.side, fronts.end.own.side];
  const { words } = fronts.problem.field.heap;
  const found: (Node & { length: number })[] = [];
  for (let layer = 0; layer < a.lattice.headings; layer++) {
    const from = Math.max(a.low[layer]!, b.low[layer]!);
    const to = Math.min(a.high[layer]!, b.high[layer]!);
    let best = { heading: layer, bit: 0, length: 0 };
    let run = 0;
    for (let word = from; word <= to; word++) {
      const common = words[bitsAt(a, layer) + word]! & words[bitsAt(b, layer) + word]!;
      if (common === 0) {
        run = 0;
        continue;
      }
      for (let i = 0; i < 32; i++) {
        run = (common & (1 << i)) === 0 ? 0 : run + 1;
        if (run > best.length) best = { heading: layer, bit: 32 * word + i, length: run };
      }
    }
    if (best.length > 0) found.push({ ...best, bit: best.bit - (best.length >> 1) });
  }
  return spreadOut(fronts, found, most);
}

/** Least gap between the trailer's headings of the meetings taken, in steps: wide ones first. */
const gaps = [6, 2, 1] as const;

function spreadOut(fronts: TrainFronts, found: (Node & { length: number })[], most: number): readonly Node[] {
  const { lattice } = fronts.problem;
  found.sort((a, b) => b.length - a.length || a.heading - b.heading);
  const taken: (Node & { length: number })[] = [];
  for (const gap of gaps) {
    for (const one of found) {
      if (taken.length === most) return taken;
      const own = angleOf(lattice, one.heading);
      const close = taken.some((other) => {
        const at = angleOf(lattice, other.heading);
        const apart = Math.abs(at.heading - own.heading);
        return Math.min(apart, lattice.places.headings - apart) < gap && Math.abs(at.level - own.level) < 2 * gap;
      });
      if (!close) taken.push(one);
    }
  }
  return taken;
}

/** Arcs and knots of a way. A run has one curvature throughout; runs of one curvature and gear are joined. */
function roughWay(lattice: TrainLattice, runs: readonly TrainRun[]): RoughTrainWay {
  const arcs: Arc[] = [];
  const knots: TrainPose[] = [trainAt(lattice, runs[0]?.from ?? { heading: 0, bit: 0 }, 0)];
  for (const { motion, layers, to } of runs) {
    const curvature = motion.curvature[layers[0]!]!;
    const length = motion.gear * layers.reduce((sum, layer) => sum + motion.length[layer]!, 0);
    const before = knots.at(-1)!;
    const knot = trainAt(lattice, to, before.heading + curvature * length);
    const last = arcs.at(-1);
    const joins = last && last.curvature === curvature && Math.sign(last.length) === motion.gear;
    if (joins) {
      arcs[arcs.length - 1] = { curvature, length: last.length + length };
      knots[knots.length - 1] = knot;
    } else {
      arcs.push({ curvature, length });
      knots.push(knot);
    }
  }
  return { arcs, knots };
}

/** The train at a node, its heading the one nearest to another. */
function trainAt(lattice: TrainLattice, node: Node, near: number): TrainPose {
  const { hitchBehindAxle: S, hitchToAxle: T } = lattice.trailer;
  const { heading, level } = angleOf(lattice, node.heading);
  const own = heading * turnOf(lattice);
  const towing = own + level * turnOf(lattice);
  const { x, y } = placeOf(lattice.places, node);
  return {
    x: x + T * Math.cos(own) + S * Math.cos(towing),
    y: y + T * Math.sin(own) + S * Math.sin(towing),
    heading: near + wrapAngle(towing - near),
    hitchAngle: level * turnOf(lattice),
  };
}
