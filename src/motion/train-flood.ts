// Spreading over the poses of a train, 32 at a time, as `flood.ts` does over those of one vehicle.

import { changed, runAlong, scratchAt, shiftFrom, shiftToScratch } from "./shift.ts";
import type { Stretch } from "./shift.ts";
import { bitsAt } from "./side.ts";
import type { Side } from "./side.ts";
import type { TrainMotion } from "./train-motion.ts";
import type { Node } from "./trace.ts";

/** Poses of a train reached from some seeds, and by which motion each pass reached more. */
export interface TrainSide {
  readonly side: Side;
  readonly passes: TrainPass[];
}

interface TrainPass {
  readonly motion: TrainMotion;
  readonly from: number;
  readonly end: number;
}

interface Waiting {
  readonly motion: TrainMotion;
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/** Closes a side under some motions; returns the number of words changed. `most` words of log end it early. */
export function closeTrain({ side, passes }: TrainSide, motions: readonly TrainMotion[], most: number): number {
  const { field } = side;
  const before = field.logEnd;
  const waiting = motions.map((motion) => ({ motion, low: side.low.slice(), high: side.high.slice() }));
  for (let busy = true; busy && field.logEnd < most;) {
    busy = false;
    for (const one of waiting) {
      const from = field.logEnd;
      spread(side, one, waiting);
      if (field.logEnd === from) continue;
      passes.push({ motion: one.motion, from, end: field.logEnd });
      busy = true;
    }
  }
  const gained = (field.logEnd - before) / 2;
  side.gained += gained;
  return gained;
}

/** One pass of one motion over all layers; those that wait in the direction in which it leads are taken on the way. */
function spread(side: Side, one: Waiting, waiting: readonly Waiting[]): void {
  const { motion, low, high } = one;
  const count = motion.to.length;
  for (let first = 0; first < count; first++) {
    const start = motion.bends < 0 ? count - 1 - first : first;
    // Along the motion from here, as far as anything waits.
    for (let layer = start; layer >= 0 && low[layer]! <= high[layer]!; layer = motion.to[layer]!) {
      const [from, to] = [low[layer]!, high[layer]!];
      low[layer] = side.lattice.words;
      high[layer] = -1;
      const target = motion.to[layer]!;
      if (target < 0) break;
      const stretch = { shift: motion.shift[layer]!, from, to };
      if (target === layer) runAlong(side, layer, stretch);
      else shiftPast(side, layer, stretch, motion);
      if (changed.high < 0) break;
      mark(side, target, waiting);
      if (target !== layer) continue;
      low[layer] = side.lattice.words;
      high[layer] = -1;
    }
  }
}

/** Shifts over the poses on the way, which must be free but are not reached by that, to the layer at its end. */
function shiftPast(side: Side, layer: number, stretch: Stretch, { to: targets, middles }: TrainMotion): void {
  let [shift, from, to] = [stretch.shift, stretch.from, stretch.to];
  let source = bitsAt(side, layer);
  const first = middles.from[layer]!;
  const end = first + middles.count[layer]!;
  for (let i = first; i < end; i += 2) {
    const scratch = scratchAt(side, (i - first) % 4 === 0 ? 0 : 1);
    const bits = middles.pairs[i + 1]!;
    shiftToScratch(side, { source, shift: bits, from, to }, { layer: middles.pairs[i]!, scratch });
    if (changed.high < 0) return;
    [source, from, to] = [scratch, changed.low, changed.high];
    shift -= bits;
  }
  shiftFrom(side, source, { shift, from, to }, targets[layer]!);
}

function mark(side: Side, layer: number, waiting: readonly Waiting[]): void {
  if (changed.low < side.low[layer]!) side.low[layer] = changed.low;
  if (changed.high > side.high[layer]!) side.high[layer] = changed.high;
  for (const other of waiting) {
    if (changed.low < other.low[layer]!) other.low[layer] = changed.low;
    if (changed.high > other.high[layer]!) other.high[layer] = changed.high;
  }
}

/** Some steps of one motion from node to node, as a side was spread. */
export interface TrainRun {
  readonly motion: TrainMotion;
  /** Layers that each step set out from. */
  readonly layers: readonly number[];
  readonly from: Node;
  readonly to: Node;
}

/** For each node the runs from a seed of the side to it, found by undoing the passes one after the other. */
export function traceTrain({ side, passes }: TrainSide, nodes: readonly Node[]): readonly (readonly TrainRun[])[] {
  const at = [...nodes];
  const runs = nodes.map((): TrainRun[] => []);
  const { words } = side.field.heap;
  for (let pass = passes.length - 1; pass >= 0; pass--) {
    const { from, end, motion } = passes[pass]!;
    for (let i = end - 2; i >= from; i -= 2) words[words[i]!]! &= ~words[i + 1]!;
    for (const [i, node] of at.entries()) {
      if (isSet(side, node)) continue;
      const run = stepBack(side, node, motion);
      at[i] = run.from;
      runs[i]!.push(run);
    }
  }
  for (const { from, end } of passes) {
    for (let i = from; i < end; i += 2) words[words[i]!]! |= words[i + 1]!;
  }
  return runs.map((back) => back.reverse());
}

function isSet(side: Side, { heading, bit }: Node): boolean {
  if (side.laid[heading] === 0) return false;
  return (side.field.heap.words[bitsAt(side, heading) + (bit >> 5)]! & (1 << (bit & 31))) !== 0;
}

function stepBack(side: Side, to: Node, motion: TrainMotion): TrainRun {
  let { heading, bit } = to;
  const layers: number[] = [];
  while (!isSet(side, { heading, bit })) {
    heading = motion.from[heading]!;
    bit -= motion.shift[heading]!;
    layers.push(heading);
  }
  return { motion, layers: layers.reverse(), from: { heading, bit }, to };
}
