// Which nodes of a lattice are free, by scan conversion. At one heading the poses at which an edge of the ground meets
// a rectangle fill a hexagon: the sum of the edge and the mirrored rectangle. Its rows are cleared in the layer; what is
// left is free. No pose is tested one by one.

import type { Checked, Four } from "./checked.ts";
import { latticeWords, layerBase } from "./lattice.ts";
import type { Lattice } from "./lattice.ts";
import { everywhere, outsideRuns } from "./outside-runs.ts";

/** Sets the bits of all nodes at which every envelope, shrunk by `deflation` (m), meets no boundary of its ground. */
export function freePoses(lattice: Lattice, checked: readonly Checked[], deflation: number): Int32Array {
  const free = new Int32Array(latticeWords(lattice));
  fillAll(lattice, free);
  const outside = checked.map((one) => (one.envelope.part === "body" ? [] : outsideRuns(lattice, one.boundary)));
  for (let heading = 0; heading < lattice.headings; heading++) {
    const angle = (2 * Math.PI * heading) / lattice.headings;
    const layer = { lattice, free, base: layerBase(lattice, heading), c: Math.cos(angle), s: Math.sin(angle) };
    for (const [i, one] of checked.entries()) {
      clearContacts(layer, one, deflation);
      // A body is thicker than any step: started inside it stays inside. A tyre's patch is not.
      if (one.envelope.part !== "body") clearOutside(layer, one, outside[i]!);
    }
  }
  return free;
}

interface Layer {
  readonly lattice: Lattice;
  readonly free: Int32Array;
  readonly base: number;
  readonly c: number;
  readonly s: number;
}

function fillAll(lattice: Lattice, free: Int32Array): void {
  const first = layerBase(lattice, 0);
  for (let row = 0; row < lattice.rows; row++) setRun(free, first, row * lattice.stride, lattice.columns);
  for (let heading = 1; heading < lattice.headings; heading++) {
    free.copyWithin(layerBase(lattice, heading), first, first + lattice.words);
  }
}

function setRun(bits: Int32Array, base: number, from: number, length: number): void {
  for (let bit = from; bit < from + length; bit++) bits[base + (bit >> 5)]! |= 1 << (bit & 31);
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

/** Clears the rows of the hexagon about (x, y). Right chain: generators by rising bearing; left chain: by falling. */
function clearHexagon(layer: Layer, x: number, y: number): void {
  const { lattice, free, base } = layer;
  sortGenerators();
  const sumX = order[0][0]! + order[1][0]! + order[2][0]!;
  const sumY = order[0][1]! + order[1][1]! + order[2][1]!;
  const bottom = y - sumY;
  const firstRow = Math.max(0, Math.ceil(bottom));
  const lastRow = Math.min(lattice.rows - 1, Math.floor(y + sumY));
  let right = 0;
  let left = 2;
  let rightX = x - sumX;
  let rightY = bottom;
  let leftX = rightX;
  let leftY = bottom;
  for (let row = firstRow; row <= lastRow; row++) {
    while (right < 2 && row >= rightY + 2 * order[right]![1]!) {
      rightX += 2 * order[right]![0]!;
      rightY += 2 * order[right]![1]!;
      right += 1;
    }
    while (left > 0 && row >= leftY + 2 * order[left]![1]!) {
      leftX += 2 * order[left]![0]!;
      leftY += 2 * order[left]![1]!;
      left -= 1;
    }
    const from = Math.max(0, Math.ceil(leftX + across(order[left]!, row - leftY)));
    const to = Math.min(lattice.columns - 1, Math.floor(rightX + across(order[right]!, row - rightY)));
    if (from <= to) clearRun(free, base, row * lattice.stride + from, row * lattice.stride + to);
  }
}

function across(generator: Float64Array, up: number): number {
  const height = generator[1]!;
  return height > 1e-12 ? (up * generator[0]!) / height : 0;
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
