// The smallest size of a ground on which a vehicle can do what it must, with a path for it that was checked exactly.
// A coarse lattice says roughly where it lies; its path is then squeezed: bent a little, again and again, to fit a ground
// that is a little smaller, which costs a small part of a search and gets below what any lattice can tell. Only then the
// fine lattice is asked whether there is another way in still less.

import { bestOn, coarse, deflation, findsWay, fine, finest } from "./find-manoeuvre.ts";
import type { LatticeStep } from "./lattice.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import { type Arc, posesAlong } from "./pose.ts";
import { pose, type Posed } from "./posed.ts";
import { refine } from "./refine.ts";
import { standsFree, whereRejected } from "./sweep.ts";
import { wallsOf } from "./walls.ts";

/** The question at a size (m). A larger size must contain every smaller one, in the frame of the same start pose. */
export type AskSize = (size: number) => ManoeuvreQuestion;

/** Sizes among which the smallest is looked for, m. */
export interface SizeRange {
  readonly from: number;
  readonly to: number;
  /** Share of the usual steps in which it is looked for; 1 where not given. Clearances want finer ones than lengths. */
  readonly steps?: number;
}

/** A size at which there is a way, m, and the way as exact arcs from the start. */
export interface SizeWithPath {
  readonly size: number;
  readonly path: readonly Arc[];
}

/** Sizes are given in whole centimetres, rounded up. */
const grain = 0.01;
/** How closely the coarse lattice looks, and how much above it a path is looked for, m. */
const roughly = 0.2;
const stepsUp = [0, 0.25, 0.5, 1, 2] as const;
/** Steps by which a path is squeezed, m: the first, and the last that is tried. */
const firstSqueeze = 0.4;
const lastSqueeze = 0.012;
/** How much less the fine lattice is asked for once a path will not be squeezed further, m, and how often. */
const lessBy = [0.08, 0.02] as const;
const mostAsked = 4;
/** Steps below the smallest size at which the fine lattice is asked whether a slightly smaller vehicle finds a way, m. */
const stepsBelow = [0.15, 0.3, 0.6, 1.2, 2.4] as const;

/**
 * Smallest size in a range, m, to a centimetre, from above: at that size the path passed the exact sweep. That nothing
 * less will do is empirical: no way was found on the fine lattice 2 to 8 cm below it, or none that could be made exact. A
 * `known` path saves the first search. Null where no way was found at the largest size.
 */
export function smallestSize(ask: AskSize, range: SizeRange, known?: SizeWithPath): SizeWithPath | null {
  const first = known ? lower(ask, range.from, known) : beginning(ask, range);
  if (first === null) return null;
  let best = squeezed(ask, range, first);
  for (let asked = 0; asked < mostAsked; asked++) {
    const other = fineWay(ask, range, best.size);
    if (other === null) break;
    best = squeezed(ask, range, other);
  }
  return roundedUp(ask, best);
}

/**
 * Largest size below `size`, m, at which not even a vehicle 5 cm smaller all round finds a way on the fine lattice; null
 * where it found one at all that were tried. Empirical, like every "no".
 */
export function noneBelow(ask: AskSize, size: number, from: number): number | null {
  for (const step of stepsBelow) {
    const at = size - step;
    if (at < from) return from;
    if (!floods(ask(at), fine, deflation)) return at;
  }
  return null;
}

/** Whether a path at hand keeps clear on the ground of a question, by the exact sweep. */
export function keepsClear(question: ManoeuvreQuestion, path: readonly Arc[]): boolean {
  return whereRejected(pose(question).checked, { x: 0, y: 0, heading: 0 }, path) === null;
}

/** A first path: where the coarse lattice finds one, or the fine one where the coarse one is blind. */
function beginning(ask: AskSize, range: SizeRange): SizeWithPath | null {
  const about = coarsely(ask, range);
  if (about !== null) {
    for (const up of stepsUp) {
      const size = Math.min(range.to, about + up);
      const path = wayOn(ask(size), coarse);
      if (path) return { size, path };
    }
  }
  const path = largestTried(ask(range.to));
  return path && lower(ask, range.from, { size: range.to, path });
}

