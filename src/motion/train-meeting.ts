// Where two floods of a train's poses meet: some poses well apart, and the rough ways over them.

import { wrapAngle } from "./pose.ts";
import type { Arc } from "./pose.ts";
import { placeOf } from "./rough-path.ts";
import { bitsAt } from "./side.ts";
import type { Node } from "./trace.ts";
import { traceTrain } from "./train-flood.ts";
import type { TrainRun } from "./train-flood.ts";
import type { TrainFronts } from "./train-fronts.ts";
import { angleOf, turnOf } from "./train-lattice.ts";
import type { TrainLattice } from "./train-lattice.ts";
import type { TrainPose } from "./trailer-pose.ts";

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
