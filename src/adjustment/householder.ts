// Sparse Householder QR: rows wait at the front of their first column; each front is reflected as one dense block.

import { combine, reflect } from "./reflection.ts";
import type { Block, Reflection, SparseRow } from "./reflection.ts";

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
 * 5.2, MEMORY), never forming J'J, front by front (multifrontal QR: Duff and Reid 1983, Matstoms 1994, MEMORY), so
 * that the work follows the fill of R. `widths` are the numbers of consecutive columns in each front; they decide
 * the work, not the result. `rows` are not changed.
 */
export function factorise(rows: readonly SparseRow[], widths: readonly number[]): Factor {
  const work = begin(rows, widths);
  let first = 0;
  widths.forEach((width, front) => {
    const end = first + width;
    eliminateFront(work, front, { first, end });
    first = end;
  });
  const { upper, slots, reflections, deficient } = work;
  return { columnCount: first, rowCount: rows.length, upper, slots, reflections, deficient };
}

interface Work {
  readonly live: (SparseRow | null)[];
  /** Slots of the rows that wait at each front. */
  readonly waiting: number[][];
  readonly frontOf: Int32Array;
  /** Length of each column at the start. */
  readonly scale: Float64Array;
  readonly upper: (SparseRow | null)[];
  readonly slots: Int32Array;
  readonly reflections: Reflection[];
  readonly deficient: number[];
}

function begin(rows: readonly SparseRow[], widths: readonly number[]): Work {
  const frontOf = Int32Array.from(widths.flatMap((width, front) => Array.from({ length: width }, () => front)));
  const columnCount = frontOf.length;
  const waiting: number[][] = widths.map(() => []);
  const squares = new Float64Array(columnCount);
  rows.forEach((row, slot) => {
    const { columns, first, cells, start } = row;
    if (columns.length > first) waiting[frontOf[columns[first]!]!]!.push(slot);
    for (let k = first; k < columns.length; k += 1) squares[columns[k]!]! += cells[start + k - first]! ** 2;
  });
  return {
    live: [...rows],
    waiting,
    frontOf,
    scale: squares.map(Math.sqrt),
    upper: Array.from({ length: columnCount }, () => null),
    slots: new Int32Array(columnCount).fill(-1),
    reflections: [],
    deficient: [],
  };
}

/** Reflect the rows that wait at a front until each of its columns has one row; send the rest on. */
function eliminateFront(work: Work, front: number, { first, end }: { readonly first: number; readonly end: number }) {
  const block = combine(work.waiting[front]!, work.live);
  work.waiting[front] = [];
  let row = 0;
  let column = 0;
  for (let position = first; position < end; position += 1) {
    const present = block.columns[column] === position;
    if (present && eliminateColumn(work, block, { row, column })) row += 1;
    else work.deficient.push(position);
    if (present) column += 1;
  }
  passOn(work, block, { row, column });
}

interface Corner {
  readonly row: number;
  readonly column: number;
}

/** One column of a front; false where nothing but rounding is left of it. */
function eliminateColumn(work: Work, block: Block, { row, column }: Corner): boolean {
  const position = block.columns[column]!;
  if (row >= block.height) return false;
  const reflection = reflect(block, row, column);
  if (reflection !== null) work.reflections.push(reflection);
  const start = row * block.width + column;
  if (!(Math.abs(block.cells[start]!) > rankTolerance * work.scale[position]!)) return false;
  work.upper[position] = { columns: block.columns, first: column, cells: block.cells, start };
  work.slots[position] = block.slots[row]!;
  work.live[block.slots[row]!] = null;
  return true;
}

/**
 * Send what is left of a block to the fronts where it waits next. Where more rows are left than columns, the block
 * is first reflected to a triangle, so that surplus rows (pure residual) go no further.
 */
function passOn(work: Work, block: Block, from: Corner): void {
  const columnsLeft = block.width - from.column;
  const triangle = block.height - from.row > columnsLeft;
  const steps = triangle ? columnsLeft : 0;
  for (let step = 0; step < steps; step += 1) {
    const reflection = reflect(block, from.row + step, from.column + step);
    if (reflection !== null) work.reflections.push(reflection);
  }
  for (let row = from.row; row < block.height; row += 1) {
    const column = from.column + (triangle ? row - from.row : 0);
    const slot = block.slots[row]!;
    if (column >= block.width) {
      work.live[slot] = null;
      continue;
    }
    const start = row * block.width + column;
    work.live[slot] = { columns: block.columns, first: column, cells: block.cells, start };
    work.waiting[work.frontOf[block.columns[column]!]!]!.push(slot);
  }
}
