// Numbers that know how far each independent cause moves them: forward differentiation, first order.

import type { Sway } from "../model/quantity.ts";

/**
 * A number with its sway: metres (or its own unit) of change for each cause moved by one standard uncertainty.
 * Two numbers that share a cause stay correlated through every sum and product below.
 */
export interface Uncertain {
  readonly value: number;
  readonly sway: Sway;
}

const still: Sway = new Map();

/** A number without doubt. */
export function exact(value: number): Uncertain {
  return { value, sway: still };
}

/** A number moved by one cause: `u` is its standard uncertainty. */
export function swayedBy(value: number, cause: number, u: number): Uncertain {
  return { value, sway: u === 0 ? still : new Map([[cause, u]]) };
}

/** y = f(x1, x2, ...): its value, and the slope dy/dxi beside each xi. JCGM 100:2008 5.1 (MEMORY), kept by cause. */
export function follows(value: number, parts: readonly (readonly [slope: number, of: Uncertain])[]): Uncertain {
  const live = parts.filter(([slope, of]) => slope !== 0 && of.sway.size > 0);
  const [only] = live;
  if (only === undefined) return exact(value);
  if (live.length === 1 && only[0] === 1) return { value, sway: only[1].sway };
  const sway = new Map<number, number>();
  for (const [slope, of] of live)
    for (const [cause, by] of of.sway) sway.set(cause, (sway.get(cause) ?? 0) + slope * by);
  return { value, sway };
}

export function sum(...terms: readonly Uncertain[]): Uncertain {
  return follows(
    terms.reduce((total, term) => total + term.value, 0),
    terms.map((term) => [1, term] as const),
  );
}

export function difference(a: Uncertain, b: Uncertain): Uncertain {
  return follows(a.value - b.value, [
    [1, a],
    [-1, b],
  ]);
}

export function product(a: Uncertain, b: Uncertain): Uncertain {
  return follows(a.value * b.value, [
    [b.value, a],
    [a.value, b],
  ]);
}

export function quotient(a: Uncertain, b: Uncertain): Uncertain {
  return follows(a.value / b.value, [
    [1 / b.value, a],
    [-a.value / (b.value * b.value), b],
  ]);
}

export function scaled(a: Uncertain, by: number): Uncertain {
  return follows(a.value * by, [[by, a]]);
}

/** sqrt(a^2 + b^2). Where both are 0 the slope is taken as 0: no direction is better than another. */
export function hypotenuse(a: Uncertain, b: Uncertain): Uncertain {
  const value = Math.hypot(a.value, b.value);
  if (value === 0) return exact(0);
  return follows(value, [
    [a.value / value, a],
    [b.value / value, b],
  ]);
}

/** Root of a sum of squares of several numbers, each weighted: sqrt(w (x1^2 + x2^2 + ...)). */
export function rootOfSquares(terms: readonly Uncertain[], weight = 1): Uncertain {
  const value = Math.sqrt(weight * terms.reduce((total, term) => total + term.value * term.value, 0));
  if (value === 0) return exact(0);
  return follows(
    value,
    terms.map((term) => [(weight * term.value) / value, term] as const),
  );
}

/** Mean of repeated measurements. */
export function mean(terms: readonly Uncertain[]): Uncertain {
  return scaled(sum(...terms), 1 / terms.length);
}
