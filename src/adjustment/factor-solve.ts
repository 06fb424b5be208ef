// What a QR factor is used for: Q'b, Q t, R x = y, R' t = s, and the directions in which nothing is known.

import type { Factor } from "./householder.ts";
import { reflectVector } from "./reflection.ts";
import type { SparseRow } from "./reflection.ts";

/** Q [t; 0], where `t` stands by position; one entry per row of the factored matrix. */
export function apply(factor: Factor, t: Float64Array): Float64Array {
  const out = new Float64Array(factor.rowCount);
  for (let k = 0; k < factor.columnCount; k += 1) {
    if (factor.slots[k]! >= 0) out[factor.slots[k]!] = t[k]!;
  }
  for (let r = factor.reflections.length - 1; r >= 0; r -= 1) reflectVector(factor.reflections[r]!, out);
  return out;
}

/** The least squares solution of J x = b, by position; `b` by row. Dependent columns are given zero. */
export function solve(factor: Factor, b: Float64Array): Float64Array {
  const turned = b.slice();
  for (const reflection of factor.reflections) reflectVector(reflection, turned);
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
    const { columns, first, cells, start } = row;
    let sum = x[k]!;
    for (let i = first + 1, at = start + 1; i < columns.length; i += 1, at += 1) sum -= cells[at]! * x[columns[i]!]!;
    x[k] = sum / cells[start]!;
  }
  return x;
}

/** Take t_k times row k of R from the entries of `s` that follow position k. */
function subtractRow({ columns, first, cells, start }: SparseRow, t: number, s: Float64Array): void {
  for (let i = first + 1, at = start + 1; i < columns.length; i += 1, at += 1) s[columns[i]!]! -= cells[at]! * t;
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
    s[k]! /= row.cells[row.start]!;
    subtractRow(row, s[k]!, s);
  }
  return s;
}

/** The leverage of each row of the factored matrix: the squared length of R^-T a. */
export function leverages(factor: Factor, rows: readonly SparseRow[]): Float64Array {
  const waiting = new Float64Array(factor.columnCount);
  const local = new Float64Array(factor.columnCount);
  const out = new Float64Array(rows.length);
  rows.forEach(({ columns, first, cells, start }, slot) => {
    for (let i = first, at = start; i < columns.length; i += 1, at += 1) waiting[columns[i]!] = cells[at]!;
    let sum = 0;
    let k = columns[first] ?? factor.columnCount;
    while (k < factor.columnCount) {
      if (waiting[k] === 0) k += 1;
      else {
        const part = throughFront(factor, k, { waiting, local });
        sum += part.sum;
        k = part.next;
      }
    }
    out[slot] = sum;
  });
  return out;
}

/**
 * One front of the solution of R' t = a, from position k: the rows of R that share their columns are worked through on
 * a dense copy of `waiting`, which is left zero up to `next`.
 */
function throughFront(
  factor: Factor,
  k: number,
  work: { readonly waiting: Float64Array; readonly local: Float64Array },
) {
  const { waiting, local } = work;
  const head = factor.upper[k];
  if (head === null || head === undefined) {
    waiting[k] = 0;
    return { sum: 0, next: k + 1 };
  }
  const { columns, first } = head;
  for (let i = first; i < columns.length; i += 1) {
    local[i] = waiting[columns[i]!]!;
    waiting[columns[i]!] = 0;
  }
  let sum = 0;
  let next = k;
  for (let row: SparseRow | null | undefined = head; row?.columns === columns; row = factor.upper[next]) {
    const { cells, start, first: place } = row;
    const t = local[place]! / cells[start]!;
    sum += t * t;
    for (let i = place + 1, at = start + 1; i < columns.length; i += 1, at += 1) local[i]! -= cells[at]! * t;
    next += 1;
  }
  for (let i = first + next - k; i < columns.length; i += 1) waiting[columns[i]!] = local[i]!;
  return { sum, next };
}

/** One direction for each dependent column, by position: moving along it changes no row. */
export function unknownDirections(factor: Factor): Float64Array[] {
  return factor.deficient.map((position) => {
    const direction = new Float64Array(factor.columnCount);
    direction[position] = 1;
    return backSubstitute(factor, direction, new Set([position]));
  });
}
