// Bounds and requirements of a card's row: data -> numbers in base units, or what they follow from.

import type { Bound, Requirement } from "../model/card.ts";
import type { Dimension } from "../model/quantity.ts";
import { parseQuantity } from "../model/units.ts";

/** Collects what is wrong with a card, by path inside it. */
export type Complain = (path: readonly (string | number)[], expected: string, got: string, hint: string) => void;
type Path = readonly (string | number)[];
type Data = Readonly<Record<string, unknown>>;

export function isData(value: unknown): value is Data {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** A number with unit in a stated dimension; null with a complaint where it cannot be read. */
export function readNumber(value: unknown, dimension: Dimension, path: Path, complain: Complain): number | null {
  const parsed = parseQuantity(value, dimension);
  if (parsed.ok) return parsed.value;
  complain(path, parsed.expected, JSON.stringify(value) ?? "nothing", parsed.hint);
  return null;
}

const anyOrder: readonly Dimension[] = [
  "length",
  "slope",
  "mass",
  "flow",
  "rain",
  "time",
  "speed",
  "pressure",
  "density",
  "area",
  "volume",
  "angle",
  "voltage",
  "temperature",
  "share",
  "infiltration",
  "force",
];

/** A number and the dimension that its unit tells; a bare number has none. */
export interface AnyNumber {
  readonly value: number;
  readonly dimension: Dimension | null;
}

/** A number whose dimension only its unit tells (conditions of a row). */
export function readAnyNumber(value: unknown, path: Path, complain: Complain): AnyNumber | null {
  if (typeof value === "number" && Number.isFinite(value)) return { value, dimension: null };
  // Degrees may be meant for a slope too; as an angle they fit both, which the property itself then tells apart.
  const order = /(?:deg|°)\s*$/.test(String(value)) ? (["angle"] as const) : anyOrder;
  for (const dimension of order) {
    const parsed = parseQuantity(value, dimension);
    if (parsed.ok) return { value: parsed.value, dimension };
  }
  complain(path, "a number with its unit", JSON.stringify(value) ?? "nothing", "write 90 mm, 1 in 40, 7 days, 12");
  return null;
}

/** `{must|should: {at_least|at_most|between: ...}}` -> Requirement. */
export function readRequirement(
  value: unknown,
  dimension: Dimension,
  path: Path,
  complain: Complain,
): Requirement | null {
  if (!isData(value)) return refuse(value, path, complain);
  const sense = (["at_least", "at_most"] as const).find((key) => key in value);
  if (sense) {
    const bound = readBound(value[sense], dimension, [...path, sense], complain);
    return bound && { sense, bound };
  }
  const pair = value["between"];
  if (!Array.isArray(pair) || pair.length !== 2) return refuse(value, path, complain);
  const low = readBound(pair[0], dimension, [...path, "between", 0], complain);
  const high = readBound(pair[1], dimension, [...path, "between", 1], complain);
  return low && high && { sense: "between", low, high };
}

function refuse(value: unknown, path: Path, complain: Complain): null {
  complain(path, "at_least, at_most or between", JSON.stringify(value) ?? "nothing", "write must: {at_least: 1.2 m}");
  return null;
}

/** One bound in any of the card's forms. */
export function readBound(value: unknown, dimension: Dimension, path: Path, complain: Complain): Bound | null {
  if (!isData(value)) {
    const number = readNumber(value, dimension, path, complain);
    return number === null ? null : { from: "number", value: number };
  }
  if (typeof value["table"] === "string") return readTableName(value["table"], path, complain);
  if (typeof value["plan"] === "string") return { from: "plan", property: value["plan"] };
  if (typeof value["of"] === "string") return readTimes(value, value["of"], dimension, path, complain);
  if (typeof value["over"] === "string") {
    const times = readAnyNumber(value["times"], [...path, "times"], complain);
    return times === null ? null : { from: "over", times: times.value, over: value["over"] };
  }
  complain(
    path,
    "a number, {table: name.column}, {times, of}, {times, over} or {plan: role.property}",
    JSON.stringify(value),
    "no other form of a limit is known",
  );
  return null;
}

function readTableName(text: string, path: Path, complain: Complain): Bound | null {
  const [table, column, more] = text.split(".");
  if (table && column && more === undefined) return { from: "table", table, column };
  complain(path, "table name and column, as animals.rise_ordinary", text, "one dot between table and column");
  return null;
}

function readTimes(value: Data, of: string, dimension: Dimension, path: Path, complain: Complain): Bound | null {
  const times = readAnyNumber(value["times"], [...path, "times"], complain);
  if (times === null) return null;
  const upTo =
    value["up_to"] === undefined ? null : readNumber(value["up_to"], dimension, [...path, "up_to"], complain);
  const downTo =
    value["down_to"] === undefined ? null : readNumber(value["down_to"], dimension, [...path, "down_to"], complain);
  return {
    from: "times",
    times: times.value,
    of,
    ...(upTo === null ? {} : { upTo }),
    ...(downTo === null ? {} : { downTo }),
  };
}

/** The shorter reach of pairs: so many times a number of one of the two; null where the card gives none. */
export function readNarrowed(value: unknown, complain: Complain): Extract<Bound, { readonly from: "times" }> | null {
  if (value === undefined) return null;
  const bound = readBound(value, "length", ["narrowed"], complain);
  if (bound === null || bound.from === "times") return bound;
  complain(
    ["narrowed"],
    "{times, of}",
    JSON.stringify(value),
    "a shorter reach is so many times a number of one of the two",
  );
  return null;
}
