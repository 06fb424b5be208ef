// A least squares problem made ready to solve: exact conditions taken out, unknowns ordered, the rest factored.

import { eliminationFronts } from "./elimination-order.ts";
import type { Fronts } from "./elimination-order.ts";
import { eliminateConditions } from "./exact-conditions.ts";
import type { Combination, Elimination, LinearRow } from "./exact-conditions.ts";
import { factorise } from "./householder.ts";
import type { Factor } from "./householder.ts";
import type { SparseRow } from "./reflection.ts";

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
  /** Order of elimination of the groups, in fronts; found by least degree if omitted. */
  readonly fronts?: Fronts;
}

/** The problem in the free unknowns. `exact` and `weighted` are numbers of equations. */
export interface Reduced {
  readonly problem: LinearProblem;
  readonly elimination: Elimination;
  readonly exact: readonly number[];
  readonly weighted: readonly number[];
  readonly fronts: Fronts;
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
  const fronts = problem.fronts ?? eliminationFronts(groupCount, cliques);
  const columnsByFront = freeColumnsByFront(problem.columnCount, { elimination, groupOf, fronts });
  const freeColumns = columnsByFront.flat();
  const positions = new Map(freeColumns.map((column, position) => [column, position]));
  const rows = weighted.map((index, k) => sparseRow(combinations[k]!, positions, 1 / problem.equations[index]!.u));
  const factor = factorise(
    rows,
    columnsByFront.map((columns) => columns.length),
  );
  return { problem, elimination, exact, weighted, fronts, positions, freeColumns, rows, factor };
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
  readonly fronts: Fronts;
}

/** The columns that no condition fixes, front by front in order of elimination. */
function freeColumnsByFront(columnCount: number, { elimination, groupOf, fronts }: Ordering): number[][] {
  const byGroup: number[][] = [];
  for (let column = 0; column < columnCount; column += 1) {
    if (!elimination.fixed.has(column)) (byGroup[groupOf(column)] ??= []).push(column);
  }
  return fronts.map((front) => front.flatMap((group) => byGroup[group] ?? []));
}

function sparseRow(terms: Combination, positions: ReadonlyMap<number, number>, weight: number): SparseRow {
  const pairs: [number, number][] = [];
  for (const [column, value] of terms) pairs.push([positions.get(column)!, value * weight]);
  pairs.sort((a, b) => a[0] - b[0]);
  const columns = new Int32Array(pairs.length);
  const cells = new Float64Array(pairs.length);
  pairs.forEach(([position, value], k) => {
    columns[k] = position;
    cells[k] = value;
  });
  return { columns, first: 0, cells, start: 0 };
}
