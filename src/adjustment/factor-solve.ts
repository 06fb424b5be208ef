// What a QR factor is used for: Q'b, Q t, R x = y, R' t = s, and the directions in which nothing is known.

import type { Factor, SparseRow } from "./householder.ts";

/** b := Q'b, in place; one entry per row of the factored matrix. */
export function applyTransposed(factor: Factor, b: Float64Array): void {
  for (const { slots, vector, beta } of factor.reflections) {
    let sum = 0;
    for (let i = 0; i < slots.length; i += 1) sum += vector[i]! * b[slots[i]!]!;
    if (sum === 0) continue;
    for (let i = 0; i < slots.length; i += 1) b[slots[i]!]! -= beta * sum * vector[i]!;
  }
}

/** Q [t; 0], where `t` stands by position; one entry per row of the factored matrix. */
export function apply(factor: Factor, t: Float64Array): Float64Array {
  const out = new Float64Array(factor.rowCount);
  for (let k = 0; k < factor.columnCount; k += 1) {
    if (factor.slots[k]! >= 0) out[factor.slots[k]!] = t[k]!;
  }
  for (let r = factor.reflections.length - 1; r >= 0; r -= 1) {
    const { slots, vector, beta } = factor.reflections[r]!;
    let sum = 0;
    for (let i = 0; i < slots.length; i += 1) sum += vector[i]! * out[slots[i]!]!;
    if (sum === 0) continue;
    for (let i = 0; i < slots.length; i += 1) out[slots[i]!]! -= beta * sum * vector[i]!;
  }
  return out;
}

/** The least squares solution of J x = b, by position; `b` by row. Dependent columns are given zero. */
export function solve(factor: Factor, b: Float64Array): Float64Array {
  const turned = b.slice();
  applyTransposed(factor, turned);
  const x = new Float64Array(factor.columnCount);
  for (let k = 0; k < factor.columnCount; k += 1) {
    if (factor.slots[k]! >= 0) x[k] = turned[factor.slots[k]!]!;
  }
  return backSubstitute(factor, x, new Set());
}

/** Solve R x = y by position, in place; positions in `kept` keep the value they have. */
function backSubstitute(factor: Factor, x: Float64Array, kept: ReadonlySet<number>): Float64Array {
  for (let k = factor.columnCount - 1; k >= 0; k -= 1) {
    const row = factor.upper[k];
    if (row === null || row === undefined || kept.has(k)) continue;
    let sum = x[k]!;
    for (let i = 1; i < row.columns.length; i += 1) sum -= row.values[i]! * x[row.columns[i]!]!;
    x[k] = sum / row.values[0]!;
  }
  return x;
}

/** Solve R' t = s by position, in place. Dependent columns are left zero. */
export function solveTransposed(factor: Factor, s: Float64Array): Float64Array {
  for (let k = 0; k < factor.columnCount; k += 1) {
    if (s[k] === 0) continue;
    const row = factor.upper[k];
    if (row === null || row === undefined) {
      s[k] = 0;
      continue;
    }
    const t = s[k]! / row.values[0]!;
    s[k] = t;
    for (let i = 1; i < row.columns.length; i += 1) s[row.columns[i]!]! -= row.values[i]! * t;
  }
  return s;
}

/**
 * The squared length of R^-T a for a row `a` of the factored matrix: its leverage. `scratch` is a zero vector by
 * position and is left zero.
 */
export function leverage(factor: Factor, row: SparseRow, scratch: Float64Array): number {
  const { columns, values } = row;
  if (columns.length === 0) return 0;
  for (let i = 0; i < columns.length; i += 1) scratch[columns[i]!] = values[i]!;
  let sum = 0;
  for (let k = columns[0]!; k < factor.columnCount; k += 1) {
    if (scratch[k] === 0) continue;
    const upper = factor.upper[k];
    if (upper !== null && upper !== undefined) {
      const t = scratch[k]! / upper.values[0]!;
      sum += t * t;
      for (let i = 1; i < upper.columns.length; i += 1) scratch[upper.columns[i]!]! -= upper.values[i]! * t;
    }
    scratch[k] = 0;
  }
  return sum;
}

/** One direction for each dependent column, by position: moving along it changes no row. */
export function unknownDirections(factor: Factor): Float64Array[] {
  return factor.deficient.map((position) => {
    const direction = new Float64Array(factor.columnCount);
    direction[position] = 1;
    return backSubstitute(factor, direction, new Set([position]));
  });
}