/**
 * A path on the largest ground: by the fine lattice; or, where that finds one for a slightly smaller vehicle only, as in
 * a track that leaves hardly any play, by one of double resolution.
 */
function largestTried(question: ManoeuvreQuestion): readonly Arc[] | null {
  const path = wayOn(question, fine);
  if (path || !floods(question, fine, deflation)) return path;
  return wayOn(question, finest);
}

/** Smallest size at which the coarse lattice meets, m; null where it does not at the largest. */
function coarsely(ask: AskSize, { from, to }: SizeRange): number | null {
  if (!floods(ask(to), coarse, 0)) return null;
  let [low, high] = [from, to];
  while (high - low > roughly) {
    const middle = (low + high) / 2;
    if (!floods(ask(middle), coarse, 0)) low = middle;
    else high = middle;
  }
  return high;
}

/** A path of clearly less than the known one, where the coarse lattice has one; else the known one. */
function lower(ask: AskSize, from: number, known: SizeWithPath): SizeWithPath {
  const below = known.size - 2 * roughly;
  const about = below > from ? coarsely(ask, { from, to: below }) : null;
  if (about === null) return known;
  for (const up of stepsUp) {
    const size = about + up;
    if (size >= known.size) return known;
    const path = wayOn(ask(size), coarse);
    if (path) return { size, path };
  }
  return known;
}

/** The path bent to fit smaller and smaller grounds, until even the last small step fails. */
function squeezed(ask: AskSize, { from, steps = 1 }: SizeRange, first: SizeWithPath): SizeWithPath {
  let best = first;
  let step = firstSqueeze * steps;
  while (step >= lastSqueeze * steps) {
    const size = best.size - step;
    const path = size < from ? null : bent(ask(size), best.path);
    if (path) best = { size, path };
    else step /= 2;
  }
  return best;
}

/** A path like this one on the ground of a question; null where none was found near it. */
function bent(question: ManoeuvreQuestion, path: readonly Arc[]): readonly Arc[] | null {
  const posed = pose(question);
  const knots = posesAlong({ x: 0, y: 0, heading: 0 }, path);
  // The end itself, not where the path before it came to within the tolerance: misses must not add up.
  const turns = Math.round(((knots.at(-1)?.heading ?? 0) - posed.end.heading) / (2 * Math.PI));
  knots[knots.length - 1] = { ...posed.end, heading: posed.end.heading + 2 * Math.PI * turns };
  const gears = path.map((arc) => (arc.length < 0 ? -1 : 1));
  const limits = { walls: posed.checked.map(wallsOf), ...limitsOf(posed, question) };
  return refine({ arcs: path, gears, knots }, limits);
}

const limitsOf = (posed: Posed, { mostChanges }: ManoeuvreQuestion) => ({
  largestCurvature: 1 / posed.radius,
  mostChanges,
});

/** Another way in less than a size, if the fine lattice has one that can be made exact. */
function fineWay(ask: AskSize, { from, steps = 1 }: SizeRange, than: number): SizeWithPath | null {
  for (const less of lessBy) {
    const size = than - less * steps;
    const path = size < from ? null : wayOn(ask(size), fine);
    if (path) return { size, path };
  }
  return null;
}

function wayOn(question: ManoeuvreQuestion, step: LatticeStep): readonly Arc[] | null {
  const posed = free(question);
  return posed && bestOn(posed, step, question.mostChanges);
}

/** Whether a lattice has a way within the changes allowed, for a vehicle `smaller` by so much all round, m. */
function floods(question: ManoeuvreQuestion, step: LatticeStep, smaller: number): boolean {
  const posed = smaller > 0 ? pose(question) : free(question);
  return posed !== null && findsWay(posed, { step, deflation: smaller, most: question.mostChanges });
}

function free(question: ManoeuvreQuestion): Posed | null {
  const posed = pose(question);
  const ends = [{ x: 0, y: 0, heading: 0 }, posed.end];
  return ends.every((end) => posed.checked.every((one) => standsFree(one, end))) ? posed : null;
}

function roundedUp(ask: AskSize, best: SizeWithPath): SizeWithPath {
  const size = Math.ceil(best.size / grain - 1e-6) * grain;
  return keepsClear(ask(size), best.path) ? { size, path: best.path } : best;
}
