// The lattice of a train's poses: place and heading of the trailer's axle, and the hitch angle in steps as large as those
// of heading. The trailer is what is laid out, for it is the slow one: at a steady hitch angle its axle goes round a
// circle, and on the way from one angle to another it goes along one curve for every lock of the towing vehicle.

import type { Lattice } from "./lattice.ts";
import { poseAfter } from "./pose.ts";
import type { Pose } from "./pose.ts";
import { hitchAngleAfter, trailerPose } from "./trailer-pose.ts";
import type { AngleLimits } from "./trailer-sweep.ts";
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

/** One way to move: from each layer to at most one other, by a shift in bits, and from there back. */
export interface TrainMotion {
  /** Layer that each layer leads to, and that each is led to from; -1 where there is none. */
  readonly to: Int32Array;
  readonly from: Int32Array;
  /** Bits by which the way from a layer shifts. */
  readonly shift: Int32Array;
  /** Poses on the way from a layer that must be free too: layer and bits from the pose before, pair after pair. */
  readonly middles: readonly (Int32Array | null)[];
  /** Curvature of the towing vehicle's way from a layer (1/m, the same both ways), and its length, m. */
  readonly curvature: Float64Array;
  readonly length: Float64Array;
  /** 1 forwards, -1 in reverse. */
  readonly gear: 1 | -1;
  /** Whether it keeps the hitch angle, or towards which side it takes it. */
  readonly bends: -1 | 0 | 1;
}

/** Shares of full lock at which the hitch angle is changed. */
const locks = [1, -1, 0, 0.5, -0.5] as const;
/** Longest way on which the hitch angle changes by one step, m. */
const longestChange = 4;
/** Longest way of the towing vehicle between two poses that must be free, m. */
const longestBlind = 0.65;
/** Straight steps, m. */
const straightLengths = [0.4, 0.8] as const;

/** The layer of a heading and a hitch angle, both in steps. */
export function layerOf({ places, levels }: TrainLattice, heading: number, level: number): number {
  const { headings } = places;
  return (level + levels) * headings + ((heading % headings) + headings) % headings;
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

/** Motions of one gear, driven or undone, as far as an angle allows. */
export interface MotionsWanted {
  readonly gear: 1 | -1;
  /** True-to-time from the start, or backwards in time from the end. */
  readonly inTime: 1 | -1;
  readonly limits: AngleLimits;
}

/** The motions by which a side spreads when the train drives in a gear next to it. */
export function trainMotions(lattice: TrainLattice, { gear, inTime, limits }: MotionsWanted): readonly TrainMotion[] {
  const most = Math.floor((gear === 1 ? limits.forward : limits.reverse) / turnOf(lattice) + 1e-9);
  const ahead = [...straights(lattice), holds(lattice, most), ...locks.map((lock) => bend(lattice, lock, most))].flat();
  return gear * inTime === 1 ? ahead : ahead.map((motion) => undone(motion));
}

function undone(motion: TrainMotion): TrainMotion {
  const { to, from } = motion;
  const shift = new Int32Array(to.length);
  const middles: (Int32Array | null)[] = Array.from(to, () => null);
  const [curvature, length] = [new Float64Array(to.length), new Float64Array(to.length)];
  for (const [layer, target] of to.entries()) {
    if (target < 0) continue;
    shift[target] = -motion.shift[layer]!;
    middles[target] = turnedRound(motion.middles[layer] ?? null, motion.shift[layer]!);
    curvature[target] = motion.curvature[layer]!;
    length[target] = motion.length[layer]!;
  }
  const bends = (0 - motion.bends) as -1 | 0 | 1;
  return { to: from, from: to, shift, middles, curvature, length, gear: motion.gear === 1 ? -1 : 1, bends };
}

/** Poses on a way of so many bits in all, as they are passed the other way round. */
function turnedRound(middles: Int32Array | null, shift: number): Int32Array | null {
  if (middles === null) return null;
  const back = new Int32Array(middles.length);
  let gone = 0;
  for (let i = 0; i < middles.length; i += 2) gone += middles[i + 1]!;
  let step = gone - shift;
  for (let i = 0; i < middles.length; i += 2) {
    const j = middles.length - 2 - i;
    back[i] = middles[j]!;
    back[i + 1] = step;
    step = -middles[j + 1]!;
  }
  return back;
}

function emptyMotion(lattice: TrainLattice, bends: -1 | 0 | 1): TrainMotion {
  const count = lattice.layers.headings;
  return {
    to: new Int32Array(count).fill(-1),
    from: new Int32Array(count).fill(-1),
    shift: new Int32Array(count),
    middles: Array.from({ length: count }, () => null),
    curvature: new Float64Array(count),
    length: new Float64Array(count),
    gear: 1,
    bends,
  };
}

interface Edge {
  readonly from: number;
  readonly to: number;
  readonly shift: number;
  readonly curvature: number;
  readonly length: number;
  /** Poses on the way: layer, and bits from its beginning. */
  readonly middles?: readonly (readonly [layer: number, bits: number])[];
}

function addEdge(motion: TrainMotion, { from, to, shift, curvature, length, middles = [] }: Edge): void {
  motion.to[from] = to;
  motion.from[to] = from;
  motion.shift[from] = shift;
  motion.curvature[from] = curvature;
  motion.length[from] = length;
  if (middles.length === 0) return;
  const steps = new Int32Array(2 * middles.length);
  for (const [i, [layer, bits]] of middles.entries()) steps.set([layer, bits - (middles[i - 1]?.[1] ?? 0)], 2 * i);
  (motion.middles as (Int32Array | null)[])[from] = steps;
}

/** Shares of a way of so many metres at which it is looked at, besides its ends. */
function sharesOf(length: number): readonly number[] {
  const count = Math.ceil(length / longestBlind);
  return Array.from({ length: count - 1 }, (_, i) => (i + 1) / count);
}

/** Straight on, with the train in line: for each heading the step of whole cells that points best. */
function straights(lattice: TrainLattice): readonly TrainMotion[] {
  const { headings, cell, stride } = lattice.places;
  return straightLengths.map((longest) => {
    const motion = emptyMotion(lattice, 0);
    for (let k = 0; k < headings; k++) {
      const [x, y] = bestStep((2 * Math.PI * k) / headings, Math.max(longest, 2.3 * cell) / cell);
      const layer = layerOf(lattice, k, 0);
      addEdge(motion, { from: layer, to: layer, shift: y * stride + x, curvature: 0, length: cell * Math.hypot(x, y) });
    }
    return motion;
  });
}

function bestStep(angle: number, longest: number): readonly [number, number] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const most = Math.floor(longest);
  let best: readonly [number, number] = [1, 0];
  let least = Infinity;
  for (let y = -most; y <= most; y++) {
    for (let x = -most; x <= most; x++) {
      const long = Math.hypot(x, y);
      if (long === 0 || long > longest) continue;
      const error = snapped(Math.abs(Math.atan2(c * y - s * x, c * x + s * y)) + 1e-6 * long);
      if (error >= least) continue;
      [best, least] = [[x, y], error];
    }
  }
  return best;
}

