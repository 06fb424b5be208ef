// Which nodes of a lattice are free, by scan conversion. At one heading the poses at which an edge of the ground meets
// a rectangle fill a hexagon: the sum of the edge and the mirrored rectangle. Its rows are cleared in the layer; what is
// left is free. No pose is tested one by one.

import { middleOf } from "./checked.ts";
import type { Checked, Four } from "./checked.ts";
import type { Boundary } from "./ground.ts";
import { borrowHeap, giveBack } from "./heap.ts";
import type { Heap } from "./heap.ts";
import { clearRun, numberRegister, register, registers } from "./kernel.ts";
import { latticeWords, layerBase, layerEdge } from "./lattice.ts";
import type { Lattice } from "./lattice.ts";
import { outsideMask } from "./outside-mask.ts";
import type { MaskPlace } from "./outside-mask.ts";

/** Lays free poses into a heap, heading by heading. */
export interface FreeMaker {
  /** Words that it keeps in the heap for itself. */
  readonly words: number;
  /** Fills those, from an address on. */
  readonly begin: (heap: Heap, at: number) => void;
  /** Lays one heading into words from `base` on: the poses at which every envelope meets no boundary of its ground. */
  readonly lay: (heap: Heap, base: number, heading: number) => void;
}

/** Makes the free poses of a lattice, for envelopes shrunk by `deflation` (m). */
export function freeMaker(lattice: Lattice, checked: readonly Checked[], deflation: number): FreeMaker {
  const whole = wholeLayer(lattice);
  // A body is thicker than any step: started inside it stays inside. A tyre's patch is not.
  const thin = checked.filter((one) => one.envelope.part !== "body");
  const masks = [...new Set(thin.map((one) => one.boundary))].map((boundary) => outsideMask(lattice, boundary, thin));
  const places = new Map<Boundary, MaskPlace>();
  return {
    words: masks.reduce((sum, mask) => sum + mask.bits.length, 0),
    begin: (heap, at) => {
      let next = at;
      for (const { boundary, bits, margin } of masks) {
        places.set(boundary, { at: next, margin });
        heap.words.set(bits, next);
        next += bits.length;
      }
    },
    lay: (heap, base, heading) => {
      const angle = (2 * Math.PI * heading) / lattice.headings;
      const layer = { lattice, heap, base, c: Math.cos(angle), s: Math.sin(angle) };
      heap.words.set(whole, base - layerEdge);
      beginRows(layer);
      for (const one of checked) clearContacts(layer, one, deflation);
      for (const one of thin) clearOutside(layer, one, places.get(one.boundary)!);
    },
  };
}

/** Free poses at every heading, one set of layers. */
export function freePoses(lattice: Lattice, checked: readonly Checked[], deflation: number): Int32Array {
  const maker = freeMaker(lattice, checked, deflation);
  const size = latticeWords(lattice);
  const heap = borrowHeap(size + maker.words);
  maker.begin(heap, registers + size);
  for (let heading = 0; heading < lattice.headings; heading++) {
    maker.lay(heap, registers + layerBase(lattice, heading), heading);
  }
  const free = heap.words.slice(registers, registers + size);
  giveBack(heap);
  return free;
}

interface Layer {
  readonly lattice: Lattice;
  readonly heap: Heap;
  readonly base: number;
  readonly c: number;
  readonly s: number;
}

/** A layer with its edges in which every node is set, and nothing between the rows. */
function wholeLayer(lattice: Lattice): Int32Array {
  const layer = new Int32Array(lattice.words + 2 * layerEdge).fill(-1, layerEdge, layerEdge + lattice.words);
  const { columns, stride, rows } = lattice;
  for (let row = 0; row < rows; row++) clearRun(layer, layerEdge, row * stride + columns, (row + 1) * stride - 1);
  if (rows * stride < 32 * lattice.words) clearRun(layer, layerEdge, rows * stride, 32 * lattice.words - 1);
  return layer;
}

/** Generators of a hexagon (half sides, cells), each turned upwards; sorted by bearing. */
const generators = [new Float64Array(2), new Float64Array(2), new Float64Array(2)] as const;

function clearContacts(layer: Layer, checked: Checked, deflation: number): void {
  const { lattice, c, s } = layer;
  const { columns, rows } = lattice;
  const { 0: back, 1: front, 2: right, 3: left } = checked.rectangle as unknown as Four;
  const { ax, ay, bx, by, count } = checked.boundary;
  const per = 1 / lattice.cell;
  const halfLong = Math.max(0, (front - back) / 2 - deflation) * per;
  const halfWide = Math.max(0, (left - right) / 2 - deflation) * per;
  const midX = (back + front) / 2;
  const midY = (right + left) / 2;
  const offX = lattice.originColumn - (c * midX - s * midY) * per;
  const offY = lattice.originRow - (s * midX + c * midY) * per;
  // Half of a hexagon's breadth and height, less what the edge brings.
  const broad = Math.abs(c) * halfLong + Math.abs(s) * halfWide;
  const high = Math.abs(s) * halfLong + Math.abs(c) * halfWide;
  for (let i = 0; i < count; i++) {
    if (offX + Math.min(ax[i]!, bx[i]!) * per - broad > columns) continue;
    if (offX + Math.max(ax[i]!, bx[i]!) * per + broad < 0) continue;
    if (offY + Math.min(ay[i]!, by[i]!) * per - high > rows) continue;
    if (offY + Math.max(ay[i]!, by[i]!) * per + high < 0) continue;
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

/** What all rows of a layer have in common. */
function beginRows({ lattice, heap: { words }, base }: Layer): void {
  words[register.base] = base;
  words[register.stride] = lattice.stride;
  words[register.lastColumn] = lattice.columns - 1;
}

/** Clears rows first..last between the two sides. */
function clearRows({ heap: { words, numbers, kernel } }: Layer, first: number, last: number): void {
  words[register.row] = first;
  words[register.lastRow] = last;
  numbers[numberRegister.left] = leftSide.x + (first - leftSide.y) * leftSide.slope;
  numbers[numberRegister.leftSlope] = leftSide.slope;
  numbers[numberRegister.right] = rightSide.x + (first - rightSide.y) * rightSide.slope;
  numbers[numberRegister.rightSlope] = rightSide.slope;
  kernel.clearRows();
}

/** Clears all nodes at which the middle of a rectangle is off its ground. Near the boundary contacts see to it. */
function clearOutside({ lattice, heap, base, c, s }: Layer, checked: Checked, mask: MaskPlace): void {
  const [midX, midY] = middleOf(checked);
  const across = Math.round((c * midX - s * midY) / lattice.cell);
  const up = Math.round((s * midX + c * midY) / lattice.cell);
  const shift = (up + mask.margin) * lattice.stride + across;
  const { words, kernel } = heap;
  words[register.source] = mask.at + (shift >> 5);
  words[register.part] = shift & 31;
  words[register.target] = base;
  words[register.last] = base + lattice.words - 1;
  kernel.clearShifted();
}
