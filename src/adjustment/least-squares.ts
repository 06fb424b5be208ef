// Weighted linear least squares with exact conditions, and what can be asked of the solution.

import type { Fronts } from "./elimination-order.ts";
import type { LinearRow } from "./exact-conditions.ts";
import { apply, leverages, solve, solveTransposed, unknownDirections } from "./factor-solve.ts";
import { reduce } from "./reduced-problem.ts";
import type { LinearProblem, Reduced } from "./reduced-problem.ts";

/** The solution, with its derivatives ready to be asked for. */
export interface LinearSolution {
  readonly x: Float64Array;
  /** Number of free unknowns left by the exact conditions. */
  readonly freeCount: number;
  /** Columns that nothing fixes; where there are any, `x` is only one of many and must not be used. */
  readonly undetermined: readonly number[];
  /** Exact equations that contradict each other: the numbers of the equations, and by how much. */
  readonly contradictions: readonly { readonly equations: readonly number[]; readonly gap: number }[];
  /** The order of elimination that was used, for the next solution of the same pattern. */
  readonly fronts: Fronts;
  /** dx_column / dvalue for every equation, exact ones included: one row of G. */
  readonly sensitivity: (column: number) => Float64Array;
  /** R^-T of a column; products of two of them are covariances (exact equations carry no doubt). */
  readonly root: (column: number) => Float64Array;
  /** Redundancy number of every equation, r = 1 - leverage; 0 for exact ones. */
  readonly redundancies: () => Float64Array;
}

/**
 * Minimise sum ((a . x - value) / u)^2 subject to the equations with u = 0.
 *
 * The exact ones are eliminated, the rest is factored by sparse Householder QR; J'J is never formed.
 * G = dx/dvalue; with V = diag(u^2) the covariance of x is G V G'. Sigmas are taken as given: nothing is rescaled.
 */
export function solveLeastSquares(problem: LinearProblem): LinearSolution {
  const reduced = reduce(problem);
  const { factor, weighted } = reduced;
  const conditionValues = reduced.exact.map((index) => problem.equations[index]!.value);
  const shift = particular(reduced, conditionValues);
  const b = Float64Array.from(weighted, (index) => {
    const equation = problem.equations[index]!;
    return (equation.value - dot(equation, shift)) / equation.u;
  });
  const y = solve(factor, b);
  return {
    x: wholeSolution(reduced, y, shift),
    freeCount: reduced.freeColumns.length,
    undetermined: undeterminedColumns(reduced),
    contradictions: contradictions(reduced, conditionValues),
    fronts: reduced.fronts,
    sensitivity: (column) => sensitivity(reduced, column),
    root: (column) => solveTransposed(factor, freePart(reduced, column)),
    redundancies: () => redundancies(reduced),
  };
}

function dot(row: LinearRow, x: Float64Array): number {
  let sum = 0;
  row.columns.forEach((column, k) => (sum += row.values[k]! * x[column]!));
  return sum;
}

/** The solution of the conditions alone, free columns at zero. */
function particular({ problem, elimination }: Reduced, values: readonly number[]): Float64Array {
  const x = new Float64Array(problem.columnCount);
  for (const [column, { conditions }] of elimination.fixed) {
    let sum = 0;
    for (const [d, factor] of conditions) sum += factor * values[d]!;
    x[column] = sum;
  }
  return x;
}

function wholeSolution(reduced: Reduced, y: Float64Array, shift: Float64Array): Float64Array {
  const x = shift.slice();
  reduced.freeColumns.forEach((column, position) => (x[column] = y[position]!));
  for (const [column, { free }] of reduced.elimination.fixed) {
    let sum = shift[column]!;
    for (const [c, factor] of free) sum += factor * x[c]!;
    x[column] = sum;
  }
  return x;
}

/** A column written in terms of the free ones, by position. */
function freePart({ elimination, positions, freeColumns }: Reduced, column: number): Float64Array {
  const out = new Float64Array(freeColumns.length);
  const known = elimination.fixed.get(column);
  if (known === undefined) out[positions.get(column)!] = 1;
  else for (const [c, factor] of known.free) out[positions.get(c)!] = factor;
  return out;
}

function sensitivity(reduced: Reduced, column: number): Float64Array {
  const { problem, elimination, factor, weighted, exact } = reduced;
  const out = new Float64Array(problem.equations.length);
  const throughColumns = new Float64Array(problem.columnCount);
  const byRow = apply(factor, solveTransposed(factor, freePart(reduced, column)));
  weighted.forEach((index, k) => {
    const equation = problem.equations[index]!;
    const g = byRow[k]! / equation.u;
    out[index] = g;
    if (g !== 0) equation.columns.forEach((c, i) => (throughColumns[c]! += g * equation.values[i]!));
  });
  for (const [d, factor] of elimination.fixed.get(column)?.conditions ?? []) out[exact[d]!]! += factor;
  for (const [c, { conditions }] of elimination.fixed) {
    if (throughColumns[c] === 0) continue;
    for (const [d, factor] of conditions) out[exact[d]!]! -= throughColumns[c]! * factor;
  }
  return out;
}

function redundancies({ problem, weighted, rows, factor }: Reduced): Float64Array {
  const out = new Float64Array(problem.equations.length);
  const levers = leverages(factor, rows);
  weighted.forEach((index, k) => (out[index] = 1 - levers[k]!));
  return out;
}

/** A column moves in a direction that no equation sees if it moves by more than rounding there. */
const movesAtAll = 1e-7;

function undeterminedColumns(reduced: Reduced): number[] {
  const { problem, factor, freeColumns } = reduced;
  if (factor.deficient.length === 0) return [];
  const nothing = new Float64Array(problem.columnCount);
  const moving = new Set<number>();
  for (const direction of unknownDirections(factor)) {
    const whole = wholeSolution(reduced, direction, nothing);
    let size = 0;
    for (const move of whole) size = Math.max(size, Math.abs(move));
    whole.forEach((move, column) => Math.abs(move) > movesAtAll * size && moving.add(column));
  }
  if (freeColumns.length === 0) return [];
  return [...moving].sort((a, b) => a - b);
}

function contradictions(reduced: Reduced, values: readonly number[]): LinearSolution["contradictions"] {
  return reduced.elimination.surplus.map((combination) => {
    let gap = 0;
    for (const [d, factor] of combination) gap += factor * values[d]!;
    return { equations: [...combination.keys()].map((d) => reduced.exact[d]!), gap };
  });
}
