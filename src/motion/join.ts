// Joining a way exactly to its end: the smallest change of all its arcs that closes what is open (Newton's method,
// least-norm steps).

import type { Arc } from "./pose.ts";

/** A way and what it misses its end by: any few lengths (m; angles times a lever), each to come to nothing. */
export interface OpenWay {
  readonly arcs: readonly Arc[];
  readonly misses: (arcs: readonly Arc[]) => readonly number[];
  readonly closes: (misses: readonly number[]) => boolean;
  readonly largestCurvature: number;
}

const mostSteps = 12;
/** A change of curvature by 1/m counts as so many metres of length. */
const bendLever = 20;
/** Step of the difference quotients, m. */
const nudge = 1e-6;
/** Shortest leg that is left of an arc, m. */
const leastLength = 0.02;

/** The arcs changed so that they end at the end; null where they cannot be. Clearances are not looked at. */
export function joinAll(way: OpenWay): readonly Arc[] | null {
  let arcs = way.arcs;
  let open = way.misses(arcs);
  for (let count = 0; count < mostSteps; count++) {
    if (way.closes(open)) return arcs;
    const next = stepTowards(way, arcs, open);
    if (next === null) return null;
    const left = way.misses(next);
    if (size(left) > 0.9 * size(open)) return null;
    [arcs, open] = [next, left];
  }
  return way.closes(open) ? arcs : null;
}

function size(open: readonly number[]): number {
  return Math.hypot(...open);
}

/** One least-norm step, taken whole or in part so that arcs keep their gear and their lock. */
function stepTowards(way: OpenWay, arcs: readonly Arc[], open: readonly number[]): readonly Arc[] | null {
  const columns = arcs.flatMap((arc, i) => [
    slope(way, arcs, { i, arc, open, by: "length" }),
    slope(way, arcs, { i, arc, open, by: "curvature" }),
  ]);
  for (const share of [1, 0.5, 0.25]) {
    const step = leastNorm(columns, open);
    if (step === null) return null;
    const next = arcs.map((arc, i) => bounded(way, arc, share * step[2 * i]!, (share * step[2 * i + 1]!) / bendLever));
    if (size(way.misses(next)) < size(open)) return next;
  }
  return null;
}

interface Nudged {
  readonly i: number;
  readonly arc: Arc;
  readonly open: readonly number[];
  readonly by: "length" | "curvature";
}

function slope(way: OpenWay, arcs: readonly Arc[], { i, arc, open, by }: Nudged): readonly number[] {
  const weight = by === "length" ? 1 : bendLever;
  const nudged = arcs.with(i, { ...arc, [by]: arc[by] + nudge / weight });
  const moved = way.misses(nudged);
  return moved.map((value, row) => (value - open[row]!) / nudge);
}

function bounded({ largestCurvature }: OpenWay, arc: Arc, longer: number, bend: number): Arc {
  const gear = Math.sign(arc.length);
  const length =
    gear * Math.max(leastLength, Math.abs(arc.length + longer) * (Math.sign(arc.length + longer) === gear ? 1 : 0));
  return { length, curvature: Math.max(-largestCurvature, Math.min(largestCurvature, arc.curvature + bend)) };
}

/** The shortest x with J x = -open, J given by its columns: J^T (J J^T)^-1 (-open), with a trace of damping. */
function leastNorm(columns: readonly (readonly number[])[], open: readonly number[]): readonly number[] | null {
  const all = [...open.keys()];
  const rows = all.map((a) => [
    ...all.map((b) => columns.reduce((sum, column) => sum + column[a]! * column[b]!, a === b ? 1e-9 : 0)),
    -open[a]!,
  ]);
  for (let pivot = 0; pivot < open.length; pivot++) {
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
  const multipliers = rows.map((row, i) => row[open.length]! / row[i]!);
  return columns.map((column) => column.reduce((sum, value, i) => sum + value * multipliers[i]!, 0));
}
