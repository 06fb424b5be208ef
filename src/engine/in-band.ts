// Whether a number, with its doubt, lies in the band that a condition names.

import type { Condition } from "../model/card.ts";
import type { NumberBook, Read } from "../model/quantity.ts";
import type { CandidatePlace } from "../model/reading.ts";
import { oneSided } from "./judge.ts";
import { doubtsRead, type Spread, spread } from "./spread.ts";

export type Band = Extract<Condition, { over?: number }>;
export type InBand = "yes" | "no" | "perhaps";

interface Edges {
  readonly low: number;
  readonly high: number;
  readonly inside: (x: number) => boolean;
}

function edgesOf(band: Band): Edges {
  const low = band.over ?? band.from ?? -Infinity;
  const high = band.upTo ?? band.under ?? Infinity;
  const above = (x: number) => (band.over === undefined ? x >= low - 1e-9 : x > low + 1e-9);
  const below = (x: number) => (band.upTo === undefined ? x < high - 1e-9 : x <= high + 1e-9);
  return { low, high, inside: (x) => above(x) && (high === Infinity || below(x)) };
}

/** Whether a number lies in a band; `perhaps` where its doubt (95 %) reaches the edge. */
export function inBand(band: Band, number: Pick<Spread, "value" | "u">): InBand {
  const reach = oneSided.usual * number.u;
  const { low, high, inside } = edgesOf(band);
  if (reach === 0) return inside(number.value) ? "yes" : "no";
  const surely = inside(number.value - reach) && inside(number.value + reach);
  if (surely) return "yes";
  return number.value + reach < low || number.value - reach > high ? "no" : "perhaps";
}

/** Far from an edge is so many times the most that the doubt can be, and this much more (in base units). */
const plenty = 7.5;
const clearly = 1e-6;

/**
 * The same of a candidate place. Its doubt is worked out only where an edge is near: it is at most the sum of the
 * doubts of the numbers that it reads, times the place's `steepest` (see `surely-inside.ts`).
 */
export function placeInBand(
  band: Band,
  place: CandidatePlace,
  { read, book }: { readonly read: Read; readonly book: NumberBook },
): InBand {
  if (place.steepest !== undefined) {
    const { value, doubts } = doubtsRead(place.value, read, book);
    const reach = plenty * ((place.methodU ?? 0) + place.steepest * doubts) + clearly;
    const { low, high, inside } = edgesOf(band);
    if (inside(value - reach) && inside(value + reach)) return "yes";
    if (value + reach < low || value - reach > high) return "no";
  }
  return inBand(band, spread(place.value, read, book, place.methodU));
}
