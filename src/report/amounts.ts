// Numbers as they are said in the field: the unit that suits their size, rounded to their doubt.

import { baseUnit, words } from "../model/units.ts";
import type { Dimension } from "../model/quantity.ts";
import { clean } from "./clean.ts";

/** A unit for printing: value in base units x factor = printed number. */
export interface Scale {
  readonly unit: string;
  readonly factor: number;
  /** Set where the one table of units words the value better (`1 in 94`). */
  readonly dimension?: Dimension;
  readonly shownIn?: string;
}

/** Half-width of the interval that holds 19 times in 20, in standard uncertainties. */
export const nineteenInTwenty = 2;

const dimensionOf: ReadonlyMap<string, Dimension> = new Map([
  [baseUnit.length, "length"],
  [baseUnit.area, "area"],
  [baseUnit.volume, "volume"],
  [baseUnit.slope, "slope"],
]);

/** Small and large unit for each base unit, and the base value from which the large one is used. */
const pairs: Readonly<Record<string, { readonly from: number; readonly small: Scale; readonly large: Scale }>> = {
  m: { from: 0.1, small: { unit: "mm", factor: 1000 }, large: { unit: "m", factor: 1 } },
  m3: { from: 0.01, small: { unit: "litres", factor: 1000 }, large: { unit: "m3", factor: 1 } },
  "m/m": { from: 0.05, small: { unit: "mm in a metre", factor: 1000 }, large: { unit: "%", factor: 100 } },
  s: { from: 48 * 3600, small: { unit: "h", factor: 1 / 3600 }, large: { unit: "days", factor: 1 / 86_400 } },
  "m/s": { from: 0.001, small: { unit: "mm/h", factor: 3_600_000 }, large: { unit: "m/s", factor: 1 } },
  "m3/s": { from: 0.5, small: { unit: "l/s", factor: 1000 }, large: { unit: "m3/s", factor: 1 } },
  kg: { from: 1000, small: { unit: "kg", factor: 1 }, large: { unit: "t", factor: 0.001 } },
  N: { from: 1000, small: { unit: "N", factor: 1 }, large: { unit: "kN", factor: 0.001 } },
  V: { from: 1000, small: { unit: "V", factor: 1 }, large: { unit: "kV", factor: 0.001 } },
};
const single: Readonly<Record<string, Scale>> = {
  m2: { unit: "m2", factor: 1 },
  rad: { unit: "deg", factor: 180 / Math.PI },
  "1": { unit: "", factor: 1 },
  Pa: { unit: "kN/m2", factor: 0.001 },
  "kg/m3": { unit: "t/m3", factor: 0.001 },
};

/** The unit in which all of these values (base units) are printed together. */
export function scaleFor(unit: string, values: readonly number[]): Scale {
  const largest = Math.max(0, ...values.filter(Number.isFinite).map(Math.abs));
  const pair = Object.hasOwn(pairs, unit) ? pairs[unit] : undefined;
  const dimension = dimensionOf.get(unit);
  const scale = pair
    ? largest > 0 && largest < pair.from
      ? pair.small
      : pair.large
    : Object.hasOwn(single, unit)
      ? single[unit]
      : undefined;
  if (!scale) return { unit: clean(unit), factor: 1 };
  return dimension ? { ...scale, dimension, ...shownIn(dimension, scale.unit) } : scale;
}

function shownIn(dimension: Dimension, unit: string): { readonly shownIn?: string } {
  if (dimension === "slope") return { shownIn: unit === "%" ? "%" : "1 in" };
  return unit === "litres" ? {} : { shownIn: unit };
}

/** Words for a value in base units; `u` is its standard uncertainty. Rounded to its doubt. */
export function amount(value: number, scale: Scale, u = 0): string {
  if (scale.dimension && scale.shownIn)
    return words(value, scale.dimension, { shownIn: scale.shownIn, u, ...decimals(value, scale, u) });
  return bare(value, scale, u);
}

/** Metres: whole ones where the doubt is metres or the number is round and large; else the usual two or three figures. */
function decimals(value: number, scale: Scale, u: number): { readonly decimals?: number } {
  if (scale.shownIn !== "m") return {};
  const half = nineteenInTwenty * u;
  if (half >= 0.5) return { decimals: half >= 5 ? 0 : 1 };
  return u === 0 && Math.abs(value) >= 10 && Math.abs(value - Math.round(value)) < 1e-9 ? { decimals: 0 } : {};
}

/** A difference or a doubt: as `amount`, but a fall is said in mm in a metre or in parts of a hundred, never `1 in n`. */
export function difference(value: number, scale: Scale, u = 0): string {
  return scale.shownIn === "1 in" ? bare(value, scale, u) : amount(value, scale, u);
}

/** The half-width of a doubt in one or two figures that do not make it smaller. */
export function doubtWords(u: number, scale: Scale): string {
  const half = nineteenInTwenty * Math.abs(u) * scale.factor;
  if (!(half > 0)) return "nothing";
  const step = 10 ** Math.floor(Math.log10(half) - 0.3);
  const up = Math.ceil(half / step - 1e-9) * step;
  return withUnit(up.toFixed(decimalsOf(step)), scale.unit);
}

function bare(value: number, scale: Scale, u: number): string {
  const shown = value * scale.factor;
  const step = u > 0 ? Math.abs(u * scale.factor) : Math.max(Math.abs(shown) / 1000, 1e-9);
  const text = shown.toFixed(Math.min(6, decimalsOf(step)));
  const plain = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return withUnit(plain === "-0" ? "0" : plain, scale.unit);
}

function decimalsOf(step: number): number {
  return Math.min(9, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
}

function withUnit(number: string, unit: string): string {
  return unit === "" ? number : `${number} ${unit}`;
}
