// How much room there is round a vehicle on its way: decided at the clearance that is wanted first, then bracketed.

import { prepareEnvelopes } from "./checked.ts";
import { envelopesOf } from "./envelope.ts";
import { bestOn, coarse, coarseDeflation, deflation, findsWay, fine, neverWhy } from "./find-manoeuvre.ts";
import { type LatticeStep, latticeWords } from "./lattice.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import type { Arc } from "./pose.ts";
import { frontsOf, latticeFor, pose, type Posed } from "./posed.ts";
import { exactWay } from "./exact-way.ts";
import { standsFree, whereRejected } from "./sweep.ts";
import { type Fronts, growFronts, release } from "./two-sided.ts";

/** The question at a clearance (m); null where it cannot be asked at that one. */
export type AskRoom = (clearance: number) => ManoeuvreQuestion | null;

export interface Room {
  /** Largest clearance at which a path was found and checked exactly, m; null where there was none. */
  readonly proven: number | null;
  /** Exact arcs from the start at the proven clearance. */
  readonly path: readonly Arc[] | null;
  /** Clearance above which the fine lattice finds no way even for a slightly smaller vehicle, m; null where it was not looked for or not found. */
  readonly noMoreThan: number | null;
  /** Why no number of moves helps at the wanted clearance; null where more moves might, or where it was found. */
  readonly never: "start" | "goal" | "cut off" | null;
  /** True where the ground is too large for the search. */
  readonly tooLarge: boolean;
}

/** Steps above the wanted clearance, m, the first of which that has a way will do: more than a usual survey's doubt. */
const stepsUp = [0.25, 0.1, 0.05] as const;
/** Steps below the wanted clearance that are tried until there is a way, m. */
const stepsDown = [0.1, 0.25, 0.5, 1] as const;
/** The bracket is narrowed to this, m; far below what is wanted, to a part of what is short. */
const fineness = 0.04;
const coarseness = 0.3;
/** Steps below what the fine lattice finds, in search of a path that can be made exact, m. */
const stepsToExact = [0, 0.02, 0.06, 0.15, 0.4] as const;
/** Largest lattice that is searched for a plan's manoeuvre, in words of 32 poses: about a second's work. */
const mostWords = 12e6;

interface Tried {
  readonly path: readonly Arc[] | null;
  /** True where the fine lattice was searched and found no way. */
  readonly none: boolean;
}

/** Room at and about the wanted clearance (m). What is found is exact; "no more than" is empirical, like every "no". */
export function roomAbout(ask: AskRoom, wanted: number): Room {
  const first = ask(wanted);
  if (first && tooLarge(first)) return { proven: null, path: null, noMoreThan: null, never: null, tooLarge: true };
  // Where there is plenty of room one search tells.
  const ample = quickWay(ask, wanted + stepsUp[0]);
  if (ample) return { proven: wanted + stepsUp[0], path: ample, noMoreThan: null, never: null, tooLarge: false };
  const at = tryRoom(ask, wanted);
  return at.path ? climb(ask, wanted, at.path) : descend(ask, wanted, at.none);
}

function tooLarge(question: ManoeuvreQuestion): boolean {
  return latticeWords(latticeFor(pose(question), fine)) > mostWords;
}

/** With a path at the wanted clearance: that path may have more room than was asked for, or another has. */
function climb(ask: AskRoom, wanted: number, path: readonly Arc[]): Room {
  for (const up of stepsUp.slice(1)) {
    const found = keeps(ask, wanted + up, path) ? path : quickWay(ask, wanted + up);
    if (found) return { proven: wanted + up, path: found, noMoreThan: null, never: null, tooLarge: false };
  }
  return { proven: wanted, path, noMoreThan: null, never: null, tooLarge: false };
}

function neverAt(ask: AskRoom, clearance: number): Room["never"] {
  const question = ask(clearance);
  return question && neverWhy(pose(question));
}

/** Whether a path, found for one clearance, will do for another. */
function keeps(ask: AskRoom, clearance: number, path: readonly Arc[]): boolean {
  const question = ask(clearance);
  if (!question) return false;
  const { vehicle, start, margin } = question;
  return whereRejected(prepareEnvelopes(envelopesOf(vehicle, question, margin)), start, path) === null;
}

/**
 * Floods alone, which are quick, say how far down there is a way: the coarse lattice roughly, the fine one closely.
 * Only there a path is made exact.
 */
function descend(ask: AskRoom, wanted: number, none: boolean): Room {
  let high = wanted;
  let ceiling = none ? wanted + deflation : null;
  const known: Known = { coarseNone: Infinity, held: null };
  const down = stepsDown.find((step) => {
    const found = floods(ask, wanted - step, coarse) === true;
    if (!found) known.coarseNone = wanted - step;
    return found;
  });
  let low = wanted - (down ?? stepsDown[stepsDown.length - 1]!);
  let reached = down !== undefined;
  while (high - low > Math.max(fineness, (wanted - high) * coarseness)) {
    const middle = (low + high) / 2;
    const way = wayAt(ask, middle, known);
    if (way.is) {
      low = middle;
      reached = true;
    } else {
      high = middle;
      ceiling = way.ceiling ?? ceiling;
    }
  }
  const found = reached ? exactBelow(ask, low, known) : null;
  letGo(known);
  return {
    proven: found?.proven ?? null,
    path: found?.path ?? null,
    noMoreThan: ceiling,
    never: neverAt(ask, wanted),
    tooLarge: false,
  };
}

