// A train's way by floods over its lattice of poses, made exact: the least number of changes first.

import { borrowHeap } from "./heap.ts";
import { latticeWords } from "./lattice.ts";
import type { LatticeStep } from "./lattice.ts";
import { nodeAt, nodesAbout } from "./node-at.ts";
import type { Arc } from "./pose.ts";
import { fieldWords, newField } from "./side.ts";
import { trainFreeMaker } from "./train-free.ts";
import { beginTrainFronts, goOnTrains, growTrainFronts, releaseTrains } from "./train-fronts.ts";
import type { TrainFronts } from "./train-fronts.ts";
import { layerOf, trainLattice } from "./train-lattice.ts";
import type { TrainLattice } from "./train-lattice.ts";
import { trainWays } from "./train-meeting.ts";
import { refineTrain, trainWalls } from "./train-refine.ts";
import { trailerPose } from "./trailer-pose.ts";
import type { TrainProblem } from "./train-problem.ts";

/** How a lattice is searched. */
interface TrainLook {
  /** Lattices, the finest first: the first that is small enough is taken. */
  readonly steps: readonly LatticeStep[];
  /** Words of one set of layers, and words of log, beyond which it is not searched. */
  readonly mostWords: number;
  readonly mostLog: number;
  /** Ways tried at the least number of changes, and at each greater number after that. */
  readonly tries: readonly number[];
}

const wide: readonly LatticeStep[] = [
  { cell: 0.2, headings: 48 },
  { cell: 0.3, headings: 48 },
  { cell: 0.45, headings: 36 },
  { cell: 0.6, headings: 36 },
];

/** A quick look, and a close one. */
export const trainLooks: readonly TrainLook[] = [
  { steps: wide, mostWords: 5e6, mostLog: 30e6, tries: [4, 3, 2] },
  { steps: [{ cell: 0.1, headings: 72 }], mostWords: 14e6, mostLog: 60e6, tries: [6, 4, 3] },
];

/** An exact path that a look finds; null where it finds none. */
export function trainWay(problem: TrainProblem, look: TrainLook): readonly Arc[] | null {
  const lattices = look.steps.map((step) => trainLattice(problem, step));
  const lattice = lattices.find(({ layers }) => latticeWords(layers) <= look.mostWords);
  if (!lattice) return null;
  const fronts = frontsFor(problem, lattice, look);
  growTrainFronts(fronts, problem.mostChanges);
  const way = exactWay(problem, fronts, look.tries);
  releaseTrains(fronts);
  return way;
}

function frontsFor(problem: TrainProblem, lattice: TrainLattice, look: TrainLook): TrainFronts {
  const { train, end, firstGear, lastGear, limits } = problem;
  const maker = trainFreeMaker(lattice, train, 0);
  const field = newField(lattice.layers, borrowHeap(fieldWords(lattice.layers, maker, 2)), maker, 2);
  const inLine = (node: { heading: number; bit: number }) => ({ ...node, heading: layerOf(lattice, node.heading, 0) });
  return beginTrainFronts({
    lattice,
    field,
    start: inLine(nodeAt(lattice.places, { x: 0, y: 0, heading: 0 })),
    ends: nodesAbout(lattice.places, trailerPose(train.trailer, end, 0)).map(inLine),
    firstGear,
    lastGear,
    limits,
    mostLog: field.logEnd + look.mostLog,
  });
}

function exactWay(problem: TrainProblem, fronts: TrainFronts, triesAt: readonly number[]): readonly Arc[] | null {
  const { train, start, end, limits, radius, mostChanges: most } = problem;
  const walls = trainWalls(train);
  for (const tries of triesAt) {
    if (fronts.met === null || fronts.met > most) return null;
    for (const way of trainWays(fronts, tries)) {
      const to = { train, start, end, limits, largestCurvature: 1 / radius, mostChanges: fronts.met };
      const arcs = refineTrain(way, walls, to);
      if (arcs !== null) return arcs;
    }
    goOnTrains(fronts, most);
  }
  return null;
}
