// The one table of units: reading text with a unit into base units. (How a value is worded stands in `wording.ts`.)
// Base units are SI; a slope is a ratio (rise over run), an angle is in radians, a share is 0 to 1.

import type { Dimension } from "./quantity.ts";

export { shown, type ShownIn, type Wording, words, wordsApart } from "./wording.ts";

/** Base unit of every dimension, as it stands in JSON output. */
export const baseUnit: Readonly<Record<Dimension, string>> = {
  length: "m",
  area: "m2",
  volume: "m3",
  angle: "rad",
  slope: "m/m",
  share: "1",
  count: "1",
  time: "s",
  speed: "m/s",
  rain: "m/s",
  flow: "m3/s",
  mass: "kg",
  force: "N",
  pressure: "Pa",
  density: "kg/m3",
  infiltration: "m/s",
  voltage: "V",
  temperature: "degC",
};

interface Unit {
  readonly dimension: Dimension;
  readonly factor: number;
}
const deg = Math.PI / 180;
const hour = 3600;
const day = 24 * hour;

/** Every unit word that a plan or a card may use. International foot 0.3048 m, pound 0.45359237 kg (exact by definition, 1959 agreement). */
const units: Readonly<Record<string, Unit>> = {
  m: { dimension: "length", factor: 1 },
  cm: { dimension: "length", factor: 0.01 },
  mm: { dimension: "length", factor: 0.001 },
  km: { dimension: "length", factor: 1000 },
  ft: { dimension: "length", factor: 0.3048 },
  in: { dimension: "length", factor: 0.0254 },
  yd: { dimension: "length", factor: 0.9144 },
  m2: { dimension: "area", factor: 1 },
  "m²": { dimension: "area", factor: 1 },
  ha: { dimension: "area", factor: 10_000 },
  acre: { dimension: "area", factor: 4046.8564224 },
  m3: { dimension: "volume", factor: 1 },
  "m³": { dimension: "volume", factor: 1 },
  l: { dimension: "volume", factor: 0.001 },
  litre: { dimension: "volume", factor: 0.001 },
  litres: { dimension: "volume", factor: 0.001 },
  gal: { dimension: "volume", factor: 0.003785411784 },
  deg: { dimension: "angle", factor: deg },
  "°": { dimension: "angle", factor: deg },
  rad: { dimension: "angle", factor: 1 },
  "%": { dimension: "share", factor: 0.01 },
  s: { dimension: "time", factor: 1 },
  min: { dimension: "time", factor: 60 },
  h: { dimension: "time", factor: hour },
  d: { dimension: "time", factor: day },
  day: { dimension: "time", factor: day },
  days: { dimension: "time", factor: day },
  week: { dimension: "time", factor: 7 * day },
  weeks: { dimension: "time", factor: 7 * day },
  month: { dimension: "time", factor: 30.436875 * day },
  months: { dimension: "time", factor: 30.436875 * day },
  year: { dimension: "time", factor: 365.2425 * day },
  years: { dimension: "time", factor: 365.2425 * day },
  "m/s": { dimension: "speed", factor: 1 },
  "km/h": { dimension: "speed", factor: 1 / 3.6 },
  mph: { dimension: "speed", factor: 0.44704 },
  "ft/s": { dimension: "speed", factor: 0.3048 },
  "mm/h": { dimension: "rain", factor: 0.001 / hour },
  "in/h": { dimension: "rain", factor: 0.0254 / hour },
  "l/s": { dimension: "flow", factor: 0.001 },
  "m3/s": { dimension: "flow", factor: 1 },
  "m3/h": { dimension: "flow", factor: 1 / hour },
  "l/min": { dimension: "flow", factor: 0.001 / 60 },
  kg: { dimension: "mass", factor: 1 },
  t: { dimension: "mass", factor: 1000 },
  lb: { dimension: "mass", factor: 0.45359237 },
  N: { dimension: "force", factor: 1 },
  kN: { dimension: "force", factor: 1000 },
  Pa: { dimension: "pressure", factor: 1 },
  kPa: { dimension: "pressure", factor: 1000 },
  "kN/m2": { dimension: "pressure", factor: 1000 },
  "kN/m²": { dimension: "pressure", factor: 1000 },
  "N/mm2": { dimension: "pressure", factor: 1e6 },
  bar: { dimension: "pressure", factor: 1e5 },
  "t/m3": { dimension: "density", factor: 1000 },
  "t/m³": { dimension: "density", factor: 1000 },
  "kg/m3": { dimension: "density", factor: 1 },
  "mm/s": { dimension: "infiltration", factor: 0.001 },
  V: { dimension: "voltage", factor: 1 },
  kV: { dimension: "voltage", factor: 1000 },
  degC: { dimension: "temperature", factor: 1 },
  C: { dimension: "temperature", factor: 1 },
};

