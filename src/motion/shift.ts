// Shifts of whole layers of bits, 32 poses a word and more at a time, keeping what is free and logging what is new: what
// the kernel is given to do, and what it has changed.

import { register } from "./kernel.ts";
import { layerBase, layerEdge } from "./lattice.ts";
import { bitsAt, makeReady } from "./side.ts";
import type { Field, Side } from "./side.ts";

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
  shiftFrom(side, bitsAt(side, heading), stretch, target);
}

/** The same from a layer of bits wherever it lies. */
export function shiftFrom(side: Side, source: number, stretch: Stretch, target: number): void {
  const { field, lattice } = side;
  const whole = stretch.shift >> 5;
  const first = Math.max(0, stretch.from + whole);
  const last = Math.min(lattice.words - 1, stretch.to + whole + 1);
  changed.high = -1;
  if (first > last) return;
  makeReady(side, target);
  makeRoom(field, last - first + 1);
  const { words, kernel } = field.heap;
  const to = bitsAt(side, target);
  words[register.source] = source - whole + first;
  words[register.target] = to + first;
  words[register.free] = field.free + layerBase(lattice, target) + first;
  words[register.last] = to + last;
  words[register.part] = stretch.shift & 31;
  words[register.log] = field.logEnd;
  kernel.shiftOver();
  noteChanges(field, to);
}

/** Runs words from..to of one layer along a shift, over and over, in place. */
export function runAlong(side: Side, heading: number, stretch: Stretch): void {
  const { field, lattice } = side;
  const up = stretch.shift > 0;
  const whole = stretch.shift >> 5;
  const top = Math.min(lattice.words - 1, stretch.to + whole + 1);
  const bottom = Math.max(0, stretch.from + whole);
  changed.high = -1;
  if (bottom > top) return;
  makeReady(side, heading);
  makeRoom(field, lattice.words);
  const { words, kernel } = field.heap;
  const base = bitsAt(side, heading);
  const first = up ? bottom : top;
  words[register.source] = base - whole + first;
  words[register.target] = base + first;
  words[register.free] = field.free + layerBase(lattice, heading) + first;
  words[register.last] = base + (up ? top : bottom);
  words[register.part] = stretch.shift & 31;
  words[register.log] = field.logEnd;
  words[register.limit] = base + (up ? lattice.words - 1 : 0);
  words[register.reach] = up ? whole + 1 : whole;
  if (up) kernel.runUp();
  else kernel.runDown();
  noteChanges(field, base);
}

/** Room in the log for so many entries and one more, for the kernel writes before it knows. */
function makeRoom(field: Field, entries: number): void {
  field.heap.growTo(field.logEnd + 2 * entries + 2);
}

/** Reads from the log, whose entries of one shift go up or down, between which words something has changed. */
function noteChanges(field: Field, base: number): void {
  const { words } = field.heap;
  const from = field.logEnd;
  const end = words[register.log]!;
  if (end === from) return;
  const first = words[from]! - base;
  const last = words[end - 2]! - base;
  changed.low = Math.min(first, last);
  changed.high = Math.max(first, last);
  field.logEnd = end;
}

/** Layers at the end of a side's that no pose is in: two to work in, and one that keeps them from what lies beyond. */
export const scratchLayers = 3;

/** Where one of the two layers to work in lies. */
export function scratchAt(side: Side, index: 0 | 1): number {
  return bitsAt(side, side.lattice.headings - scratchLayers + index);
}

/** Bits that lie at `source`, and a layer of free poses that they are shifted to, kept in a scratch layer alone. */
export function shiftToScratch(
  side: Side,
  { source, shift, from, to }: Stretch & { readonly source: number },
  { layer, scratch }: { readonly layer: number; readonly scratch: number },
): void {
  const { field, lattice } = side;
  const whole = shift >> 5;
  const first = Math.max(0, from + whole);
  const last = Math.min(lattice.words - 1, to + whole + 1);
  changed.high = -1;
  if (first > last) return;
  makeReady(side, layer);
  makeRoom(field, last - first + 1);
  const { words, kernel } = field.heap;
  words.fill(0, scratch + first - layerEdge, scratch + last + 2 * layerEdge);
  words[register.source] = source - whole + first;
  words[register.target] = scratch + first;
  words[register.free] = field.free + layerBase(lattice, layer) + first;
  words[register.last] = scratch + last;
  words[register.part] = shift & 31;
  words[register.log] = field.logEnd;
  kernel.shiftOver();
  const end = words[register.log]!;
  if (end === field.logEnd) return;
  changed.low = words[field.logEnd]! - scratch;
  changed.high = words[end - 2]! - scratch;
}
