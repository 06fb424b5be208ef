// Reads what the plot was measured with: tape, level, compass, the tolerance of building, and how the plan lies to north.

import { maximumPermissibleError, tapeClasses } from "../adjustment/tape.ts";
import type { Reel } from "./measuring.ts";
import { child, textOf, type Node } from "./node.ts";
import { readNumber, readNumberText } from "./numbers.ts";
import { firstAt, type Texts } from "./sources.ts";
import type { PlanTape } from "../model/plan.ts";
import type { Cause, Dimension } from "../model/quantity.ts";
import type { Troubles } from "./troubles.ts";
import type { Customs, PracticeName } from "./practice.ts";

/** Half-widths that the plan gives in place of common practice, with their places checked. */
export function ownFigures(texts: Texts, troubles: Troubles): Readonly<Partial<Record<PracticeName, number>>> {
  const written: readonly (readonly [PracticeName, Dimension, ...string[]])[] = [
    ["tape", "length", "survey", "tape", "plus_minus"],
    ["levelling", "length", "survey", "levelling", "plus_minus"],
    ["compass", "angle", "survey", "compass", "plus_minus"],
    ["coordinates", "length", "survey", "coordinates", "plus_minus"],
    ["buildPosition", "length", "build", "place"],
    ["buildHeight", "length", "build", "size"],
    ["buildLevel", "length", "build", "level"],
    ["buildFall", "slope", "build", "fall"],
    ["buildLayer", "length", "build", "layer"],
  ];
  const own: Partial<Record<PracticeName, number>> = {};
  for (const [name, dimension, ...keys] of written) {
    const number = readNumber(firstAt(texts, ...keys), dimension, troubles);
    if (number !== null) own[name] = Math.abs(number.value);
  }
  return own;
}

const reelWords = "the tape's own error";

/** Length of tape that an error is stated for where the plan does not give one, metres. */
const usualLength = 30;

/** The reel of the plan's tapes, or null where nothing is said of it. */
export function reelOf(texts: Texts, customs: Customs, troubles: Troubles): Reel | null {
  const tape = firstAt(texts, "survey", "tape");
  const node = child(tape, "class");
  const name = textOf(node);
  const found = name === "I" || name === "II" || name === "III" ? tapeClasses[name] : undefined;
  const length = readNumber(child(tape, "length"), "length", troubles)?.value ?? usualLength;
  const longBy = readNumber(child(tape, "long_by"), "length", troubles)?.value ?? 0;
  if (found === undefined && firstAt(texts, "survey", "stations") !== null) {
    customs.assume("the tape's own error is not counted: the plan does not give its class");
  }
  const holder = node ?? tape;
  if (holder === null || !(length > 0) || (found === undefined && longBy === 0)) return null;
  const { place } = holder;
  if (found === undefined) return { place, length, longBy, error: null };
  const words = `${reelWords} (class ${name ?? ""})`;
  return { place, length, longBy, error: { words, greatest: (taped) => maximumPermissibleError(found, taped) } };
}

/** What one more tape would be good for; `causes` are those of the plan, among them the reel's own where it has one. */
export function planTapeOf(texts: Texts, customs: Customs, causes: readonly Cause[]): PlanTape {
  const tape = firstAt(texts, "survey", "tape");
  const name = textOf(child(tape, "class"));
  const cause = causes.find((one) => one.words.startsWith(reelWords));
  const known = cause !== undefined && (name === "I" || name === "II" || name === "III");
  const length = child(tape, "length")?.data;
  return {
    handling: customs.quietU("tape", 0),
    perMetre: customs.quietU("tape", 1) - customs.quietU("tape", 0),
    reach: typeof length === "number" && length > 0 ? length : usualLength,
    reel: known ? { class: name, cause: cause.id } : null,
  };
}

/** Rows of common practice that other instruments put in place of a tape's. */
export function insteadOf(texts: Texts): Readonly<Partial<Record<PracticeName, PracticeName>>> {
  return firstAt(texts, "survey", "tape", "wheel")?.data === true ? { tape: "wheel" } : {};
}

/** Turn of a bearing to the plan's north, radians, to be added to it. */
export type TurnFrom = (north: "grid" | "magnetic" | "true", node: Node) => number | null;

/**
 * Bearing on the plan = true bearing - n, true bearing = magnetic bearing + d, with n the bearing of the plan's north
 * and d the declination, both east positive. Plane geometry.
 */
export function openTurnFrom(texts: Texts, customs: Customs, troubles: Troubles): TurnFrom {
  const earthNorth = readNumber(firstAt(texts, "earth", "north"), "angle", troubles)?.value ?? null;
  const compass = firstAt(texts, "survey", "compass");
  const declination = readDeclination(child(compass, "declination"), troubles);
  return (north, node) => {
    if (north === "grid") return 0;
    if (earthNorth === null)
      customs.assume("the plan's north is taken as true north: the plan does not say under earth how it lies");
    if (north === "true") return -(earthNorth ?? 0);
    if (compass === null) {
      const hint = "write under survey: compass: {plus_minus: 2 deg, declination: 1 deg east}";
      return troubles.report(node, {
        code: "missing-key",
        expected: "a compass under survey, for a magnetic bearing",
        got: "none",
        hint,
      });
    }
    if (declination === null) customs.assume("magnetic north is taken as true north: the plan gives no declination");
    return (declination ?? 0) - (earthNorth ?? 0);
  };
}

/** `1 deg east`: radians, east positive; null where none is written. */
function readDeclination(node: Node | null, troubles: Troubles): number | null {
  if (node === null) return null;
  const match = /^(.*?)\s*\b(east|west)$/.exec(textOf(node) ?? "");
  const written = readNumberText(node, match?.[1] ?? node.data, { dimension: "angle", troubles });
  return written === null ? null : written.value * (match?.[2] === "west" ? -1 : 1);
}

/** Angle from the plan's north to true north, radians clockwise; null where the plan does not say. */
export function trueNorthOf(texts: Texts, troubles: Troubles): number | null {
  const north = readNumber(firstAt(texts, "earth", "north"), "angle", troubles);
  return north === null ? null : -north.value;
}
