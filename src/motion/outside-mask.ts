// Which nodes of a lattice lie off a ground, by parity, as one layer of bits with room about it, so that it can be shifted
// to where a part of the vehicle is.

import { middleOf } from "./checked.ts";
import type { Checked } from "./checked.ts";
import type { Boundary } from "./ground.ts";
import { layerEdge } from "./lattice.ts";
import type { Lattice } from "./lattice.ts";

/** Bits of the nodes surely off a ground; `margin` rows below and above the lattice, and all between the rows, are off. */
export interface OutsideMask {
  readonly boundary: Boundary;
  readonly bits: Int32Array;
  readonly margin: number;
}

/** Where a mask lies in a heap: the word of the first bit of its lowest row. */
export interface MaskPlace {
  readonly at: number;
  readonly margin: number;
}

/** The mask of a ground for the parts whose middles are tested. */
export function outsideMask(lattice: Lattice, boundary: Boundary, parts: readonly Checked[]): OutsideMask {
  const lever = Math.max(...parts.map((one) => Math.hypot(...middleOf(one))));
  const margin = Math.ceil(lever / lattice.cell) + 1;
  const { rows, stride } = lattice;
  const bits = new Int32Array((((rows + 2 * margin) * stride) >> 5) + 2 * layerEdge).fill(-1);
  for (let row = 0; row < rows; row++) {
    const at = (row + margin) * stride;
    for (const [first, last] of onRow(lattice, boundary, row)) clearBits(bits, at + first, at + last);
  }
  return { boundary, bits, margin };
}

/** Clears bits from..to (inclusive). */
function clearBits(bits: Int32Array, from: number, to: number): void {
  for (let bit = from; bit <= to; bit++) bits[bit >> 5]! &= ~(1 << (bit & 31));
}

/**
 * First and last columns of the stretches of a row that are not surely off the ground. Surely off is what is off it half
 * a cell above and below the row, and a cell in from the crossings.
 */
function onRow(lattice: Lattice, boundary: Boundary, row: number): readonly Span[] {
  const y = (row - lattice.originRow) * lattice.cell;
  const off = common(gapsAt(boundary, y + lattice.cell / 2), gapsAt(boundary, y - lattice.cell / 2));
  const on: Span[] = [];
  let from = 0;
  for (const [start, end] of off) {
    const first = start === -Infinity ? -Infinity : Math.ceil(start / lattice.cell) + lattice.originColumn + 1;
    const last = end === Infinity ? Infinity : Math.floor(end / lattice.cell) + lattice.originColumn - 1;
    if (first > last) continue;
    if (first > from) on.push([from, Math.min(first - 1, lattice.columns - 1)]);
    from = Math.max(from, last + 1);
  }
  if (from < lattice.columns) on.push([from, lattice.columns - 1]);
  return on;
}

type Span = readonly [number, number];

/** Stretches of a level line that are off the ground: outside the outline, or in an obstacle. */
function gapsAt(boundary: Boundary, y: number): readonly Span[] {
  const { ringStarts, outlineRings } = boundary;
  const outline = crossings(boundary, [0, ringStarts[outlineRings]!], y);
  const gaps: Span[] = [];
  for (let i = 0; i <= outline.length; i += 2) gaps.push([outline[i - 1] ?? -Infinity, outline[i] ?? Infinity]);
  for (let ring = outlineRings; ring + 1 < ringStarts.length; ring++) {
    const across = crossings(boundary, [ringStarts[ring]!, ringStarts[ring + 1]!], y);
    for (let i = 0; i + 1 < across.length; i += 2) gaps.push([across[i]!, across[i + 1]!]);
  }
  return gaps;
}

function crossings(boundary: Boundary, edges: Span, y: number): readonly number[] {
  const { ax, ay, bx, by } = boundary;
  const found: number[] = [];
  for (let i = edges[0]; i < edges[1]; i++) {
    if (ay[i]! > y === by[i]! > y) continue;
    found.push(ax[i]! + ((y - ay[i]!) / (by[i]! - ay[i]!)) * (bx[i]! - ax[i]!));
  }
  return found.sort((a, b) => a - b);
}

/** Overlaps of any stretch of one list with any of the other. */
function common(a: readonly Span[], b: readonly Span[]): readonly Span[] {
  const spans: Span[] = [];
  for (const one of a) {
    for (const other of b) {
      const from = Math.max(one[0], other[0]);
      const to = Math.min(one[1], other[1]);
      if (from < to) spans.push([from, to]);
    }
  }
  return spans.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}
