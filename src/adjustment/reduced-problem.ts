// A least squares problem made ready to solve: exact conditions taken out, unknowns ordered, the rest factored.

import { eliminationOrder } from "./elimination-order.ts";
import { eliminateConditions } from "./exact-conditions.ts";
import type { Combination, Elimination, LinearRow } from "./exact-conditions.ts";
import { factorise } from "./householder.ts";
import type { Factor, SparseRow } from "./householder.ts";

/** a . x = value, known with standard uncertainty `u` (same unit as `value`); u = 0 is an exact condition. */
export interface Equation extends LinearRow {
  readonly value: number;
  readonly u: number;
}

export interface LinearProblem {
  readonly columnCount: number;
  readonly equations: readonly Equation[];
  /** Columns that belong together (the two coordinates of a station); each column by itself if omitted. */
  readonly groupOf?: (column: number) => number;
  /** Order of elimination of the groups; found by least degree if omitted. */
  readonly order?: readonly number[];
}

/** The problem in the free unknowns. `exact` and `weighted` are numbers of equations. */
export interface Reduced {
  readonly problem: LinearProblem;
  readonly elimination: Elimination;
  readonly exact: readonly number[];
  readonly weighted: readonly number[];
  readonly order: readonly number[];
  readonly positions: ReadonlyMap<number, number>;
  readonly freeColumns: readonly number[];
  readonly rows: readonly SparseRow[];
  readonly factor: Factor;
}

/** Take out the exact conditions, order the free unknowns, and factor the weighted equations. */
export function reduce(problem: LinearProblem): Reduced {
  const exact: number[] = [];
  const weighted: number[] = [];
  problem.equations.forEach((equation, index) => (equation.u === 0 ? exact : weighted).push(index));
  const elimination = eliminateConditions(exact.map((index) => problem.equations[index]!));
  const combinations = weighted.map((index) => freeTerms(problem.equations[index]!, elimination));
  const groupOf = problem.groupOf ?? ((column: number) => column);
  const groupCount = problem.columnCount === 0 ? 0 : groupOf(problem.columnCount - 1) + 1;
  const cliques = combinations.map((terms) => [...new Set([...terms.keys()].map(groupOf))]);
  const order = problem.order ?? eliminationOrder(groupCount, cliques);
  const freeColumns = freeColumnsInOrder(problem.columnCount, { elimination, groupOf, order });
  const positions = new Map(freeColumns.map((column, position) => [column, position]));
  const rows = weighted.map((index, k) => sparseRow(combinations[k]!, positions, 1 / problem.equations[index]!.u));
  const factor = factorise(rows, freeColumns.length);
  return { problem, elimination, exact, weighted, order, positions, freeColumns, rows, factor };
}

function freeTerms(row: LinearRow, { fixed }: Elimination): Map<number, number> {
  const terms = new Map<number, number>();
  row.columns.forEach((column, k) => {
    const value = row.values[k]!;
    const known = fixed.get(column);
    if (known === undefined) terms.set(column, (terms.get(column) ?? 0) + value);
    else for (const [c, factor] of known.free) terms.set(c, (terms.get(c) ?? 0) + value * factor);
  });
  return terms;
}

interface Ordering {
  readonly elimination: Elimination;
  readonly groupOf: (column: number) => number;
  readonly order: readonly number[];
}

function freeColumnsInOrder(columnCount: number, { elimination, groupOf, order }: Ordering): number[] {
  const rank = new Int32Array(order.length);
  order.forEach((group, place) => (rank[group] = place));
  const free: number[] = [];
  for (let column = 0; column < columnCount; column += 1) if (!elimination.fixed.has(column)) free.push(column);
  return free.sort((a, b) => rank[groupOf(a)]! - rank[groupOf(b)]! || a - b);
}

function sparseRow(terms: Combination, positions: ReadonlyMap<number, number>, weight: number): SparseRow {
  const pairs = [...terms].map(([column, value]): [number, number] => [positions.get(column)!, value * weight]);
  pairs.sort((a, b) => a[0] - b[0]);
  return {
    columns: Int32Array.from(pairs, (pair) => pair[0]),
    values: Float64Array.from(pairs, (pair) => pair[1]),
  };
}