/**
 * Round and round at a steady hitch angle phi, where the lock allows it: curvature k = sin phi / (T + S cos phi) of the
 * towing vehicle; the trailer's axle goes cos phi + S k sin phi for every metre of it. COMPUTED (phi' = 0).
 */
function holds(lattice: TrainLattice, most: number): TrainMotion {
  const { trailer, radius } = lattice;
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const motion = emptyMotion(lattice, 0);
  const turn = turnOf(lattice);
  const { headings } = lattice.places;
  for (let level = 1; level <= most; level++) {
    const phi = level * turn;
    const k = Math.sin(phi) / (T + S * Math.cos(phi));
    if (k > 1 / radius) break;
    const round = (Math.cos(phi) + S * k * Math.sin(phi)) / k;
    if (round <= 0) break;
    for (let h = 0; h < headings; h++) {
      addEdge(motion, holdEdge(lattice, { level, curvature: k, round, heading: h, side: 1 }));
      addEdge(motion, holdEdge(lattice, { level, curvature: k, round, heading: h, side: -1 }));
    }
  }
  return motion;
}

interface Held {
  readonly level: number;
  readonly curvature: number;
  /** Radius of the trailer's axle, m. */
  readonly round: number;
  readonly heading: number;
  readonly side: 1 | -1;
}

/** A step of heading at a steady hitch angle, to the left, or the mirror image of that. */
function holdEdge(lattice: TrainLattice, { level, curvature, round, heading, side }: Held): Edge {
  const turn = turnOf(lattice);
  const at = (h: number): Cell => {
    const angle = h * turn;
    return cellAt(lattice, round * Math.sin(angle), -side * round * Math.cos(angle));
  };
  const layer = (h: number): number => layerOf(lattice, side * h, side * level);
  const here = at(heading);
  const length = turn / curvature;
  const middles = sharesOf(length).map(
    (share) => [layer(heading + Math.round(share)), bitsBetween(lattice, here, at(heading + share))] as const,
  );
  const shift = bitsBetween(lattice, here, at(heading + 1));
  return { from: layer(heading), to: layer(heading + 1), shift, curvature: side * curvature, length, middles };
}

type Cell = readonly [number, number];

function cellAt({ places }: TrainLattice, x: number, y: number): Cell {
  return [roundEven(snapped(x / places.cell)), roundEven(snapped(y / places.cell))];
}

