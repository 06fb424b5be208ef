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
import { takenOver } from "./hand-over.ts";
import { slidesThrough } from "./sliding.ts";
import { standsFree, sweepPath } from "./sweep.ts";
import { exactWay, manyTries } from "./exact-way.ts";
import { growFronts, release } from "./two-sided.ts";

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

/**
 * The same on the coarse lattice, m: two cells. Empirical: with so much, the coarse lattice has never missed a way of as
 * few changes as the fine one found at its own deflation (tests); with one cell it did on 1 pad of 400, with one and a
 * half on 1 of 4,500 (seed 7700387).
 */
export const coarseDeflation = 0.2;

/** Largest lattice that is searched, in words of 32 poses: three such sets of bits stay below half a gigabyte. */
const mostWords = 30e6;

/**
 * Answers one question. "possible" comes with an exact path that passed the exact sweep at the wanted clearance;
 * "not-within" is a search on a 5 cm / 2.5 degree lattice with the vehicle 5 cm smaller all round (where that cannot
 * tell, 2.5 cm / 1.25 degrees and 2.5 cm smaller); "not-however-many"
 * is a vehicle that does not fit at an end, or would be cut off even if it could slide sideways. The same question has
 * always the same answer; it does not change when the plan is moved or turned. Paths `known` from stricter questions are
 * taken over where they hold, so that a looser question is never answered worse.
 */
export function findManoeuvre(question: ManoeuvreQuestion, known: readonly (readonly Arc[])[] = []): ManoeuvreAnswer {
  const posed = pose(question);
  const misfit = misfitOf(posed);
  if (misfit !== null) return { answer: "not-however-many", why: misfit };
  const taken = takenOver(question, known);
  if (latticeWords(latticeFor(posed, coarse)) > mostWords && taken === null) return tooLarge;
  const leastEver = posed.firstGear === posed.lastGear ? 0 : 1;
  const most = taken === null ? question.mostChanges : directionChanges(taken) - 2;
  const first = (most >= leastEver ? bestOn(posed, coarse, most) : null) ?? taken;
  if (first !== null && directionChanges(first) <= leastEver) return possible(question, first, leastEver);
  return settle(question, posed, first);
}

const tooLarge: ManoeuvreAnswer = { answer: "cannot-tell", why: "too large" };

/** Whether the vehicle does not fit where it starts or where it is to end. */
function misfitOf(posed: Posed): "start" | "goal" | null {
  if (!posed.checked.every((one) => standsFree(one, { x: 0, y: 0, heading: 0 }))) return "start";
  return posed.checked.every((one) => standsFree(one, posed.end)) ? null : "goal";
}

/** Fewer changes than found so far, or none at all? The coarse lattice is asked first: mostly it can tell. */
function settle(question: ManoeuvreQuestion, posed: Posed, first: readonly Arc[] | null): ManoeuvreAnswer {
  const most = first === null ? question.mostChanges : directionChanges(first) - 2;
  if (!findsWay(posed, { step: coarse, deflation: coarseDeflation, most })) return none(question, posed, first);
  if (latticeWords(latticeFor(posed, fine)) > mostWords) {
    return first === null ? tooLarge : possible(question, first, posed.firstGear === posed.lastGear ? 0 : 1);
  }
  const smaller = frontsOf(posed, latticeFor(posed, fine), deflation);
  growFronts(smaller, most);
  const lowerBound = smaller.met;
  const better = lowerBound === null ? null : (bestOn(posed, fine, most) ?? exactWay(posed, smaller, most));
  release(smaller);
  if (lowerBound === null) return none(question, posed, first);
  const best = better ?? first;
  return best === null ? lookClosest(question, posed, lowerBound) : possible(question, best, lowerBound);
}

/**
 * The fine lattice has a way for the smaller vehicle, and none that can be made exact. At double resolution the vehicle
 * need be smaller by half as much only, which settles some; ways for it are starts for more exact ones than usual.
 */
function lookClosest(question: ManoeuvreQuestion, posed: Posed, lowerBound: number): ManoeuvreAnswer {
  const close: ManoeuvreAnswer = { answer: "cannot-tell", why: "too close" };
  const lattice = latticeFor(posed, finest);
  if (latticeWords(lattice) > mostWords) return close;
  const { mostChanges: most } = question;
  const fronts = frontsOf(posed, lattice, finest.cell);
  growFronts(fronts, most);
  const isNone = fronts.met === null;
  const way = exactWay(posed, fronts, most, manyTries);
  release(fronts);
  if (isNone) return none(question, posed, null);
  const best = way ?? bestOn(posed, finest, most);
  return best === null ? close : possible(question, best, lowerBound);
}

/** There is no way of fewer changes than that of the first path; or none at all, and then why. */
function none(question: ManoeuvreQuestion, posed: Posed, first: readonly Arc[] | null): ManoeuvreAnswer {
  if (first !== null) return possible(question, first, directionChanges(first));
  if (isCutOff(posed)) return { answer: "not-however-many", why: "cut off" };
  return { answer: "not-within", changes: question.mostChanges };
}

/** Why no number of changes helps: it does not fit at an end, or is cut off; null where it might. */
export function neverWhy(posed: Posed): "start" | "goal" | "cut off" | null {
  return misfitOf(posed) ?? (isCutOff(posed) ? "cut off" : null);
}

/** Whether not even a sliding vehicle gets through. The coarse lattice can mostly tell, one way or the other. */
function isCutOff(posed: Posed): boolean {
  const { envelopes, end } = posed;
  const on = (step: LatticeStep) => latticeFor(posed, step);
  if (slidesThrough(on(coarse), envelopes, end, 0)) return false;
  if (!slidesThrough(on(coarse), envelopes, end)) return true;
  return latticeWords(on(fine)) <= mostWords && !slidesThrough(on(fine), envelopes, end);
}

/** A search for a mere way over a lattice, with the vehicle smaller by `deflation` (m), of up to `most` changes. */
export interface WaySearch {
  readonly step: LatticeStep;
  readonly deflation: number;
  readonly most: number;
}

/** Whether a lattice has a way; it need not be one that can be driven. */
export function findsWay(posed: Posed, search: WaySearch): boolean {
  const fronts = frontsOf(posed, latticeFor(posed, search.step), search.deflation);
  growFronts(fronts, search.most);
  const { met } = fronts;
  release(fronts);
  return met !== null && met <= search.most;
}

/** Exact path of the fewest changes that one lattice finds, up to `most`; null where it finds none. */
export function bestOn(posed: Posed, step: LatticeStep, most: number): readonly Arc[] | null {
  const fronts = frontsOf(posed, latticeFor(posed, step), 0);
  growFronts(fronts, most);
  const way = exactWay(posed, fronts, most);
  release(fronts);
  return way;
}

function possible(question: ManoeuvreQuestion, path: readonly Arc[], lowerBound: number): ManoeuvreAnswer {
  const changes = directionChanges(path);
  const bare = prepareEnvelopes(envelopesOf(question.vehicle, question, Math.min(0, question.margin)));
  const swept = sweepPath(bare, question.start, path);
  // Checked at the margin already; in the plan's own coordinates only rounding could differ.
  if (swept.is === "rejected") return { answer: "cannot-tell", why: "too close" };
  return { answer: "possible", changes, lowerBound: Math.min(lowerBound, changes), path, tightest: swept.tightest };
}
