// Sparse Householder QR: rows wait at their first column, and each column reflects only the rows that wait there.

import { combine, reflect } from "./reflection.ts";
import type { Block, Reflection } from "./reflection.ts";

/** One row of a sparse matrix: ascending column positions and the values that stand there. */
export interface SparseRow {
  readonly columns: Int32Array;
  readonly values: Float64Array;
}

/** The factor of J = Q [R; 0]. Positions are columns in elimination order; slots are the rows of J. */
export interface Factor {
  readonly columnCount: number;
  readonly rowCount: number;
  /** Rows of R by position, diagonal first; null where the column depends on others. */
  readonly upper: readonly (SparseRow | null)[];
  /** Slot in which the row of R for each position came to stand; -1 where there is none. */
  readonly slots: Int32Array;
  /** Reflections in the order in which they were applied. */
  readonly reflections: readonly Reflection[];
  /** Positions of columns that depend on others (numerical rank). */
  readonly deficient: readonly number[];
}

/** A column counts as dependent when what is left of it is this small a part of its length (method tolerance). */
const rankTolerance = 1e-10;

/**
 * Factor a sparse matrix as J = Q [R; 0] by Householder reflections (Golub and Van Loan, Matrix Computations,
 * 5.2, MEMORY), never forming J'J. Rows are grouped by their first column (George and Heath 1980, MEMORY), so
 * that the work follows the fill of R. `rows` are not changed.
 */
export function factorise(rows: readonly SparseRow[], columnCount: number): Factor {
  const state = waitingRows(rows, columnCount);
  const scale = columnLengths(rows, columnCount);
  const upper: (SparseRow | null)[] = Array.from({ length: columnCount }, () => null);
  const slots = new Int32Array(columnCount).fill(-1);
  const deficient: number[] = [];
  for (let position = 0; position < columnCount; position += 1) {
    const waiting = state.buckets[position]!;
    if (waiting.length === 0) {
      deficient.push(position);
      continue;
    }
    const block = combine(waiting, state.live);
    const length = columnLength(block);
    const depends = !(length > rankTolerance * scale[position]!);
    if (depends) deficient.push(position);
    else keepUpperRow(block, position, { upper, slots, state });
    passOn(block, depends ? 0 : 1, state);
    state.buckets[position] = [];
  }
  return { columnCount, rowCount: rows.length, upper, slots, reflections: state.reflections, deficient };
}

interface State {
  readonly live: (SparseRow | null)[];
  readonly buckets: number[][];
  readonly reflections: Reflection[];
}

function waitingRows(rows: readonly SparseRow[], columnCount: number): State {
  const buckets: number[][] = Array.from({ length: columnCount }, () => []);
  rows.forEach((row, slot) => {
    if (row.columns.length > 0) buckets[row.columns[0]!]!.push(slot);
  });
  return { live: [...rows], buckets, reflections: [] };
}

function columnLengths(rows: readonly SparseRow[], columnCount: number): Float64Array {
  const squares = new Float64Array(columnCount);
  for (const row of rows) {
    for (let k = 0; k < row.columns.length; k += 1) squares[row.columns[k]!]! += row.values[k]! * row.values[k]!;
  }
  return squares.map(Math.sqrt);
}

function columnLength(block: Block): number {
  let sum = 0;
  for (let row = 0; row < block.height; row += 1) sum += block.cells[row * block.width]! ** 2;
  return Math.sqrt(sum);
}

interface Sink {
  readonly upper: (SparseRow | null)[];
  readonly slots: Int32Array;
  readonly state: State;
}

function keepUpperRow(block: Block, position: number, sink: Sink): void {
  const reflection = reflect(block, 0, 0);
  if (reflection !== null) sink.state.reflections.push(reflection);
  sink.upper[position] = { columns: block.columns, values: block.cells.slice(0, block.width) };
  sink.slots[position] = block.slots[0]!;
  sink.state.live[block.slots[0]!] = null;
}

/**
 * Send what is left of a block to the columns where it waits next. Where more rows are left than columns, the
 * block is reflected to a triangle at once, so that surplus rows (pure residual) do not travel further.
 */
function passOn(block: Block, firstRow: number, state: State): void {
  const columnsLeft = block.width - 1;
  const rowsLeft = block.height - firstRow;
  if (columnsLeft === 0 || rowsLeft === 0) {
    for (let row = firstRow; row < block.height; row += 1) state.live[block.slots[row]!] = null;
    return;
  }
  const triangle = rowsLeft > columnsLeft;
  if (triangle) {
    for (let step = 0; step < columnsLeft; step += 1) {
      const reflection = reflect(block, firstRow + step, 1 + step);
      if (reflection !== null) state.reflections.push(reflection);
    }
  }
  for (let row = firstRow; row < block.height; row += 1) {
    const skip = triangle ? 1 + row - firstRow : 1;
    const slot = block.slots[row]!;
    if (skip >= block.width) {
      state.live[slot] = null;
      continue;
    }
    const start = row * block.width;
    state.live[slot] = {
      columns: skip === 0 ? block.columns : block.columns.subarray(skip),
      values: block.cells.slice(start + skip, start + block.width),
    };
    state.buckets[block.columns[skip]!]!.push(slot);
  }
}
