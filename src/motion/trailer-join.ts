// Joining a train's way exactly to its end: the smallest change of all its arcs that closes what is open (Newton's
// method, least-norm steps).

import { wrapAngle } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import { trainAfter } from "./trailer-pose.ts";
import type { TrainPose } from "./trailer-pose.ts";
import type { TowedUnit } from "./trailer.ts";

/** A way and where it is to end: pose of the towing vehicle, the trailer in line with it. */
export interface OpenWay {
  readonly trailer: TowedUnit;
  readonly start: TrainPose;
  readonly end: Pose;
  readonly arcs: readonly Arc[];
  readonly largestCurvature: number;
}

/** How near the end must be reached: m, rad, rad of hitch angle (the trailer's tail then lies within a hand's breadth). */
export const trainEndTolerance = { distance: 0.02, heading: 0.01, hitch: 0.02 } as const;

const mostSteps = 12;
/** A radian at the end counts as so many metres; a change of curvature by 1/m as so many metres of length. */
const lever = 3;
const bendLever = 20;
/** Step of the difference quotients, m and 1/m. */
const nudge = 1e-6;
/** Shortest leg that is left of an arc, m. */
const leastLength = 0.02;

/** The arcs changed so that they end at the end; null where they cannot be. Clearances are not looked at. */
export function joinToEnd(way: OpenWay): readonly Arc[] | null {
  let arcs = way.arcs;
  let open = misses(way, arcs);
  for (let count = 0; count < mostSteps; count++) {
    if (closes(open)) return arcs;
    const next = stepTowards(way, arcs, open);
    if (next === null) return null;
    const left = misses(way, next);
    if (size(left) > 0.9 * size(open)) return null;
    [arcs, open] = [next, left];
  }
  return closes(open) ? arcs : null;
}

type Four = readonly [number, number, number, number];

function misses({ trailer, start, end }: OpenWay, arcs: readonly Arc[]): Four {
  const at = arcs.reduce((train, arc) => trainAfter(trailer, train, arc), start);
  return [at.x - end.x, at.y - end.y, lever * wrapAngle(at.heading - end.heading), lever * at.hitchAngle];
}

function size(open: Four): number {
  return Math.hypot(...open);
}

function closes([x, y, heading, hitch]: Four): boolean {
  const { distance, heading: turn, hitch: angle } = trainEndTolerance;
  return Math.hypot(x, y) <= distance && Math.abs(heading) <= lever * turn && Math.abs(hitch) <= lever * angle;
}

/** One least-norm step, taken whole or in part so that arcs keep their gear and their lock. */
function stepTowards(way: OpenWay, arcs: readonly Arc[], open: Four): readonly Arc[] | null {
  const columns = arcs.flatMap((arc, i) => [
    slope(way, arcs, { i, arc, open, by: "length" }),
    slope(way, arcs, { i, arc, open, by: "curvature" }),
  ]);
  for (const share of [1, 0.5, 0.25]) {
    const step = leastNorm(columns, open);
    if (step === null) return null;
    const next = arcs.map((arc, i) => bounded(way, arc, share * step[2 * i]!, (share * step[2 * i + 1]!) / bendLever));
    if (size(misses(way, next)) < size(open)) return next;
  }
  return null;
}

interface Nudged {
  readonly i: number;
  readonly arc: Arc;
  readonly open: Four;
  readonly by: "length" | "curvature";
}

function slope(way: OpenWay, arcs: readonly Arc[], { i, arc, open, by }: Nudged): Four {
  const weight = by === "length" ? 1 : bendLever;
  const nudged = arcs.with(i, { ...arc, [by]: arc[by] + nudge / weight });
  const moved = misses(way, nudged);
  return moved.map((value, row) => (value - open[row]!) / nudge) as unknown as Four;
}

function bounded({ largestCurvature }: OpenWay, arc: Arc, longer: number, bend: number): Arc {
  const gear = Math.sign(arc.length);
  const length =
    gear * Math.max(leastLength, Math.abs(arc.length + longer) * (Math.sign(arc.length + longer) === gear ? 1 : 0));
  return { length, curvature: Math.max(-largestCurvature, Math.min(largestCurvature, arc.curvature + bend)) };
}

/** The shortest x with J x = -open, J given by its columns: J^T (J J^T)^-1 (-open), with a trace of damping. */
function leastNorm(columns: readonly Four[], open: Four): readonly number[] | null {
  const rows = [0, 1, 2, 3].map((a) => [
    ...[0, 1, 2, 3].map((b) => columns.reduce((sum, column) => sum + column[a]! * column[b]!, a === b ? 1e-9 : 0)),
    -open[a]!,
  ]);
  for (let pivot = 0; pivot < 4; pivot++) {
    const best = [...rows.keys()]
      .slice(pivot)
      .reduce((a, b) => (Math.abs(rows[b]![pivot]!) > Math.abs(rows[a]![pivot]!) ? b : a));
    [rows[pivot], rows[best]] = [rows[best]!, rows[pivot]!];
    const lead = rows[pivot]![pivot]!;
    if (lead === 0) return null;
    for (const [i, row] of rows.entries()) {
      if (i === pivot) continue;
      const times = row[pivot]! / lead;
      rows[i] = row.map((value, k) => value - times * rows[pivot]![k]!);
    }
  }
  const multipliers = rows.map((row, i) => row[4]! / row[i]!);
  return columns.map((column) => column.reduce((sum, value, i) => sum + value * multipliers[i]!, 0));
}
