// Which nodes of a lattice are free, by scan conversion. At one heading the poses at which an edge of the ground meets
// a rectangle fill a hexagon: the sum of the edge and the mirrored rectangle. Its rows are cleared in the layer; what is
// left is free. No pose is tested one by one.

import type { Checked, Four } from "./checked.ts";
import { latticeWords, layerBase, layerEdge } from "./lattice.ts";
import type { Lattice } from "./lattice.ts";
import { everywhere, outsideRuns } from "./outside-runs.ts";

/** Lays the free poses of one heading into words from `base` on. */
export type LayFree = (words: Int32Array, base: number, heading: number) => void;

/**
 * How the free poses of a lattice are laid: the bits of all nodes at which every envelope, shrunk by `deflation` (m),
 * meets no boundary of its ground.
 */
export function freeLayer(lattice: Lattice, checked: readonly Checked[], deflation: number): LayFree {
  const whole = wholeLayer(lattice);
  // A body is thicker than any step: started inside it stays inside. A tyre's patch is not.
  const outside = checked.map((one) => (one.envelope.part === "body" ? null : outsideRuns(lattice, one.boundary)));
  return (words, base, heading) => {
    const angle = (2 * Math.PI * heading) / lattice.headings;
    const layer = { lattice, free: words, base, c: Math.cos(angle), s: Math.sin(angle) };
    words.set(whole, base - layerEdge);
    for (const [i, one] of checked.entries()) {
      clearContacts(layer, one, deflation);
      const runs = outside[i];
      if (runs) clearOutside(layer, one, runs);
    }
  };
}

/** Free poses at every heading, one set of layers. */
export function freePoses(lattice: Lattice, checked: readonly Checked[], deflation: number): Int32Array {
  const free = new Int32Array(latticeWords(lattice));
  const lay = freeLayer(lattice, checked, deflation);
  for (let heading = 0; heading < lattice.headings; heading++) lay(free, layerBase(lattice, heading), heading);
  return free;
}

interface Layer {
  readonly lattice: Lattice;
  readonly free: Int32Array;
  readonly base: number;
  readonly c: number;
  readonly s: number;
}

/** A layer with its edges in which every node is set, and nothing between the rows. */
function wholeLayer(lattice: Lattice): Int32Array {
  const layer = new Int32Array(lattice.words + 2 * layerEdge).fill(-1, layerEdge, layerEdge + lattice.words);
  const between = lattice.stride - lattice.columns;
  for (let row = 0; row < lattice.rows; row++) {
    const from = row * lattice.stride + lattice.columns;
    clearRun(layer, layerEdge, from, from + between - 1);
  }
  const end = lattice.rows * lattice.stride;
  if (end < 32 * lattice.words) clearRun(layer, layerEdge, end, 32 * lattice.words - 1);
  return layer;
}

/** Clears bits from..to (inclusive) of a layer. */
function clearRun(bits: Int32Array, base: number, from: number, to: number): void {
  const first = base + (from >> 5);
  const last = base + (to >> 5);
  const head = -1 << (from & 31);
  const tail = -1 >>> (31 - (to & 31));
  if (first === last) {
    bits[first]! &= ~(head & tail);
    return;
  }
  bits[first]! &= ~head;
  for (let word = first + 1; word < last; word++) bits[word] = 0;
  bits[last]! &= ~tail;
}

/** Generators of a hexagon (half sides, cells), each turned upwards; sorted by bearing. */
const generators = [new Float64Array(2), new Float64Array(2), new Float64Array(2)] as const;

function clearContacts(layer: Layer, checked: Checked, deflation: number): void {
  const { lattice, c, s } = layer;
  const [back, front, right, left] = checked.rectangle as unknown as Four;
  const { ax, ay, bx, by, count } = checked.boundary;
  const per = 1 / lattice.cell;
  const halfLong = Math.max(0, (front - back) / 2 - deflation) * per;
  const halfWide = Math.max(0, (left - right) / 2 - deflation) * per;
  const midX = (back + front) / 2;
  const midY = (right + left) / 2;
  const offX = lattice.originColumn - (c * midX - s * midY) * per;
  const offY = lattice.originRow - (s * midX + c * midY) * per;
  for (let i = 0; i < count; i++) {
    setGenerator(0, ((bx[i]! - ax[i]!) / 2) * per, ((by[i]! - ay[i]!) / 2) * per);
    setGenerator(1, c * halfLong, s * halfLong);
    setGenerator(2, -s * halfWide, c * halfWide);
    clearHexagon(layer, offX + ((ax[i]! + bx[i]!) / 2) * per, offY + ((ay[i]! + by[i]!) / 2) * per);
  }
}

