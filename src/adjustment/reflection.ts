// One Householder reflection on a dense block of rows that wait at the same front.

/** A row of a sparse matrix: columns[first..] hold cells[start..]. Rows share arrays, so that none is copied. */
export interface SparseRow {
  readonly columns: Int32Array;
  readonly first: number;
  readonly cells: Float64Array;
  readonly start: number;
}

/** Rows gathered over the union of their columns, row by row. `slots` says which row of the matrix each is. */
export interface Block {
  readonly columns: Int32Array;
  readonly slots: Int32Array;
  readonly cells: Float64Array;
  readonly height: number;
  readonly width: number;
}

/** H = I - beta v v': v is `head` in row `row` of the block and, below it, what stands in `column`. */
export interface Reflection {
  readonly block: Block;
  readonly row: number;
  readonly column: number;
  readonly head: number;
  readonly beta: number;
}

/** Gather rows into a dense block over the union of their columns. */
export function combine(waiting: readonly number[], live: readonly (SparseRow | null)[]): Block {
  const columns = unionOfColumns(waiting, live);
  const width = columns.length;
  const height = waiting.length;
  const cells = new Float64Array(height * width);
  const slots = new Int32Array(height);
  for (let row = 0; row < height; row += 1) {
    slots[row] = waiting[row]!;
    const from = live[waiting[row]!]!;
    let place = 0;
    for (let k = from.first, s = from.start; k < from.columns.length; k += 1, s += 1) {
      while (columns[place] !== from.columns[k]) place += 1;
      cells[row * width + place] = from.cells[s]!;
    }
  }
  return { columns, slots, cells, height, width };
}

/** Ascending union of the columns of some rows. */
function unionOfColumns(waiting: readonly number[], live: readonly (SparseRow | null)[]): Int32Array {
  const seen = new Set<number>();
  let lastColumns: Int32Array | null = null;
  let lastFirst = 0;
  for (const slot of waiting) {
    const { columns, first } = live[slot]!;
    if (columns === lastColumns && first >= lastFirst) continue;
    for (let k = first; k < columns.length; k += 1) seen.add(columns[k]!);
    lastColumns = columns;
    lastFirst = first;
  }
  const union = new Int32Array(seen.size);
  let count = 0;
  for (const column of seen) {
    union[count] = column;
    count += 1;
  }
  return union.sort();
}

/**
 * Reflect rows `row`.. of the block so that column `column` has one entry left, in `row`; what stands below keeps
 * the reflection. The row with the largest entry is put first (stability where weights differ widely: Cox and
 * Higham 1998, MEMORY). The block is changed; null where there was nothing to reflect.
 */
export function reflect(block: Block, row: number, column: number): Reflection | null {
  const { cells, width } = block;
  bringLargestFirst(block, row, column);
  const head = cells[row * width + column]!;
  let below = 0;
  for (let at = (row + 1) * width + column; at < cells.length; at += width) below += cells[at]! * cells[at]!;
  if (below === 0) return null;
  const length = Math.sqrt(head * head + below);
  const target = head > 0 ? -length : length;
  const reflection = { block, row, column, head: head - target, beta: 1 / (length * (length + Math.abs(head))) };
  reflectCells(reflection);
  cells[row * width + column] = target;
  return reflection;
}

function bringLargestFirst(block: Block, row: number, column: number): void {
  const { cells, width, slots } = block;
  let best = row;
  let size = Math.abs(cells[row * width + column]!);
  for (let other = row + 1; other < block.height; other += 1) {
    const entry = Math.abs(cells[other * width + column]!);
    if (entry > size) {
      best = other;
      size = entry;
    }
  }
  if (best === row) return;
  for (let a = row * width, b = best * width, end = a + width; a < end; a += 1, b += 1) {
    const kept = cells[a]!;
    cells[a] = cells[b]!;
    cells[b] = kept;
  }
  const slot = slots[best]!;
  slots[best] = slots[row]!;
  slots[row] = slot;
}

/** Apply a reflection to the columns right of its own, row by row as they lie in memory. */
function reflectCells({ block, row, column, head, beta }: Reflection): void {
  const { cells, width, height } = block;
  const from = column + 1;
  const count = width - from;
  const sums = new Float64Array(count);
  const top = row * width + from;
  for (let c = 0; c < count; c += 1) sums[c] = head * cells[top + c]!;
  for (let other = row + 1; other < height; other += 1) {
    const start = other * width + from;
    const factor = cells[start - 1]!;
    if (factor === 0) continue;
    for (let c = 0; c < count; c += 1) sums[c]! += factor * cells[start + c]!;
  }
  for (let c = 0; c < count; c += 1) {
    sums[c]! *= beta;
    cells[top + c]! -= head * sums[c]!;
  }
  for (let other = row + 1; other < height; other += 1) {
    const start = other * width + from;
    const factor = cells[start - 1]!;
    if (factor === 0) continue;
    for (let c = 0; c < count; c += 1) cells[start + c]! -= factor * sums[c]!;
  }
}

/** b := H b, in place; one entry per row of the matrix. */
export function reflectVector({ block, row, column, head, beta }: Reflection, b: Float64Array): void {
  const { cells, width, height, slots } = block;
  let sum = head * b[slots[row]!]!;
  for (let other = row + 1, at = other * width + column; other < height; other += 1, at += width) {
    sum += cells[at]! * b[slots[other]!]!;
  }
  if (sum === 0) return;
  sum *= beta;
  b[slots[row]!]! -= head * sum;
  for (let other = row + 1, at = other * width + column; other < height; other += 1, at += width) {
    b[slots[other]!]! -= cells[at]! * sum;
  }
}
