// Reads what the plot was measured with: compass and wheel, the tolerance of building, and how the plan lies to north.

import { child, textOf, type Node } from "./node.ts";
import { readNumber, readNumberText } from "./numbers.ts";
import { firstAt, type Texts } from "./sources.ts";
import type { Dimension } from "../model/quantity.ts";
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
