// The motions of a train over its lattice: straight on in line, round and round at a steady hitch angle, and from one
// hitch angle to the next along the curve that one lock gives.

import { poseAfter } from "./pose.ts";
import type { Gear, Pose } from "./pose.ts";
import { layerOf, roundEven, turnOf } from "./train-lattice.ts";
import type { TrainLattice } from "./train-lattice.ts";
import { addEdge, emptyMotion, undone } from "./train-motion.ts";
import type { Edge, LatticeNode, TrainMotion } from "./train-motion.ts";
import { hitchAngleAfter, trailerPose } from "./trailer-pose.ts";
import type { AngleLimits } from "./trailer-sweep.ts";
import type { TowedUnit } from "./trailer.ts";

/** Shares of full lock at which the hitch angle is changed. */
const locks = [1, -1, 0] as const;
/** Longest way on which the hitch angle changes by one step, m. */
const longestChange = 4;
/** Longest way of the towing vehicle between two poses that must be free, m. */
const longestBlind = 0.65;
/** Straight steps, m. */
const straightLengths = [0.4, 0.8] as const;

/** The motions by which sides spread: in time as the train drives in a gear next, against it as it drove before. */
export interface TrainMotions {
  readonly inTime: Readonly<Record<Gear, readonly TrainMotion[]>>;
  readonly against: Readonly<Record<Gear, readonly TrainMotion[]>>;
}

/** All motions of a lattice, as far as the hitch angles allow. What is driven one way can be driven back. */
export function trainMotions(lattice: TrainLattice, limits: AngleLimits): TrainMotions {
  const most = (limit: number): number => Math.floor(limit / turnOf(lattice) + 1e-9);
  const ahead = (levels: number): readonly TrainMotion[] =>
    [...straights(lattice), holds(lattice, levels), ...locks.map((lock) => bend(lattice, lock, levels))].flat();
  const forward = ahead(most(limits.forward));
  const reverse = most(limits.reverse) === most(limits.forward) ? forward : ahead(most(limits.reverse));
  const back = reverse.map(undone);
  return {
    inTime: { forward, reverse: back },
    against: { forward: reverse === forward ? back : forward.map(undone), reverse },
  };
}

/** Shares of a way of so many metres at which it is looked at, besides its ends. */
function sharesOf(length: number): readonly number[] {
  const count = Math.ceil(length / longestBlind);
  return Array.from({ length: count - 1 }, (_, i) => (i + 1) / count);
}

/** Straight on, with the train in line: for each heading the step of whole cells that points best. */
function straights(lattice: TrainLattice): readonly TrainMotion[] {
  const { headings, cell } = lattice.places;
  return straightLengths.map((longest) => {
    const motion = emptyMotion(lattice, 0);
    for (let k = 0; k < headings; k++) {
      const [x, y] = bestStep((2 * Math.PI * k) / headings, Math.max(longest, 2.3 * cell) / cell);
      const layer = layerOf(lattice, k, 0);
      const length = cell * Math.hypot(x, y);
      addEdge(lattice, motion, { from: { layer, x: 0, y: 0 }, to: { layer, x, y }, middles: [], curvature: 0, length });
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
      const error = Math.abs(Math.atan2(c * y - s * x, c * x + s * y)) + 1e-6 * long;
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
      addEdge(lattice, motion, holdEdge(lattice, { level, curvature: k, round, heading: h, side: 1 }));
      addEdge(lattice, motion, holdEdge(lattice, { level, curvature: k, round, heading: h, side: -1 }));
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
  const { cell } = lattice.places;
  const node = (h: number): LatticeNode => {
    const angle = h * turn;
    const [x, y] = [round * Math.sin(angle), -side * round * Math.cos(angle)];
    const layer = layerOf(lattice, side * Math.round(h), side * level);
    return { layer, x: roundEven(x / cell), y: roundEven(y / cell) };
  };
  const length = turn / curvature;
  const middles = sharesOf(length).map((share) => node(heading + share));
  return { from: node(heading), to: node(heading + 1), middles, curvature: side * curvature, length };
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
  const ends = curve.map((one) => laidOut(lattice, one));
  const ways = curve.map(({ towing, angle }, i) => {
    const next = curve[i + 1];
    return sharesOf(next?.length ?? 0).map((share) => {
      const part = { curvature, length: share * next!.length };
      const there = { towing: poseAfter(towing, part), angle: hitchAngleAfter(lattice.trailer, angle, part) };
      return laidOut(lattice, there);
    });
  });
  for (let base = 0; base < lattice.places.headings; base++) {
    const [c, s] = [Math.cos(base * turnOf(lattice)), Math.sin(base * turnOf(lattice))];
    const node = ({ x, y, heading, level }: LaidOut): LatticeNode => ({
      layer: layerOf(lattice, base + heading, level),
      x: roundEven(c * x - s * y),
      y: roundEven(s * x + c * y),
    });
    for (let i = 1; i < ends.length; i++) {
      const middles = ways[i - 1]!.map(node);
      addEdge(lattice, motion, {
        from: node(ends[i - 1]!),
        to: node(ends[i]!),
        middles,
        curvature,
        length: curve[i]!.length,
      });
    }
  }
  return motion;
}

/** A place of a curve: cells from its beginning, and steps of heading and of hitch angle. */
interface LaidOut {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly level: number;
}

function laidOut(lattice: TrainLattice, { towing, angle }: Pick<OnCurve, "towing" | "angle">): LaidOut {
  const { x, y, heading } = trailerPose(lattice.trailer, towing, angle);
  const { cell } = lattice.places;
  const level = roundEven(angle / turnOf(lattice));
  return {
    x: x / cell,
    y: y / cell,
    heading: roundEven(heading / turnOf(lattice)),
    level: Math.max(-lattice.levels, Math.min(lattice.levels, level)),
  };
}
