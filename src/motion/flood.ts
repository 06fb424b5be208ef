// Spreading over the lattice, 32 poses at a time. A side holds the poses reached so far from its seeds; closing it
// under a gear adds everything that gear can reach from there. What each pass added is logged, so that a way back can
// be found by undoing passes.

import type { Motion } from "./lattice.ts";
import { changed, runAlong, shiftOver } from "./shift.ts";
import type { Side } from "./side.ts";

/** Words still to be spread by one motion, by heading. */
interface Waiting {
  readonly motion: Motion;
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/** Closes a side under some motions. Returns the number of words changed: 0 where nothing new was reached. */
export function close(side: Side, motions: readonly Motion[]): number {
  const { field } = side;
  const before = field.logEnd;
  const waiting = motions.map((motion) => ({ motion, low: side.low.slice(), high: side.high.slice() }));
  let busy = true;
  while (busy) {
    busy = false;
    for (const one of waiting) {
      const from = field.logEnd;
      spreadMotion(side, one, waiting);
      if (field.logEnd === from) continue;
      side.passes.push({ motion: one.motion, from, end: field.logEnd });
      busy = true;
    }
  }
  const gained = (field.logEnd - before) / 2;
  side.gained += gained;
  return gained;
}

/** One pass of one motion over all headings, in the order in which it turns, until nothing of it is waiting. */
function spreadMotion(side: Side, one: Waiting, waiting: readonly Waiting[]): void {
  const { headings, words } = side.lattice;
  const { motion, low, high } = one;
  const step = motion.turn === 0 ? 1 : motion.turn;
  let heading = 0;
  for (let idle = 0; idle < headings; heading = (heading + step + headings) % headings) {
    if (low[heading]! > high[heading]!) {
      idle += 1;
      continue;
    }
    idle = 0;
    const target = (heading + motion.turn + headings) % headings;
    const from = low[heading]!;
    const to = high[heading]!;
    low[heading] = words;
    high[heading] = -1;
    const shift = motion.shift[heading]!;
    if (motion.turn === 0) runAlong(side, heading, { shift, from, to });
    else shiftOver(side, heading, { shift, from, to }, target);
    if (changed.high < 0) continue;
    markChanged(side, target, waiting);
    // What a straight run has added it has run on already.
    if (motion.turn === 0) {
      low[heading] = words;
      high[heading] = -1;
    }
  }
}

function markChanged(side: Side, heading: number, waiting: readonly Waiting[]): void {
  if (changed.low < side.low[heading]!) side.low[heading] = changed.low;
  if (changed.high > side.high[heading]!) side.high[heading] = changed.high;
  for (const other of waiting) {
    if (changed.low < other.low[heading]!) other.low[heading] = changed.low;
    if (changed.high > other.high[heading]!) other.high[heading] = changed.high;
  }
}