function setGenerator(index: 0 | 1 | 2, x: number, y: number): void {
  const up = y < 0 || (y === 0 && x < 0) ? -1 : 1;
  generators[index][0] = up * x;
  generators[index][1] = up * y;
}

const order: [Float64Array, Float64Array, Float64Array] = [...generators];

/** Sorts the generators by bearing, flattest to the right first. */
function sortGenerators(): void {
  [order[0], order[1], order[2]] = generators;
  if (turnsBack(order[0], order[1])) [order[0], order[1]] = [order[1], order[0]];
  if (turnsBack(order[1], order[2])) [order[1], order[2]] = [order[2], order[1]];
  if (turnsBack(order[0], order[1])) [order[0], order[1]] = [order[1], order[0]];
}

function turnsBack(a: Float64Array, b: Float64Array): boolean {
  return a[0]! * b[1]! - a[1]! * b[0]! < 0;
}

/**
 * Clears the rows of the hexagon about (x, y). Its right side is the generators by rising bearing, its left side by
 * falling bearing; between two corners, of either side, both sides are straight.
 */
function clearHexagon(layer: Layer, x: number, y: number): void {
  sortGenerators();
  const [low, middle, high] = order;
  const bottom = y - low[1]! - middle[1]! - high[1]!;
  const start = x - low[0]! - middle[0]! - high[0]!;
  const top = y + low[1]! + middle[1]! + high[1]!;
  rightSide.x = start;
  leftSide.x = start;
  rightSide.y = bottom;
  leftSide.y = bottom;
  rightSide.at = 0;
  leftSide.at = 2;
  let row = Math.max(0, Math.ceil(bottom));
  const last = Math.min(layer.lattice.rows - 1, Math.floor(top));
  while (row <= last) {
    const end = Math.min(last, climb(rightSide, row, 1), climb(leftSide, row, -1));
    clearRows(layer, row, end);
    row = end + 1;
  }
}

/** One side of a hexagon: the generator in use, its lower end, and its run per row. */
interface HexagonSide {
  at: number;
  x: number;
  y: number;
  slope: number;
}

const rightSide: HexagonSide = { at: 0, x: 0, y: 0, slope: 0 };
const leftSide: HexagonSide = { at: 2, x: 0, y: 0, slope: 0 };

/** Climbs a side to the generator that holds a row; returns the last row that it holds. */
function climb(side: HexagonSide, row: number, towards: 1 | -1): number {
  const lastOne = towards === 1 ? 2 : 0;
  while (side.at !== lastOne && row >= side.y + 2 * order[side.at]![1]!) {
    side.x += 2 * order[side.at]![0]!;
    side.y += 2 * order[side.at]![1]!;
    side.at += towards;
  }
  const generator = order[side.at]!;
  side.slope = generator[1]! > 1e-12 ? generator[0]! / generator[1]! : 0;
  if (side.at === lastOne) return Infinity;
  return Math.max(row, Math.ceil(side.y + 2 * generator[1]!) - 1);
}

/** Clears rows first..last between the two sides. */
function clearRows(layer: Layer, first: number, last: number): void {
  const { free, base } = layer;
  const { stride, columns } = layer.lattice;
  let right = rightSide.x + (first - rightSide.y) * rightSide.slope;
  let left = leftSide.x + (first - leftSide.y) * leftSide.slope;
  for (let row = first; row <= last; row++) {
    const from = left > 0 ? Math.ceil(left) : 0;
    const to = right < columns - 1 ? Math.floor(right) : columns - 1;
    if (from <= to) clearRun(free, base, row * stride + from, row * stride + to);
    right += rightSide.slope;
    left += leftSide.slope;
  }
}

/** Clears all nodes at which the middle of a rectangle is off its ground. Near the boundary contacts see to it. */
function clearOutside(layer: Layer, checked: Checked, runs: readonly Int32Array[]): void {
  const { lattice, c, s, free, base } = layer;
  const [back, front, right, left] = checked.rectangle as unknown as Four;
  const midX = (back + front) / 2;
  const midY = (right + left) / 2;
  const shiftX = Math.round((c * midX - s * midY) / lattice.cell);
  const shiftY = Math.round((s * midX + c * midY) / lattice.cell);
  for (let row = 0; row < lattice.rows; row++) {
    const at = row * lattice.stride;
    const there = runs[row + shiftY] ?? everywhere;
    for (let i = 0; i < there.length; i += 2) {
      const from = Math.max(0, there[i]! - shiftX);
      const to = Math.min(lattice.columns - 1, there[i + 1]! - shiftX);
      if (from <= to) clearRun(free, base, at + from, at + to);
    }
  }
}
