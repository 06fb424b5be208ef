// Spreading over the lattice, 32 poses at a time. A side holds the poses reached so far from its seeds; closing it
// under a gear adds everything that gear can reach from there. What each pass added is logged, so that a way back can
// be found by undoing passes.

import { latticeWords, layerBase } from "./lattice.ts";
import type { Lattice, Motion } from "./lattice.ts";

/** Poses reached from some seeds, with the log of how. */
export interface Side {
  readonly lattice: Lattice;
  readonly free: Int32Array;
  readonly bits: Int32Array;
  /** First and last word of each layer in which something is set (low > high where nothing is). */
  readonly low: Int32Array;
  readonly high: Int32Array;
  readonly log: Log;
}

/** What was added: words and the new bits in them, in order; `passes` tells where each pass ends and its motion. */
export interface Log {
  words: Int32Array;
  added: Int32Array;
  length: number;
  readonly passes: Pass[];
}

export interface Pass {
  readonly motion: Motion;
  readonly end: number;
}

/** An empty side on the free poses of a lattice. */
export function emptySide(lattice: Lattice, free: Int32Array): Side {
  const firstRoom = 4096;
  return {
    lattice,
    free,
    bits: new Int32Array(latticeWords(lattice)),
    low: new Int32Array(lattice.headings).fill(lattice.words),
    high: new Int32Array(lattice.headings).fill(-1),
    log: { words: new Int32Array(firstRoom), added: new Int32Array(firstRoom), length: 0, passes: [] },
  };
}

/** Sets a seed (heading and bit of its layer) where it is free; returns whether it was. */
export function seed(side: Side, heading: number, bit: number): boolean {
  const word = bit >> 5;
  const mask = 1 << (bit & 31);
  const at = layerBase(side.lattice, heading) + word;
  if ((side.free[at]! & mask) === 0) return false;
  side.bits[at]! |= mask;
  side.low[heading] = Math.min(side.low[heading]!, word);
  side.high[heading] = Math.max(side.high[heading]!, word);
  return true;
}

/** Words still to be spread by one motion, by heading. */
interface Waiting {
  readonly motion: Motion;
  readonly low: Int32Array;
  readonly high: Int32Array;
}

/** Closes a side under some motions. Returns the number of words changed: 0 where nothing new was reached. */
export function close(side: Side, motions: readonly Motion[]): number {
  const before = side.log.length;
  const waiting = motions.map((motion) => ({ motion, low: side.low.slice(), high: side.high.slice() }));
  let busy = true;
  while (busy) {
    busy = false;
    for (const one of waiting) {
      const started = side.log.length;
      spreadMotion(side, one, waiting);
      if (side.log.length === started) continue;
      side.log.passes.push({ motion: one.motion, end: side.log.length });
      busy = true;
    }
  }
  return side.log.length - before;
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
    if (changedHigh < 0) continue;
    markChanged(side, target, waiting);
    // What a straight run has added it has run on already.
    if (motion.turn === 0) {
      low[heading] = words;
      high[heading] = -1;
    }
  }
}

function markChanged(side: Side, heading: number, waiting: readonly Waiting[]): void {
  if (changedLow < side.low[heading]!) side.low[heading] = changedLow;
  if (changedHigh > side.high[heading]!) side.high[heading] = changedHigh;
  for (const other of waiting) {
    if (changedLow < other.low[heading]!) other.low[heading] = changedLow;
    if (changedHigh > other.high[heading]!) other.high[heading] = changedHigh;
  }
}

interface Stretch {
  readonly shift: number;
  readonly from: number;
  readonly to: number;
}

/** Range of words changed by the latest shift; high below 0 where none was. */
let changedLow = 0;
let changedHigh = -1;

/** Shifts words from..to of one layer into another and keeps what is free there. */
function shiftOver(side: Side, heading: number, stretch: Stretch, target: number): void {
  const { bits, free, lattice, log } = side;
  const whole = stretch.shift >> 5;
  const part = stretch.shift & 31;
  const back = 31 - part;
  const first = Math.max(0, stretch.from + whole);
  const last = Math.min(lattice.words - 1, stretch.to + whole + 1);
  const targetBase = layerBase(lattice, target);
  const sourceBase = layerBase(lattice, heading) - whole;
  makeRoom(log, last - first + 1);
  const { words, added } = log;
  let length = log.length;
  changedLow = lattice.words;
  changedHigh = -1;
  let below = bits[sourceBase + first - 1]! >>> 1;
  for (let word = first; word <= last; word++) {
    const here = bits[sourceBase + word]!;
    const at = targetBase + word;
    const fresh = ((here << part) | (below >>> back)) & free[at]! & ~bits[at]!;
    below = here >>> 1;
    if (fresh === 0) continue;
    bits[at]! |= fresh;
    words[length] = at;
    added[length] = fresh;
    length += 1;
    if (changedHigh < 0) changedLow = word;
    changedHigh = word;
  }
  log.length = length;
}

/** Runs words from..to of one layer along a shift, over and over, in place. */
function runAlong(side: Side, heading: number, stretch: Stretch): void {
  changedLow = side.lattice.words;
  changedHigh = -1;
  if (stretch.shift > 0) runUp(side, layerBase(side.lattice, heading), stretch);
  else runDown(side, layerBase(side.lattice, heading), stretch);
}

function runUp(side: Side, base: number, stretch: Stretch): void {
  const { words } = side.lattice;
  const whole = stretch.shift >> 5;
  let last = Math.min(words - 1, stretch.to + whole + 1);
  for (let word = stretch.from + whole; word <= last; word++) {
    if (!takeIn(side, base, word, stretch.shift)) continue;
    last = Math.min(words - 1, Math.max(last, word + whole + 1));
  }
}

function runDown(side: Side, base: number, stretch: Stretch): void {
  const whole = stretch.shift >> 5;
  let last = Math.max(0, stretch.from + whole);
  const top = Math.min(side.lattice.words - 1, stretch.to + whole + 1);
  for (let word = top; word >= last; word--) {
    if (!takeIn(side, base, word, stretch.shift)) continue;
    last = Math.max(0, Math.min(last, word + whole));
  }
}

/** Takes into one word what the shift brings there, again while the word feeds itself. */
function takeIn(side: Side, base: number, word: number, shift: number): boolean {
  const { bits, free, log } = side;
  const at = base + word;
  const source = at - (shift >> 5);
  const part = shift & 31;
  const itself = shift < 32 && shift > -32;
  let all = 0;
  for (;;) {
    const come = (bits[source]! << part) | ((bits[source - 1]! >>> 1) >>> (31 - part));
    const fresh = come & free[at]! & ~bits[at]!;
    if (fresh === 0) break;
    bits[at]! |= fresh;
    all |= fresh;
    if (!itself) break;
  }
  if (all === 0) return false;
  makeRoom(log, 1);
  log.words[log.length] = at;
  log.added[log.length] = all;
  log.length += 1;
  changedLow = Math.min(changedLow, word);
  changedHigh = Math.max(changedHigh, word);
  return true;
}

/** Room in the log for some more entries; it doubles, so that old arrays are seldom copied. */
function makeRoom(log: Log, more: number): void {
  if (log.length + more <= log.words.length) return;
  const room = Math.max(2 * log.words.length, log.length + more);
  const words = new Int32Array(room);
  const added = new Int32Array(room);
  words.set(log.words.subarray(0, log.length));
  added.set(log.added.subarray(0, log.length));
  log.words = words;
  log.added = added;
}
