// The way back: from poses of a side to its seeds, by undoing the passes of its log one after the other.

import { bitsAt } from "./side.ts";
import type { Side } from "./side.ts";
import type { Motion } from "./lattice.ts";

/** A pose of the lattice: heading and bit of its layer. */
export interface Node {
  readonly heading: number;
  readonly bit: number;
}

/** Some steps of one motion, from `from` to `to`. */
export interface Run {
  readonly motion: Motion;
  readonly steps: number;
  readonly from: Node;
  readonly to: Node;
}

/**
 * For each node the runs from a seed of the side to it. All nodes are traced in one go; the side is left as it was.
 * A pose that a pass has added was reached by that pass's one motion, from a pose that stood before the pass or that
 * the pass had added itself: so after undoing the pass, stepping back by the motion leads to one that still stands.
 */
export function traceBack(side: Side, nodes: readonly Node[]): readonly (readonly Run[])[] {
  const at = nodes.map((node) => ({ ...node }));
  const runs = nodes.map((): Run[] => []);
  const { passes } = side;
  for (let pass = passes.length - 1; pass >= 0; pass--) {
    undo(side, pass);
    for (const [i, node] of at.entries()) {
      if (stands(side, node)) continue;
      const run = stepBack(side, node, passes[pass]!.motion);
      at[i] = run.from;
      runs[i]!.push(run);
    }
  }
  redo(side);
  return runs.map((back) => joinRuns(back.reverse()));
}

/** Whether a node is set. */
export function stands(side: Side, node: Node): boolean {
  if (side.laid[node.heading] === 0) return false;
  return (side.field.heap.words[bitsAt(side, node.heading) + (node.bit >> 5)]! & (1 << (node.bit & 31))) !== 0;
}

function undo(side: Side, pass: number): void {
  const { words } = side.field.heap;
  const { from, end } = side.passes[pass]!;
  for (let i = end - 2; i >= from; i -= 2) words[words[i]!]! &= ~words[i + 1]!;
}

function redo(side: Side): void {
  const { words } = side.field.heap;
  for (const { from, end } of side.passes) {
    for (let i = from; i < end; i += 2) words[words[i]!]! |= words[i + 1]!;
  }
}

function stepBack(side: Side, to: Node, motion: Motion): Run {
  const { headings } = side.lattice;
  let { heading, bit } = to;
  let steps = 0;
  const from = (): Node => ({ heading, bit });
  while (!stands(side, { heading, bit })) {
    heading = (heading - motion.turn + headings) % headings;
    bit -= motion.shift[heading]!;
    steps += 1;
  }
  return { motion, steps, from: from(), to };
}

/** Joins neighbouring runs of the same motion, and straights of both lengths. */
function joinRuns(runs: readonly Run[]): readonly Run[] {
  const joined: Run[] = [];
  for (const run of runs) {
    const before = joined.at(-1);
    if (before !== undefined && sameWay(before.motion, run.motion)) {
      joined[joined.length - 1] = {
        motion: run.motion,
        steps: before.steps + run.steps,
        from: before.from,
        to: run.to,
      };
    } else joined.push(run);
  }
  return joined;
}

function sameWay(a: Motion, b: Motion): boolean {
  return a === b || (a.steer === 0 && b.steer === 0 && a.gear === b.gear);
}
