// The lattice of a train's poses: place and heading of the trailer's axle, and the hitch angle in steps as large as those
// of heading. The trailer is what is laid out, for it is the slow one: at a steady hitch angle its axle goes round a
// circle, and on the way from one angle to another it goes along one curve for every lock of the towing vehicle.

import { middleOf } from "./checked.ts";
import { latticeOver } from "./lattice.ts";
import type { Lattice, LatticeStep } from "./lattice.ts";
import { scratchLayers } from "./shift.ts";
import type { TrainProblem } from "./train-problem.ts";
import type { TowedUnit } from "./trailer.ts";

/** A lattice whose layers are one for every heading of the trailer and every hitch angle. */
export interface TrainLattice {
  /** Places alone: as many headings as a full turn has. */
  readonly places: Lattice;
  /** The same with a layer for each heading at each hitch angle, the rightmost angle first. */
  readonly layers: Lattice;
  readonly trailer: TowedUnit;
  /** Smallest radius of the towing vehicle's rear axle, m. */
  readonly radius: number;
  /** Hitch angles go from -levels to levels steps. */
  readonly levels: number;
}

/** Longest step of a motion, m. */
const longestMove = 4.5;

/** The lattice of a problem, whose frame has the trailer's axle at its origin. */
export function trainLattice(problem: TrainProblem, step: LatticeStep): TrainLattice {
  const { train, box, limits, radius } = problem;
  const { trailer } = train;
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const thin = [...train.towing, ...train.towed].map((one) => Math.hypot(...middleOf(one)));
  const places = latticeOver(box, step, Math.max(longestMove, S + T + 1, 2 * Math.max(...thin)));
  const turn = (2 * Math.PI) / step.headings;
  const levels = Math.floor(Math.max(limits.forward, limits.reverse) / turn + 1e-9);
  return {
    places,
    layers: { ...places, headings: (2 * levels + 1) * step.headings + scratchLayers },
    trailer,
    radius,
    levels,
  };
}

/** The layer of a heading and a hitch angle, both in steps. */
export function layerOf({ places, levels }: TrainLattice, heading: number, level: number): number {
  const { headings } = places;
  return (level + levels) * headings + (((heading % headings) + headings) % headings);
}

/** Heading and hitch angle of a layer, in steps. */
export function angleOf({ places, levels }: TrainLattice, layer: number): { heading: number; level: number } {
  const level = Math.floor(layer / places.headings);
  return { heading: layer - level * places.headings, level: level - levels };
}

/** Step of heading and of hitch angle, rad. */
export function turnOf({ places }: TrainLattice): number {
  return (2 * Math.PI) / places.headings;
}

/** Halves go away from zero, so that left and right are alike; without the rounding noise of the value. */
export function roundEven(value: number): number {
  return Math.sign(value) * Math.round(snapped(Math.abs(value)));
}

/** A number without its rounding noise, so that mirrored headings round alike. */
function snapped(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
