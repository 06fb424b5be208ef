// One side of a search: the poses reached so far from its seeds, and the log of how. Sides work in one field: a heap
// that holds the free poses, the bits of every side, and one log after them.

import type { FreeMaker } from "./free-poses.ts";
import type { Heap } from "./heap.ts";
import { registers } from "./kernel.ts";
import { latticeWords, layerBase, layerEdge } from "./lattice.ts";
import type { Lattice, Motion } from "./lattice.ts";

/** What the sides of a search share. Addresses are words from the bottom of the heap. */
export interface Field {
  readonly lattice: Lattice;
  readonly heap: Heap;
  /** Where the free poses lie; a layer is laid when a side first comes to its heading. */
  readonly free: number;
  readonly maker: FreeMaker;
  /** 1 for headings whose free poses are laid. */
  readonly laid: Uint8Array;
  /** Where the next entry of the log goes. */
  logEnd: number;
}

/** Poses reached from some seeds, with the log of how. */
export interface Side {
  readonly field: Field;
  readonly lattice: Lattice;
  /** Where its bits lie. */
  readonly bits: number;
  /** 1 for headings whose layer of bits is in use. */
  readonly laid: Uint8Array;
  /** First and last word of each layer in which something is set (low > high where nothing is). */
  readonly low: Int32Array;
  readonly high: Int32Array;
  readonly passes: Pass[];
  /** Words that it has gained since its seeds, counted again whenever they gain. */
  gained: number;
}

/** One pass of one motion: its entries of the log, each an address and the new bits in it. */
export interface Pass {
  readonly motion: Motion;
  readonly from: number;
  readonly end: number;
}

/** Words of a heap for a lattice and some sides, with some room for the log. */
export function fieldWords(lattice: Lattice, maker: FreeMaker, sides: number): number {
  return (sides + 2) * latticeWords(lattice) + maker.words;
}

/** A field in a heap, which grows where it has not the room. */
export function newField(lattice: Lattice, heap: Heap, maker: FreeMaker, sides: number): Field {
  const free = registers;
  const after = registers + (sides + 1) * latticeWords(lattice);
  heap.growTo(after + maker.words);
  maker.begin(heap, after);
  return { lattice, heap, free, maker, laid: new Uint8Array(lattice.headings), logEnd: after + maker.words };
}

/** An empty side, the first or another, of a field. */
export function emptySide(field: Field, index: number): Side {
  const { lattice } = field;
  return {
    field,
    lattice,
    bits: field.free + (index + 1) * latticeWords(lattice),
    laid: new Uint8Array(lattice.headings),
    low: new Int32Array(lattice.headings).fill(lattice.words),
    high: new Int32Array(lattice.headings).fill(-1),
    passes: [],
    gained: 0,
  };
}

/** Makes a heading's layers ready: the free poses, and the side's own bits, none of them set. */
export function makeReady(side: Side, heading: number): void {
  if (side.laid[heading] === 1) return;
  side.laid[heading] = 1;
  const { field, lattice } = side;
  const base = layerBase(lattice, heading);
  field.heap.words.fill(0, side.bits + base - layerEdge, side.bits + base + lattice.words + layerEdge);
  if (field.laid[heading] === 1) return;
  field.laid[heading] = 1;
  field.maker.lay(field.heap, field.free + base, heading);
}

/** The words of a side in which the word `word` of a heading's layer is `words[bitsAt(...) + word]`. */
export function bitsAt(side: Side, heading: number): number {
  return side.bits + layerBase(side.lattice, heading);
}

/** Sets a seed (heading and bit of its layer) where it is free; returns whether it was. */
export function seed(side: Side, heading: number, bit: number): boolean {
  makeReady(side, heading);
  const { words } = side.field.heap;
  const word = bit >> 5;
  const mask = 1 << (bit & 31);
  const base = layerBase(side.lattice, heading) + word;
  if ((words[side.field.free + base]! & mask) === 0) return false;
  words[side.bits + base]! |= mask;
  side.low[heading] = Math.min(side.low[heading]!, word);
  side.high[heading] = Math.max(side.high[heading]!, word);
  return true;
}