/** Halves go away from zero, so that left and right are alike. */
function roundEven(value: number): number {
  return Math.sign(value) * Math.round(Math.abs(value));
}

/** A number without its rounding noise, so that mirrored headings round alike. */
function snapped(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}

function bitsBetween({ places }: TrainLattice, a: Cell, b: Cell): number {
  return (b[1] - a[1]) * places.stride + b[0] - a[0];
}

/** A place of the curve that a trailer's axle follows while its hitch angle changes, steered at one lock. */
interface OnCurve {
  readonly towing: Pose;
  readonly angle: number;
  /** Way of the towing vehicle from the place before, m. */
  readonly length: number;
}

/** The hitch angle changed at one lock, forwards: up to the steady angle from below, and down to it from above. */
function bend(lattice: TrainLattice, lock: number, most: number): readonly TrainMotion[] {
  const curvature = lock / lattice.radius;
  return ([1, -1] as const).flatMap((way) => {
    const curve = curveOf(lattice, { curvature, way, most });
    return curve.length < 2 ? [] : [motionAlong(lattice, curve, curvature, way)];
  });
}

function curveOf(
  lattice: TrainLattice,
  { curvature, way, most }: { readonly curvature: number; readonly way: 1 | -1; readonly most: number },
): readonly OnCurve[] {
  const { trailer } = lattice;
  const turn = turnOf(lattice);
  let towing: Pose = { x: 0, y: 0, heading: 0 };
  const curve: OnCurve[] = [];
  for (let level = -way * most; Math.abs(level) <= most; level += way) {
    const angle = level * turn;
    const length = curve.length === 0 ? 0 : changeLength(trailer, { curvature, from: angle - way * turn, to: angle });
    if (length === null) break;
    towing = poseAfter(towing, { curvature, length });
    curve.push({ towing, angle, length });
  }
  return curve;
}

/** Shares of a change after which it counts as made: one that it would come to never counts a little early. */
const nearly = [1, 0.7] as const;
const looks = 40;

/** Way on which the hitch angle goes from one to another, m; null where it does not, or not soon. */
function changeLength(
  trailer: TowedUnit,
  { curvature, from, to }: { readonly curvature: number; readonly from: number; readonly to: number },
): number | null {
  const step = longestChange / looks;
  const gone = (length: number): number => (hitchAngleAfter(trailer, from, { curvature, length }) - from) / (to - from);
  for (const share of nearly) {
    for (let length = step; length <= longestChange + 1e-9 && gone(length) > 0; length += step) {
      const [before, after] = [gone(length - step), gone(length)];
      if (after >= share) return length - ((after - share) / (after - before)) * step;
    }
  }
  return null;
}

/**
 * A motion along a curve, at every heading. Places and headings are rounded for the curve as a whole, so that a
 * change over many steps of the hitch angle is off by no more than one cell and half a step of heading.
 */
function motionAlong(lattice: TrainLattice, curve: readonly OnCurve[], curvature: number, bends: 1 | -1): TrainMotion {
  const motion = emptyMotion(lattice, bends);
  for (let base = 0; base < lattice.places.headings; base++) {
    for (const [i, { angle, towing, length }] of curve.entries()) {
      const before = curve[i - 1];
      if (!before) continue;
      const here = nodeOn(lattice, base, before);
      const next = nodeOn(lattice, base, { angle, towing });
      const middles = sharesOf(length).map((share) => {
        const part = { curvature, length: share * length };
        const way = { towing: poseAfter(before.towing, part), angle: hitchAngleAfter(lattice.trailer, before.angle, part) };
        const node = nodeOn(lattice, base, way);
        return [node.layer, bitsBetween(lattice, here.cell, node.cell)] as const;
      });
      const shift = bitsBetween(lattice, here.cell, next.cell);
      addEdge(motion, { from: here.layer, to: next.layer, shift, curvature, length, middles });
    }
  }
  return motion;
}

/** Layer and place of a train on a curve that sets out at a heading (in steps). */
function nodeOn(
  lattice: TrainLattice,
  base: number,
  { towing, angle }: Pick<OnCurve, "towing" | "angle">,
): { readonly layer: number; readonly cell: Cell } {
  const turn = turnOf(lattice);
  const { x, y, heading } = trailerPose(lattice.trailer, towing, angle);
  const [c, s] = [Math.cos(base * turn), Math.sin(base * turn)];
  const step = (value: number): number => roundEven(snapped(value / turn));
  return {
    layer: layerOf(lattice, base + step(heading), Math.max(-lattice.levels, Math.min(lattice.levels, step(angle)))),
    cell: cellAt(lattice, c * x - s * y, s * x + c * y),
  };
}
