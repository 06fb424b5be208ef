// One side of a search: the poses reached so far from its seeds, and the log of how.

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

/** Room in the log for some more entries; it doubles, so that old arrays are seldom copied. */
export function makeRoom(log: Log, more: number): void {
  if (log.length + more <= log.words.length) return;
  const room = Math.max(2 * log.words.length, log.length + more);
  const words = new Int32Array(room);
  const added = new Int32Array(room);
  words.set(log.words.subarray(0, log.length));
  added.set(log.added.subarray(0, log.length));
  log.words = words;
  log.added = added;
}
