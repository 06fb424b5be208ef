// The places of a way where it is as wide as it is anywhere else, and the stretches where it is wider.

import { type Feature, isQuantity, type Properties, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { planLength } from "./drain-runs.ts";

/** A stretch of a way: from and to along its middle line, and its width, m. `words` is empty for the whole way. */
export interface LivePlace {
  readonly from: (read: Read) => number;
  readonly to: (read: Read) => number;
  readonly width: (read: Read) => number;
  readonly words: string;
}

/** The usual width of a way drawn by its middle line; null for other things. */
export function wayWidth(way: Feature): ((read: Read) => number) | null {
  const width = propertyOf(way, "width");
  return way.shape?.form === "line" && isQuantity(width) ? (read) => read(width) : null;
}

/** The way as a whole, and its wider stretches. */
export function passingPlaces(way: Feature): readonly LivePlace[] {
  const usual = wayWidth(way);
  if (way.shape?.form !== "line" || !usual) return [];
  const { line } = way.shape;
  const whole: LivePlace = { from: () => 0, to: (read) => planLength(line, read), width: usual, words: "" };
  const widened = propertyOf(way, "widened");
  const stretches = (Array.isArray(widened) ? widened : []).flatMap((one, i): readonly LivePlace[] => {
    const { from, to, width } = one as Properties;
    if (!isQuantity(from) || !isQuantity(to) || !isQuantity(width)) return [];
    const words = `, at its wider stretch ${i + 1}`;
    return [{ from: (read) => read(from), to: (read) => read(to), width: (read) => read(width), words }];
  });
  return [whole, ...stretches];
}
