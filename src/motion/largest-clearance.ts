// The largest clearance at which a manoeuvre can be done with at most so many changes, by bisection.

import { bestOn, deflation, findsWay, fine, finest } from "./find-manoeuvre.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import type { Arc } from "./pose.ts";
import { pose } from "./posed.ts";
import { standsFree } from "./sweep.ts";

/** Between which clearances to look, and how finely, m. */
export interface ClearanceRange {
  readonly from: number;
  readonly to: number;
  readonly within: number;
}

/** How much clearance there is, m; null stands for "less than the range begins with". */
export interface LargestClearance {
  /** Largest clearance for which an exactly checked path was found. */
  readonly proven: number | null;
  /** Largest clearance at which the fine lattice finds a way: the best estimate. */
  readonly about: number | null;
  /** Clearance at which even a vehicle smaller by the lattice's allowance finds no way (empirical, as every "no"). */
  readonly noMoreThan: number;
  /** Exact arcs from the start at the proven clearance. */
  readonly path: readonly Arc[] | null;
}

/** Steps down, m, from the estimate in search of a path that can be made exact. */
const stepsDown = [0, 0.01, 0.02, 0.04, 0.08] as const;

/** Largest clearance for a question; its own `margin` is not used. */
export function largestClearance(question: ManoeuvreQuestion, range: ClearanceRange): LargestClearance {
  const about = bisect(range, (margin) => latticeFinds(question, margin, 0));
  const noMoreThan = ceiling(question, range, about);
  if (about === null) return { proven: null, about, noMoreThan, path: null };
  for (const down of stepsDown) {
    const margin = about - down;
    if (margin < range.from) break;
    const posed = pose(question, margin);
    const step = down === 0.01 ? finest : fine;
    const path = bestOn(posed, step, question.mostChanges);
    if (path !== null) return { proven: margin, about, noMoreThan, path };
  }
  return { proven: null, about, noMoreThan, path: null };
}

/** Where only the body is confined, less margin and a smaller body are the same thing, and nothing need be searched. */
function ceiling(question: ManoeuvreQuestion, range: ClearanceRange, about: number | null): number {
  if (question.running === question.clear) return (about ?? range.from - range.within) + range.within + deflation;
  const last = bisect(range, (margin) => latticeFinds(question, margin, deflation));
  return last === null ? range.from : last + range.within;
}

/** Largest value at which `holds` is true, to `within` from below; null where it is not even at the beginning. */
function bisect(range: ClearanceRange, holds: (margin: number) => boolean): number | null {
  let low = range.from;
  let high = range.to;
  if (!holds(low)) return null;
  if (holds(high)) return high;
  while (high - low > range.within) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function latticeFinds(question: ManoeuvreQuestion, margin: number, smaller: number): boolean {
  const posed = pose(question, margin);
  const ends = [{ x: 0, y: 0, heading: 0 }, posed.end];
  if (!ends.every((end) => posed.checked.every((one) => standsFree(one, end)))) return false;
  return findsWay(posed, { step: fine, deflation: smaller, most: question.mostChanges });
}