export type ParsedQuantity =
  | { readonly ok: true; readonly value: number; readonly plusMinus: number | null }
  | {
      readonly ok: false;
      readonly code: "not-a-number" | "decimal-comma" | "wrong-unit" | "out-of-range";
      readonly expected: string;
      readonly hint: string;
    };

const number = String.raw`[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?`;
const plusMinusSign = /\s*(?:±|\+-|\+\/-)\s*/;

/** Example of how each dimension is written, for problems. */
export const writtenLike: Readonly<Record<Dimension, string>> = {
  length: "a length such as 3.6 (metres), 450 mm, 12 ft or 6 ft 4 in",
  area: "an area such as 25 m2",
  volume: "a volume such as 6 m3 or 900 litres",
  angle: "an angle such as 8 deg",
  slope: "a fall such as 1 in 40 or 2.5 %",
  share: "a share such as 35 % or 0.35",
  count: "a whole number",
  time: "a time such as 10 min, 3 h or 7 days",
  speed: "a speed such as 40 mph or 60 km/h",
  rain: "a rainfall intensity such as 50 mm/h",
  flow: "a flow such as 6 l/s",
  mass: "a mass such as 7.5 t or 900 kg",
  force: "a force such as 20 kN",
  pressure: "a pressure such as 20 kN/m2",
  density: "a density such as 2.2 t/m3",
  infiltration: "a soaking rate such as 1e-5 m/s",
  voltage: "a voltage such as 11 kV or 230 V",
  temperature: "a temperature such as 5 degC",
};

const bareAllowed: ReadonlySet<Dimension> = new Set(["length", "share", "count"]);

/**
 * Reads a number or a text with unit into base units. Bare numbers are metres for a length and themselves for a
 * share or a count; everything else names its unit. `± x` after it is the 95 % half-width.
 */
export function parseQuantity(input: unknown, dimension: Dimension): ParsedQuantity {
  if (typeof input === "number") return parseBare(input, dimension);
  if (typeof input !== "string") return fail("not-a-number", dimension, "write a number, or a number with its unit");
  const text = input.trim().replace(/[\u2212\u2013]/g, "-");
  if (/\d,\d/.test(text))
    return fail("decimal-comma", dimension, `write a point, not a comma: ${text.replace(/(\d),(\d)/g, "$1.$2")}`);
  const [head = "", tail, more] = text.split(plusMinusSign);
  if (more !== undefined) return fail("not-a-number", dimension, "only one ± may follow a value");
  const value = parseOne(head.trim(), dimension);
  if (typeof value !== "number") return value;
  if (tail === undefined) return { ok: true, value, plusMinus: null };
  const spread = parseSpread(tail.trim(), head.trim(), dimension);
  if (typeof spread !== "number") return spread;
  if (spread < 0)
    return fail("out-of-range", dimension, "write the ± without a minus: it is how far off the value may be");
  return { ok: true, value, plusMinus: spread };
}

function parseBare(value: number, dimension: Dimension): ParsedQuantity {
  if (!Number.isFinite(value)) return fail("not-a-number", dimension, "write a finite number");
  if (!bareAllowed.has(dimension)) return fail("wrong-unit", dimension, `name the unit: ${writtenLike[dimension]}`);
  return { ok: true, value, plusMinus: null };
}

/** A spread may leave out its unit (`450 mm ± 5`): then it takes the unit of the value. */
function parseSpread(tail: string, head: string, dimension: Dimension): number | ParsedQuantity {
  if (!new RegExp(`^${number}$`).test(tail)) return parseOne(tail, dimension);
  const unit = /[^\d.\s+-].*$/.exec(head.replace(new RegExp(`^${number}`), ""))?.[0]?.trim() ?? "";
  return parseOne(unit === "" || dimension === "slope" ? tail : `${tail} ${unit}`, dimension);
}

