// One Householder reflection on a dense block of rows that wait at the same column.

import type { SparseRow } from "./householder.ts";

/** Rows gathered over the union of their columns, row by row. `slots` says which row of the matrix each is. */
export interface Block {
  readonly columns: Int32Array;
  readonly slots: Int32Array;
  readonly cells: Float64Array;
  readonly height: number;
  readonly width: number;
}

/** H = I - beta v v', v standing in `slots`. */
export interface Reflection {
  readonly slots: Int32Array;
  readonly vector: Float64Array;
  readonly beta: number;
}

/** Gather rows into a dense block over the union of their columns. */
export function combine(waiting: readonly number[], live: readonly (SparseRow | null)[]): Block {
  const rows = waiting.map((slot) => live[slot]!);
  const columns = unionOfColumns(rows);
  const width = columns.length;
  const cells = new Float64Array(rows.length * width);
  rows.forEach((row, index) => {
    let at = index * width;
    const end = at + width;
    for (let k = 0, c = 0; k < row.columns.length && at < end; c += 1, at += 1) {
      if (columns[c] === row.columns[k]) {
        cells[at] = row.values[k]!;
        k += 1;
      }
    }
  });
  return { columns, slots: Int32Array.from(waiting), cells, height: rows.length, width };
}

function unionOfColumns(rows: readonly SparseRow[]): Int32Array {
  let union = rows[0]!.columns;
  for (const row of rows) {
    if (row.columns !== union) union = merge(union, row.columns);
  }
  return union;
}

/** Merge two ascending lists; one of them is handed back where it holds the other. */
function merge(a: Int32Array, b: Int32Array): Int32Array {
  const out = new Int32Array(a.length + b.length);
  let count = 0;
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const next = Math.min(i < a.length ? a[i]! : Infinity, j < b.length ? b[j]! : Infinity);
    if (a[i] === next) i += 1;
    if (b[j] === next) j += 1;
    out[count] = next;
    count += 1;
  }
  if (count === a.length) return a;
  return count === b.length ? b : out.slice(0, count);
}

/**
 * Reflect rows `firstRow`.. of the block so that column `column` is left with one entry, in `firstRow`. The row
 * with the largest entry is put first (stability where weights differ widely: Cox and Higham 1998, MEMORY).
 * The block is changed; null where there was nothing to reflect.
 */
export function reflect(block: Block, firstRow: number, column: number): Reflection | null {
  const { cells, width } = block;
  bringLargestFirst(block, firstRow, column);
  const rows: number[] = [];
  let squares = 0;
  for (let row = firstRow; row < block.height; row += 1) {
    const entry = cells[row * width + column]!;
    if (entry === 0) continue;
    rows.push(row);
    squares += entry * entry;
  }
  if (rows.length < 2) return null;
  const length = Math.sqrt(squares);
  const head = cells[firstRow * width + column]!;
  const target = head > 0 ? -length : length;
  const vector = Float64Array.from(rows, (row) => cells[row * width + column]!);
  vector[0] = head - target;
  const beta = 1 / (length * (length + Math.abs(head)));
  for (const row of rows) cells[row * width + column] = 0;
  cells[firstRow * width + column] = target;
  reflectCells(block, { rows, vector, beta, from: column + 1 });
  return { slots: Int32Array.from(rows, (row) => block.slots[row]!), vector, beta };
}

function bringLargestFirst(block: Block, firstRow: number, column: number): void {
  const { cells, width, slots } = block;
  let best = firstRow;
  for (let row = firstRow + 1; row < block.height; row += 1) {
    if (Math.abs(cells[row * width + column]!) > Math.abs(cells[best * width + column]!)) best = row;
  }
  if (best === firstRow) return;
  const kept = cells.slice(best * width, (best + 1) * width);
  cells.copyWithin(best * width, firstRow * width, (firstRow + 1) * width);
  cells.set(kept, firstRow * width);
  const slot = slots[best]!;
  slots[best] = slots[firstRow]!;
  slots[firstRow] = slot;
}

interface Stroke {
  readonly rows: readonly number[];
  readonly vector: Float64Array;
  readonly beta: number;
  readonly from: number;
}

function reflectCells(block: Block, stroke: Stroke): void {
  const { cells, width } = block;
  const { rows, vector, beta, from } = stroke;
  const sums = new Float64Array(width);
  for (let i = 0; i < rows.length; i += 1) {
    const start = rows[i]! * width;
    const factor = beta * vector[i]!;
    for (let c = from; c < width; c += 1) sums[c]! += factor * cells[start + c]!;
  }
  for (let i = 0; i < rows.length; i += 1) {
    const start = rows[i]! * width;
    const factor = vector[i]!;
    for (let c = from; c < width; c += 1) cells[start + c]! -= factor * sums[c]!;
  }
}
