// Whether a place lies so far inside what is wanted that its doubt need not be worked out to tell.

import type { NumberBook, Read } from "../model/quantity.ts";
import type { CandidatePlace } from "../model/reading.ts";
import type { LiveRequirement } from "./requirement.ts";
import { spread, sumOfDoubts } from "./spread.ts";

/** So many times its doubt inside, a requirement is met with a probability of 1 to thirteen digits (Phi(7.5) = 1 - 3e-14). */
const plenty = 7.5;

/**
 * A test of places by their plain margin, or null for a requirement it cannot tell of. With u^2 = g' V g, u is at most
 * the sum over the numbers of |g| u, whatever ties them together; each |g| is at most the place's `steepest`.
 */
export function surelyInside(
  requirement: LiveRequirement,
  read: Read,
  book: NumberBook,
): ((place: CandidatePlace, margin: number) => boolean) | null {
  if (requirement.sense === "between") return null;
  const bound = spread(requirement.bound.value, read, book).u + requirement.bound.u;
  return ({ value, steepest, methodU }, margin) => {
    if (steepest === undefined || !(margin > plenty * bound)) return false;
    return margin > plenty * (bound + (methodU ?? 0) + steepest * sumOfDoubts(value, read, book));
  };
}