function parseOne(text: string, dimension: Dimension): number | ParsedQuantity {
  if (dimension === "slope") return parseSlope(text);
  const imperial = dimension === "length" ? parseFeet(text) : null;
  if (imperial !== null) return imperial;
  const match = new RegExp(`^(${number})\\s*(.*)$`).exec(text);
  if (!match) return fail("not-a-number", dimension, `"${shown(text)}" does not begin with a number`);
  const value = Number(match[1]);
  const word = (match[2] ?? "").trim();
  if (word === "") {
    const bare = parseBare(value, dimension);
    return bare.ok ? bare.value : bare;
  }
  const unit = unitFor(word, dimension);
  if (!unit) return fail("wrong-unit", dimension, `"${shown(word)}" is not a unit of ${dimension} here`);
  return value * unit.factor;
}

function unitFor(word: string, dimension: Dimension): Unit | null {
  const unit = Object.hasOwn(units, word) ? units[word] : undefined;
  if (!unit) return null;
  if (unit.dimension === dimension) return unit;
  if (unit.dimension === "speed" && dimension === "infiltration") return unit;
  return null;
}

/** `6 ft 4 in`, `5'2"`, `5' 2 1/2"`, `3/4 in`. */
function parseFeet(text: string): number | null {
  const match = /^(\d+(?:\.\d+)?)\s*(?:ft|'|′)\s*(?:(\d+(?:\.\d+)?)(?:\s+(\d+)\/(\d+))?\s*(?:in|"|″)?)?$/.exec(text);
  if (match) {
    const inches = Number(match[2] ?? 0) + (match[3] ? Number(match[3]) / Number(match[4]) : 0);
    // Twelve inches and more behind feet are a slip: one of the two was meant otherwise.
    return inches >= 12 ? null : Number(match[1]) * 0.3048 + inches * 0.0254;
  }
  const inches = /^(?:(\d+(?:\.\d+)?)\s+)?(\d+)\/(\d+)\s*(?:in|"|″)$/.exec(text);
  if (inches) return (Number(inches[1] ?? 0) + Number(inches[2]) / Number(inches[3])) * 0.0254;
  const plain = /^(\d+(?:\.\d+)?)\s*(?:"|″)$/.exec(text);
  return plain ? Number(plain[1]) * 0.0254 : null;
}

/** `1 in 40`, `1:40`, `2.5 %`, `1/8 in per ft`, `25 mm/m`, `8 deg`, `0` (level). */
function parseSlope(text: string): number | ParsedQuantity {
  const ratio = new RegExp(`^(${number})\\s*(?::|in)\\s*(${number})$`).exec(text);
  if (ratio && Number(ratio[2]) !== 0) return Number(ratio[1]) / Number(ratio[2]);
  const percent = new RegExp(`^(${number})\\s*%$`).exec(text);
  if (percent) return Number(percent[1]) / 100;
  const perFoot = /^(?:(\d+)\/(\d+)|(\d+(?:\.\d+)?))\s*in(?:\s*per\s*|\s*\/\s*)ft$/.exec(text);
  if (perFoot) return (perFoot[1] ? Number(perFoot[1]) / Number(perFoot[2]) : Number(perFoot[3])) / 12;
  const perMetre = new RegExp(`^(${number})\\s*mm\\s*(?:/|per)\\s*m$`).exec(text);
  if (perMetre) return Number(perMetre[1]) / 1000;
  const angle = new RegExp(`^(${number})\\s*(?:deg|°)$`).exec(text);
  if (angle) return Math.tan(Number(angle[1]) * deg);
  if (/^0+(?:\.0+)?$/.test(text)) return 0;
  return fail("wrong-unit", "slope", `"${shown(text)}" is not a fall; write 1 in 40, 2.5 % or 1/8 in per ft`);
}

/** Most letters of what was written that are told again. */
const mostShown = 48;
const shown = (text: string): string => (text.length > mostShown ? `${text.slice(0, mostShown)}...` : text);

function fail(
  code: "not-a-number" | "decimal-comma" | "wrong-unit" | "out-of-range",
  dimension: Dimension,
  hint: string,
): ParsedQuantity & { ok: false } {
  return { ok: false, code, expected: writtenLike[dimension], hint };
}
