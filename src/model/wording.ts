// How a value is worded: in the unit of the trade, rounded to its doubt.

import type { Dimension } from "./quantity.ts";

const deg = Math.PI / 180;
const hour = 3600;
const day = 24 * hour;

/** Unit words in which a value may be printed instead of its base unit. */
export type ShownIn =
  | "m"
  | "mm"
  | "%"
  | "1 in"
  | "deg"
  | "t"
  | "kg"
  | "days"
  | "l/s"
  | "mm/h"
  | "m2"
  | "m3"
  | "kN/m2"
  | "kV"
  | "mph"
  | "count"
  | "h"
  | "t/m3";

const defaultShown: Readonly<Record<Dimension, ShownIn>> = {
  length: "m",
  area: "m2",
  volume: "m3",
  angle: "deg",
  slope: "%",
  share: "%",
  count: "count",
  time: "days",
  speed: "mph",
  rain: "mm/h",
  flow: "l/s",
  mass: "t",
  force: "count",
  pressure: "kN/m2",
  density: "t/m3",
  infiltration: "mm/h",
  voltage: "kV",
  temperature: "count",
};
const shownFactor: Readonly<Record<ShownIn, number>> = {
  m: 1,
  mm: 1000,
  "%": 100,
  "1 in": 1,
  deg: 1 / deg,
  t: 0.001,
  kg: 1,
  days: 1 / day,
  h: 1 / hour,
  "l/s": 1000,
  "mm/h": hour * 1000,
  m2: 1,
  m3: 1,
  "kN/m2": 0.001,
  kV: 0.001,
  mph: 1 / 0.44704,
  count: 1,
  "t/m3": 0.001,
};

/** How a value is to be printed. `u` is its standard uncertainty; `decimals` overrides the rounding to the doubt. */
export interface Wording {
  readonly u?: number;
  readonly shownIn?: string | undefined;
  readonly decimals?: number;
}

/** Decimals such that one step of the last figure is at most half of the 95 % half-width. */
function decimalsFor(spread: number, unit: ShownIn): number {
  const most = unit === "m" ? 2 : unit === "mm" || unit === "count" ? 0 : 2;
  const least = unit === "m" ? 2 : 0;
  if (!(spread > 0)) return unit === "m" ? 2 : unit === "mm" || unit === "count" || unit === "days" ? 0 : 1;
  return Math.min(most, Math.max(least, Math.ceil(-Math.log10(spread / 2) - 1e-9)));
}

/** Scale from base unit to the printed one, for mark lines and axes. */
export function shown(dimension: Dimension, shownIn?: string): { readonly unit: ShownIn; readonly factor: number } {
  const unit = (shownIn !== undefined && shownIn in shownFactor ? shownIn : defaultShown[dimension]) as ShownIn;
  return { unit, factor: shownFactor[unit] };
}

/** A slope is worded in degrees as the angle that it makes: the arctangent of rise over run. */
function asAngle(value: number, dimension: Dimension, unit: ShownIn): number {
  return dimension === "slope" && unit === "deg" ? Math.atan(value) : value;
}

/** Words for a value, rounded to its doubt: `1.04 m`, `1 in 94`, `12.1 %`, `90 mm`, `3`. */
export function words(value: number, dimension: Dimension, wording: Wording = {}): string {
  const { unit, factor } = shown(dimension, wording.shownIn);
  if (unit === "1 in") return oneIn(value);
  const decimals = wording.decimals ?? decimalsFor(2 * (wording.u ?? 0) * factor, unit);
  const text = trimZero((asAngle(value, dimension, unit) * factor).toFixed(decimals), unit);
  if (unit === "count") return text;
  return unit === "days" ? `${text} ${text === "1" ? "day" : "days"}` : `${text} ${unit}`;
}

/** `1 in 94`, `1 in 6.5`, `1 in 50 uphill`, `level`; with `more` further decimals. */
function oneIn(slope: number, more = 0): string {
  if (Math.abs(slope) < 1e-6) return "level";
  const n = 1 / Math.abs(slope);
  const text = n.toFixed((n >= 10 ? 0 : 1) + more).replace(/\.0+$/, "");
  return slope < 0 ? `1 in ${text} uphill` : `1 in ${text}`;
}

function trimZero(text: string, unit: ShownIn): string {
  const plain = /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
  return unit === "m" ? plain : plain.replace(/(\.\d*?)0+$/, "$1").replace(/\.$/, "");
}

/** Words for found and wanted with as many figures as it takes to tell them apart (at most three more). */
export function wordsApart(
  found: number,
  wanted: number,
  dimension: Dimension,
  wording: Wording = {},
): readonly [string, string] {
  const { unit, factor } = shown(dimension, wording.shownIn);
  let decimals = wording.decimals ?? decimalsFor(2 * (wording.u ?? 0) * factor, unit);
  const last = decimals + 3;
  if (unit === "1 in") return oneInApart(found, wanted);
  const [a, b] = [found, wanted].map((value) => asAngle(value, dimension, unit) * factor) as [number, number];
  while (decimals < last && found !== wanted && a.toFixed(decimals) === b.toFixed(decimals)) decimals += 1;
  return [words(found, dimension, { ...wording, decimals }), words(wanted, dimension, { ...wording, decimals })];
}

function oneInApart(found: number, wanted: number): readonly [string, string] {
  const most = 3;
  const more = [0, 1, 2].find((decimals) => oneIn(found, decimals) !== oneIn(wanted, decimals)) ?? most;
  return found === wanted ? [oneIn(found), oneIn(wanted)] : [oneIn(found, more), oneIn(wanted, more)];
}
