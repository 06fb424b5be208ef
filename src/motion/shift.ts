// The kernel of the flood: shifts of layers of bits, 32 poses a word, keeping what is free and logging what is new.
// A log has always room for one entry more.

import { layerBase } from "./lattice.ts";
import { makeRoom } from "./side.ts";
import type { Side } from "./side.ts";

/** Words from..to of a layer and the shift, in bits, that they are to take. */
export interface Stretch {
  readonly shift: number;
  readonly from: number;
  readonly to: number;
}

/** Range of words changed by the latest shift; `high` below 0 where none was. */
export const changed = { low: 0, high: -1 };

/** Shifts words from..to of one layer into another and keeps what is free there. */
export function shiftOver(side: Side, heading: number, stretch: Stretch, target: number): void {
  const { bits, free, lattice, log } = side;
  const whole = stretch.shift >> 5;
  const part = stretch.shift & 31;
  const back = 31 - part;
  const first = Math.max(0, stretch.from + whole);
  const last = Math.min(lattice.words - 1, stretch.to + whole + 1);
  const targetBase = layerBase(lattice, target);
  const sourceBase = layerBase(lattice, heading) - whole;
  makeRoom(log, last - first + 2);
  const { words, added } = log;
  let length = log.length;
  let low = lattice.words;
  let high = -1;
  let below = bits[sourceBase + first - 1]! >>> 1;
  for (let word = first; word <= last; word++) {
    const here = bits[sourceBase + word]!;
    const at = targetBase + word;
    const come = (here << part) | (below >>> back);
    below = here >>> 1;
    if (come === 0) continue;
    const fresh = come & free[at]! & ~bits[at]!;
    if (fresh === 0) continue;
    bits[at]! |= fresh;
    words[length] = at;
    added[length] = fresh;
    length += 1;
    if (high < 0) low = word;
    high = word;
  }
  changed.low = low;
  changed.high = high;
  log.length = length;
}

/** Runs words from..to of one layer along a shift, over and over, in place. */
export function runAlong(side: Side, heading: number, stretch: Stretch): void {
  const base = layerBase(side.lattice, heading);
  const whole = stretch.shift >> 5;
  const top = Math.min(side.lattice.words - 1, stretch.to + whole + 1);
  const bottom = Math.max(0, stretch.from + whole);
  changed.low = side.lattice.words;
  changed.high = -1;
  if (stretch.shift >= 32) runFarUp(side, base, stretch.shift, [bottom, top]);
  else if (stretch.shift <= -32) runFarDown(side, base, stretch.shift, [bottom, top]);
  else if (stretch.shift > 0) {
    for (let word = bottom, end = top; word <= end; word++) {
      if (takeIn(side, base, word, stretch.shift)) end = Math.min(side.lattice.words - 1, Math.max(end, word + 1));
    }
  } else {
    for (let word = top, end = bottom; word >= end; word--) {
      if (takeIn(side, base, word, stretch.shift)) end = Math.max(0, Math.min(end, word - 1));
    }
  }
}

/** A run by more than a word, upwards: what a word takes in it hands on to words still to come. */
function runFarUp(side: Side, base: number, shift: number, range: readonly [number, number]): void {
  const { bits, free, lattice, log } = side;
  const whole = shift >> 5;
  const part = shift & 31;
  const back = 31 - part;
  let end = range[1];
  for (let word = range[0]; word <= end; word++) {
    const source = base + word - whole;
    const come = (bits[source]! << part) | ((bits[source - 1]! >>> 1) >>> back);
    if (come === 0) continue;
    const fresh = come & free[base + word]! & ~bits[base + word]!;
    if (fresh === 0) continue;
    take(side, base + word, fresh);
    if (changed.high < 0) changed.low = word;
    changed.high = word;
    end = Math.min(lattice.words - 1, Math.max(end, word + whole + 1));
    if (log.length + 1 >= log.words.length) makeRoom(log, 2);
  }
}

/** The same downwards. */
function runFarDown(side: Side, base: number, shift: number, range: readonly [number, number]): void {
  const { bits, free, log } = side;
  const whole = shift >> 5;
  const part = shift & 31;
  const back = 31 - part;
  let end = range[0];
  for (let word = range[1]; word >= end; word--) {
    const source = base + word - whole;
    const come = (bits[source]! << part) | ((bits[source - 1]! >>> 1) >>> back);
    if (come === 0) continue;
    const fresh = come & free[base + word]! & ~bits[base + word]!;
    if (fresh === 0) continue;
    take(side, base + word, fresh);
    if (changed.high < 0) changed.high = word;
    changed.low = word;
    end = Math.max(0, Math.min(end, word + whole));
    if (log.length + 1 >= log.words.length) makeRoom(log, 2);
  }
}

/** Sets new bits of a word and logs them; there must be room in the log. */
function take(side: Side, at: number, fresh: number): void {
  const { log } = side;
  side.bits[at]! |= fresh;
  log.words[log.length] = at;
  log.added[log.length] = fresh;
  log.length += 1;
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
  log.words[log.length] = at;
  log.added[log.length] = all;
  log.length += 1;
  if (log.length + 1 >= log.words.length) makeRoom(log, 2);
  changed.low = Math.min(changed.low, word);
  changed.high = Math.max(changed.high, word);
  return true;
}
