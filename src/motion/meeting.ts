// Where two fronts meet: a few poses that lie well inside the common part, and the ways over them.

import { bitsAt } from "./side.ts";
import { traceBack } from "./trace.ts";
import type { Node, Run } from "./trace.ts";
import type { Fronts } from "./two-sided.ts";

/** A way over the lattice: runs from the start to the meeting and on to the end. */
export interface LatticeWay {
  readonly towards: readonly Run[];
  /** Runs of the other side, from its seed to the meeting; to be driven the other way round. */
  readonly onwards: readonly Run[];
  readonly meeting: Node;
}

interface Patch extends Node {
  /** Length of the row of common poses in whose middle the node lies. */
  readonly length: number;
}

/** Up to `most` ways over meetings whose headings are spread, those with the fewest runs first. */
export function waysOver(fronts: Fronts, most: number): readonly LatticeWay[] {
  const nodes = spreadOut(patches(fronts), fronts.problem.lattice.headings, 2 * most);
  const towards = traceBack(fronts.start.side, nodes);
  const onwards = traceBack(fronts.end.side, nodes);
  const ways = nodes.map((meeting, i) => ({ meeting, towards: towards[i]!, onwards: onwards[i]! }));
  return ways.sort((a, b) => runsOf(a) - runsOf(b)).slice(0, most);
}

function runsOf(way: LatticeWay): number {
  return way.towards.length + way.onwards.length;
}

/** The longest row of common poses of every heading. */
function patches(fronts: Fronts): Patch[] {
  const { lattice } = fronts.problem;
  const a = fronts.start.side;
  const b = fronts.end.side;
  const found: Patch[] = [];
  const { words } = fronts.problem.field.heap;
  for (let heading = 0; heading < lattice.headings; heading++) {
    const [baseA, baseB] = [bitsAt(a, heading), bitsAt(b, heading)];
    const from = Math.max(a.low[heading]!, b.low[heading]!);
    const to = Math.min(a.high[heading]!, b.high[heading]!);
    let best = { heading, bit: 0, length: 0 };
    let run = 0;
    for (let word = from; word <= to; word++) {
      const common = words[baseA + word]! & words[baseB + word]!;
      if (common === 0) {
        run = 0;
        continue;
      }
      for (let i = 0; i < 32; i++) {
        run = (common & (1 << i)) === 0 ? 0 : run + 1;
        if (run > best.length) best = { heading, bit: 32 * word + i, length: run };
      }
    }
    if (best.length > 0) found.push({ ...best, bit: best.bit - (best.length >> 1) });
  }
  return found;
}

/** Least gaps between the headings of the poses taken, in parts of a full turn: wide ones first. */
const gaps = [24, 72, 288] as const;

/** The longest patches first; those whose headings are well apart before those that crowd. */
function spreadOut(found: Patch[], headings: number, most: number): readonly Node[] {
  const taken: Node[] = [];
  found.sort((a, b) => b.length - a.length || a.heading - b.heading);
  for (const parts of gaps) {
    for (const patch of found) {
      if (taken.length === most) return taken;
      if (taken.every((other) => apart(other.heading, patch.heading, headings) >= headings / parts)) taken.push(patch);
    }
  }
  return taken;
}

function apart(a: number, b: number, headings: number): number {
  const gap = Math.abs(a - b);
  return Math.min(gap, headings - gap);
}
