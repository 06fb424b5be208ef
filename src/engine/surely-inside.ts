// Whether places lie so far inside what is wanted that their doubt need not be worked out to tell.

import type { NumberBook, Read } from "../model/quantity.ts";
import type { CandidatePlace } from "../model/reading.ts";
import type { LiveRequirement } from "./requirement.ts";
import { doubtOfNumber, spread } from "./spread.ts";

/** So many times its doubt inside, a requirement is met with a probability of 1 to thirteen digits (Phi(7.5) = 1 - 3e-14). */
const plenty = 7.5;

interface Inside {
  readonly places: readonly CandidatePlace[];
  readonly requirement: LiveRequirement;
  /** Numbers that any of the margins read. */
  readonly noted: ReadonlySet<number>;
  readonly context: { readonly read: Read; readonly book: NumberBook };
}

/**
 * Whether all places are met beyond doubt when the least margin is `least`. With u^2 = g' V g, u is at most the sum
 * over the numbers of |g| u, whatever ties them together, and each |g| is at most the place's `steepest`. False where
 * that does not tell.
 */
export function allSurelyInside(least: number, { places, requirement, noted, context }: Inside): boolean {
  if (requirement.sense === "between" || !(least > 0)) return false;
  let steepest = 0;
  let methods = requirement.bound.u;
  for (const place of places) {
    if (place.steepest === undefined) return false;
    steepest = Math.max(steepest, place.steepest);
    methods = Math.max(methods, requirement.bound.u + (place.methodU ?? 0));
  }
  let doubts = 0;
  for (const id of noted) doubts += doubtOfNumber(context.book, id);
  const bound = spread(requirement.bound.value, context.read, context.book).u;
  return least > plenty * (bound + methods + steepest * doubts);
}
