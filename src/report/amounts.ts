// Numbers as they are said in the field: in the unit a reading is shown in, rounded to their doubt.

import type { Finding } from "../model/finding.ts";
import { shown, words } from "../model/units.ts";
import type { Dimension } from "../model/quantity.ts";

/** A unit for printing: value in base units x factor = printed number. */
export interface Scale {
  readonly unit: string;
  readonly factor: number;
  readonly dimension: Dimension;
  /** Word of the one table of units, which also says `1 in 94` for a fall. */
  readonly shownIn: string;
}

/** Half-width of the interval that holds 19 times in 20, in standard uncertainties. */
export const nineteenInTwenty = 2;
/** A fall that is said as `1 in 94` has its doubt and its mark line in this unit. */
const fall = { unit: "mm in a metre", factor: 1000 };

/** The unit in which a finding's numbers are printed; null where it answers yes or no and has none. */
export function scaleOf({ dimension, shown_in }: Pick<Finding, "dimension" | "shown_in">): Scale | null {
  if (shown_in === "yes or no") return null;
  const { unit, factor } = shown(dimension, shown_in);
  const said = unit === "count" ? { unit: "", factor } : unit === "1 in" ? fall : { unit, factor };
  return { ...said, dimension, shownIn: unit };
}

/** Millimetres in place of metres, for what is less than a hand's breadth. */
export function finer(scale: Scale, value: number): Scale {
  return scale.shownIn === "m" && Math.abs(value) < 0.1 ? { ...scale, unit: "mm", factor: 1000, shownIn: "mm" } : scale;
}

/** Words for a value in base units; `u` is its standard uncertainty. Rounded to its doubt. */
export function amount(value: number, scale: Scale, u = 0): string {
  return words(value, scale.dimension, { shownIn: scale.shownIn, u, ...decimals(value, scale, u) });
}

/** Metres: fewer figures where the doubt is large, or where a number asked for is round and large. */
function decimals(value: number, scale: Scale, u: number): { readonly decimals?: number } {
  if (scale.shownIn !== "m") return {};
  const half = nineteenInTwenty * u;
  if (half >= 0.5) return { decimals: half >= 5 ? 0 : 1 };
  return u === 0 && Math.abs(value) >= 10 && Math.abs(value - Math.round(value)) < 1e-9 ? { decimals: 0 } : {};
}

/** A difference: as `amount`, but a fall is said in mm in a metre, never `1 in n`. */
export function difference(value: number, scale: Scale, u = 0): string {
  if (scale.shownIn !== "1 in") return amount(value, scale, u);
  const number = (value * scale.factor).toFixed(decimalsOf(Math.max(Math.abs(u * scale.factor), 0.01)));
  return withUnit(number, scale.unit);
}

/** The half-width of a doubt in one or two figures that do not make it smaller. */
export function doubtWords(u: number, scale: Scale): string {
  const half = nineteenInTwenty * Math.abs(u) * scale.factor;
  if (!(half > 0)) return "nothing";
  const step = 10 ** Math.floor(Math.log10(half) - 0.3);
  const up = Math.ceil(half / step - 1e-9) * step;
  return withUnit(up.toFixed(decimalsOf(step)), scale.unit);
}

function decimalsOf(step: number): number {
  return Math.min(9, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
}

function withUnit(number: string, unit: string): string {
  return unit === "" ? number : `${number} ${unit}`;
}
