// Can this vehicle get from here to there with at most so many changes of direction? A coarse lattice is quick to find
// a way; a fine one with a slightly smaller vehicle is slow to say no. What is found is made exact and checked exactly.

import { prepareEnvelopes } from "./checked.ts";
import { envelopesOf } from "./envelope.ts";
import { latticeWords } from "./lattice.ts";
import type { LatticeStep } from "./lattice.ts";
import type { ManoeuvreAnswer, ManoeuvreQuestion } from "./manoeuvre.ts";
import { directionChanges } from "./pose.ts";
import type { Arc } from "./pose.ts";
import { frontsOf, latticeFor, pose } from "./posed.ts";
import type { Posed } from "./posed.ts";
import { slidesThrough } from "./sliding.ts";
import { standsFree, sweepPath } from "./sweep.ts";
import { exactWay } from "./exact-way.ts";
import { growFronts } from "./two-sided.ts";

/** First try, and the lattice on which "no" is said. */
export const coarse: LatticeStep = { cell: 0.1, headings: 72 };
export const fine: LatticeStep = { cell: 0.05, headings: 144 };

/** Where the fine lattice finds a way only for the smaller vehicle, and none can be made exact: double resolution. */
export const finest: LatticeStep = { cell: 0.025, headings: 288 };

/**
 * How much smaller the vehicle is taken for a "no", m: one cell of the fine lattice. Empirical, not a theorem: no "no"
 * so found has been contradicted at double resolution.
 */
export const deflation = 0.05;

/** Largest lattice that is searched, in words of 32 poses: three such sets of bits stay below half a gigabyte. */
const mostWords = 30e6;

/**
 * Answers one question. "possible" comes with an exact path that passed the exact sweep at the wanted clearance;
 * "not-within" is a search on a 5 cm / 2.5 degree lattice with the vehicle 5 cm smaller all round; "not-however-many"
 * is a vehicle that does not fit at an end, or would be cut off even if it could slide sideways. The same question has
 * always the same answer; it does not change when the plan is moved or turned.
 */
export function findManoeuvre(question: ManoeuvreQuestion): ManoeuvreAnswer {
  const posed = pose(question);
  const misfit = misfitOf(posed);
  if (misfit !== null) return { answer: "not-however-many", why: misfit };
  if (latticeWords(latticeFor(posed, coarse)) > mostWords) return { answer: "cannot-tell", why: "too large" };
  const first = bestOn(posed, coarse, question.mostChanges);
  const leastEver = posed.firstGear === posed.lastGear ? 0 : 1;
  if (first !== null && directionChanges(first) <= leastEver) return possible(question, first, leastEver);
  if (latticeWords(latticeFor(posed, fine)) > mostWords) {
    return first === null ? { answer: "cannot-tell", why: "too large" } : possible(question, first, leastEver);
  }
  return settle(question, posed, first);
}

/** Whether the vehicle does not fit where it starts or where it is to end. */
function misfitOf(posed: Posed): "start" | "goal" | null {
  if (!posed.checked.every((one) => standsFree(one, { x: 0, y: 0, heading: 0 }))) return "start";
  return posed.checked.every((one) => standsFree(one, posed.end)) ? null : "goal";
}

/** With the fine lattice: fewer changes than found so far, or none at all? */
function settle(question: ManoeuvreQuestion, posed: Posed, first: readonly Arc[] | null): ManoeuvreAnswer {
  const most = first === null ? question.mostChanges : directionChanges(first) - 2;
  const lattice = latticeFor(posed, fine);
  const smaller = frontsOf(posed, lattice, deflation);
  growFronts(smaller, most);
  if (smaller.met === null) {
    if (first !== null) return possible(question, first, directionChanges(first));
    if (!slidesThrough(lattice, posed.envelopes, posed.end)) return { answer: "not-however-many", why: "cut off" };
    return { answer: "not-within", changes: question.mostChanges };
  }
  const lowerBound = smaller.met;
  const better = bestOn(posed, fine, most) ?? exactWay(posed, smaller, most);
  const best = better ?? first ?? lastTry(posed, most);
  return best === null ? { answer: "cannot-tell", why: "too close" } : possible(question, best, lowerBound);
}

function lastTry(posed: Posed, most: number): readonly Arc[] | null {
  return latticeWords(latticeFor(posed, finest)) > mostWords ? null : bestOn(posed, finest, most);
}

/** Exact path of the fewest changes that one lattice finds, up to `most`; null where it finds none. */
export function bestOn(posed: Posed, step: LatticeStep, most: number): readonly Arc[] | null {
  const fronts = frontsOf(posed, latticeFor(posed, step), 0);
  growFronts(fronts, most);
  return exactWay(posed, fronts, most);
}

function possible(question: ManoeuvreQuestion, path: readonly Arc[], lowerBound: number): ManoeuvreAnswer {
  const changes = directionChanges(path);
  const bare = prepareEnvelopes(envelopesOf(question.vehicle, question, Math.min(0, question.margin)));
  const swept = sweepPath(bare, question.start, path);
  // Checked at the margin already; in the plan's own coordinates only rounding could differ.
  if (swept.is === "rejected") return { answer: "cannot-tell", why: "too close" };
  return { answer: "possible", changes, lowerBound: Math.min(lowerBound, changes), path, tightest: swept.tightest };
}
