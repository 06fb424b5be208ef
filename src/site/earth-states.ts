// The same earth in its three states: as it lies in the ground, loose in a heap, rolled into a fill.

import type { Table, TableValue } from "../model/card.ts";

/** A volume or a ratio with its standard uncertainty. */
export interface Sized {
  readonly value: number;
  readonly u: number;
}

/** How a cubic metre dug changes: loose and rolled cubic metres for one as it lay; `words` say of what soil. */
export interface EarthFactors {
  readonly words: string;
  readonly loose: Sized;
  readonly rolled: Sized;
}

/** Row of the table that stands for soil that nobody has named, or that the table does not know. */
const unnamed = "common earth";

/** Standard uncertainty of a ratio whose source gives no band: half of a tenth of it (PRACTICE, as the table says). */
const usualShare = 0.05;

/**
 * Factors for a soil in the plan's words: the row with the longest name that stands in them, else that of common earth.
 * What that row does not have is taken from common earth too. Null where the table has neither.
 */
export function earthFactors(soil: string | null, densities: Table | undefined): EarthFactors | null {
  const rows = densities?.rows;
  const named = [...(rows?.keys() ?? [])]
    .filter((name) => ` ${soil ?? ""} `.includes(` ${name} `) && rows?.get(name)?.["bulking"] !== undefined)
    .sort((a, b) => b.length - a.length)[0];
  const [own, common] = [rows?.get(named ?? unnamed), rows?.get(unnamed)];
  const loose = sized(own?.["bulking"] ?? common?.["bulking"]);
  const rolled = sized(own?.["shrinkage"] ?? common?.["shrinkage"]);
  return loose && rolled ? { words: named ?? unnamed, loose, rolled } : null;
}

function sized(value: TableValue | undefined): Sized | null {
  return value ? { value: value.value, u: value.u > 0 ? value.u : usualShare * value.value } : null;
}

/** Product of two numbers that share no cause: u^2 = (a u_b)^2 + (b u_a)^2. JCGM 100:2008 5.1.2, MEMORY. */
export function times(a: Sized, b: Sized): Sized {
  return { value: a.value * b.value, u: Math.hypot(a.value * b.u, b.value * a.u) };
}

/** Quotient of two numbers that share no cause: (u/q)^2 = (u_a/a)^2 + (u_b/b)^2. JCGM 100:2008 5.1.2, MEMORY. */
export function over(a: Sized, b: Sized): Sized {
  const value = a.value / b.value;
  return { value, u: Math.hypot(a.u / b.value, (value * b.u) / b.value) };
}
