// Exact conditions are not given a large weight: the unknowns they fix are taken out before the adjustment.

/** One linear equation a . x = b; `columns` may stand in any order but only once each. */
export interface LinearRow {
  readonly columns: readonly number[];
  readonly values: readonly number[];
}

/** A sum over numbered things: number -> factor. */
export type Combination = ReadonlyMap<number, number>;

/** x_column = sum over free columns + sum over right-hand sides of the conditions. */
export interface FixedColumn {
  readonly free: Combination;
  readonly conditions: Combination;
}

/** What is left when the conditions have been used. */
export interface Elimination {
  /** Columns that a condition fixes, each in terms of the free ones. */
  readonly fixed: ReadonlyMap<number, FixedColumn>;
  /** Conditions that follow from others: this combination of right-hand sides must be zero. */
  readonly surplus: readonly Combination[];
}

/** Below this part of the row's largest factor, what is left of a condition is rounding (method tolerance). */
const nothingLeft = 1e-10;
/** A pivot may be this much smaller than the largest factor if that keeps the rows short (method choice). */
const pivotThreshold = 0.1;

interface Working {
  readonly free: Map<number, number>;
  readonly conditions: Map<number, number>;
}

/**
 * Reduce the conditions C x = d to x_fixed = F x_free + T d by Gauss-Jordan elimination with threshold pivoting
 * (method of direct elimination: Lawson and Hanson, Solving Least Squares Problems, ch. 21, MEMORY). Short
 * conditions go first, so that fixed coordinates disappear before anything else is looked at.
 */
export function eliminateConditions(conditions: readonly LinearRow[]): Elimination {
  const fixed = new Map<number, Working>();
  const usedBy = new Map<number, Set<number>>();
  const surplus: Combination[] = [];
  const counts = columnCounts(conditions);
  const order = conditions.map((_, index) => index);
  order.sort((a, b) => conditions[a]!.columns.length - conditions[b]!.columns.length || a - b);
  for (const index of order) {
    const row = substituted(conditions[index]!, index, fixed);
    const pivot = choosePivot(row.free, largest(conditions[index]!.values), counts);
    if (pivot === null) {
      surplus.push(row.conditions);
      continue;
    }
    settle(pivot, row, { fixed, usedBy });
  }
  return { fixed, surplus };
}

function columnCounts(conditions: readonly LinearRow[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { columns } of conditions) for (const c of columns) counts.set(c, (counts.get(c) ?? 0) + 1);
  return counts;
}

function largest(values: Iterable<number>): number {
  let size = 0;
  for (const value of values) size = Math.max(size, Math.abs(value));
  return size;
}

/** The condition with every fixed column written out: sum free = sum conditions (right-hand sides). */
function substituted(row: LinearRow, index: number, fixed: ReadonlyMap<number, Working>): Working {
  const free = new Map<number, number>();
  const conditions = new Map<number, number>([[index, 1]]);
  row.columns.forEach((column, k) => {
    const value = row.values[k]!;
    const known = fixed.get(column);
    if (known === undefined) add(free, column, value);
    else {
      for (const [c, factor] of known.free) add(free, c, value * factor);
      for (const [d, factor] of known.conditions) add(conditions, d, -value * factor);
    }
  });
  return { free, conditions };
}

function add(sum: Map<number, number>, key: number, value: number): void {
  sum.set(key, (sum.get(key) ?? 0) + value);
}

function choosePivot(free: Combination, scale: number, counts: ReadonlyMap<number, number>): number | null {
  const size = largest(free.values());
  if (!(size > nothingLeft * scale)) return null;
  let best: number | null = null;
  for (const [column, value] of free) {
    if (Math.abs(value) < pivotThreshold * size) continue;
    if (best === null || rank(column) < rank(best)) best = column;
    else if (rank(column) === rank(best) && Math.abs(value) > Math.abs(free.get(best)!)) best = column;
  }
  return best;

  function rank(column: number): number {
    return counts.get(column) ?? 0;
  }
}

interface Settled {
  readonly fixed: Map<number, Working>;
  /** Free column -> fixed columns that are written in terms of it. */
  readonly usedBy: Map<number, Set<number>>;
}

/** Write the pivot column in terms of the others, and put that into every column that used it. */
function settle(pivot: number, row: Working, { fixed, usedBy }: Settled): void {
  const scale = row.free.get(pivot)!;
  const free = new Map<number, number>();
  for (const [column, value] of row.free) if (column !== pivot && value !== 0) free.set(column, -value / scale);
  const conditions = new Map<number, number>();
  for (const [d, value] of row.conditions) conditions.set(d, value / scale);
  fixed.set(pivot, { free, conditions });
  note(pivot, free.keys(), usedBy);
  for (const user of usedBy.get(pivot) ?? []) {
    const other = fixed.get(user)!;
    const factor = other.free.get(pivot) ?? 0;
    other.free.delete(pivot);
    for (const [c, value] of free) add(other.free, c, factor * value);
    for (const [d, value] of conditions) add(other.conditions, d, factor * value);
    note(user, free.keys(), usedBy);
  }
  usedBy.delete(pivot);
}

function note(user: number, columns: Iterable<number>, usedBy: Map<number, Set<number>>): void {
  for (const column of columns) {
    const users = usedBy.get(column) ?? new Set<number>();
    users.add(user);
    usedBy.set(column, users);
  }
}