/** What a descent has learnt, so that no lattice is flooded twice. */
interface Known {
  /** The coarse lattice has no way at this clearance, m, nor at any above it: a larger body goes nowhere that a smaller one does not. */
  coarseNone: number;
  /** The fine lattice's fronts at the last clearance at which they met. */
  held: { readonly clearance: number; readonly fronts: Fronts } | null;
}

function letGo(known: Known): void {
  if (known.held) release(known.held.fronts);
  known.held = null;
}

/**
 * Whether there is a way over the fine lattice at a clearance; where there is none, above which clearance a slightly
 * smaller vehicle has none either. The coarse lattice is asked first: with a way, or without one for a vehicle smaller by
 * its own allowance, it has settled the question.
 */
function wayAt(ask: AskRoom, clearance: number, known: Known): { readonly is: boolean; readonly ceiling?: number } {
  const question = ask(clearance);
  if (!question) return { is: false };
  const posed = posedFree(question);
  if (!posed) return { is: false, ceiling: clearance + deflation };
  const most = question.mostChanges;
  if (clearance < known.coarseNone) {
    if (findsWay(posed, { step: coarse, deflation: 0, most })) return { is: true };
    known.coarseNone = clearance;
  }
  if (!findsWay(posed, { step: coarse, deflation: coarseDeflation, most })) return { is: false, ceiling: clearance };
  const fronts = frontsOf(posed, latticeFor(posed, fine), 0);
  growFronts(fronts, most);
  if (fronts.met !== null && fronts.met <= most) {
    letGo(known);
    known.held = { clearance, fronts };
    return { is: true };
  }
  release(fronts);
  return { is: false, ceiling: clearance + deflation };
}

/** Whether a lattice finds a way at a clearance; null where the question cannot be asked. */
function floods(ask: AskRoom, clearance: number, step: LatticeStep): boolean | null {
  const question = ask(clearance);
  if (!question) return null;
  const posed = posedFree(question);
  if (!posed) return false;
  return findsWay(posed, { step, deflation: 0, most: question.mostChanges });
}

/** The first exact path from a clearance downwards. */
function exactBelow(
  ask: AskRoom,
  from: number,
  known: Known,
): { readonly proven: number; readonly path: readonly Arc[] } | null {
  for (const down of stepsToExact) {
    const question = ask(from - down);
    const posed = question && posedFree(question);
    if (!posed || !question) continue;
    const { mostChanges } = question;
    const quick = from - down < known.coarseNone ? bestOn(posed, coarse, mostChanges) : null;
    const { held } = known;
    const fronts = held?.clearance === from - down ? held.fronts : null;
    const path = quick ?? (fronts ? exactWay(posed, fronts, mostChanges) : bestOn(posed, fine, mostChanges));
    if (path) return { proven: from - down, path };
  }
  return null;
}

/** A way on the coarse lattice, which is quick; a coarse "no" says nothing. */
export function quickWay(ask: AskRoom, clearance: number, step: LatticeStep = coarse): readonly Arc[] | null {
  const question = ask(clearance);
  const posed = question && posedFree(question);
  return posed && question ? bestOn(posed, step, question.mostChanges) : null;
}

/** A way on the fine lattice: several times slower, and comes within some centimetres of the least room. */
export const closeWay = (ask: AskRoom, clearance: number): readonly Arc[] | null => quickWay(ask, clearance, fine);

function tryRoom(ask: AskRoom, clearance: number): Tried {
  const question = ask(clearance);
  if (!question) return { path: null, none: false };
  const posed = posedFree(question);
  if (!posed) return { path: null, none: true };
  const quick = bestOn(posed, coarse, question.mostChanges);
  if (quick) return { path: quick, none: false };
  const smaller = { step: coarse, deflation: coarseDeflation, most: question.mostChanges };
  if (!findsWay(posed, smaller)) return { path: null, none: true };
  const fronts = frontsOf(posed, latticeFor(posed, fine), 0);
  growFronts(fronts, question.mostChanges);
  const none = fronts.met === null || fronts.met > question.mostChanges;
  const path = none ? null : exactWay(posed, fronts, question.mostChanges);
  release(fronts);
  return { path, none };
}

/** The question made ready; null where the vehicle does not fit at its start or its end. */
function posedFree(question: ManoeuvreQuestion): Posed | null {
  const posed = pose(question);
  const ends = [{ x: 0, y: 0, heading: 0 }, posed.end];
  return ends.every((end) => posed.checked.every((one) => standsFree(one, end))) ? posed : null;
}
