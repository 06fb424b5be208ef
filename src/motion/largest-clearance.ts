// The largest clearance at which a manoeuvre can be done with at most so many changes, by bisection.

import { deflation, fine, findManoeuvre } from "./find-manoeuvre.ts";
import type { ManoeuvreAnswer, ManoeuvreQuestion } from "./manoeuvre.ts";
import { frontsOf, latticeFor, pose } from "./posed.ts";
import { standsFree } from "./sweep.ts";
import { growFronts } from "./two-sided.ts";

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
  /** Clearance at which even a vehicle smaller by the lattice's allowance finds no way. */
  readonly noMoreThan: number;
  readonly path: (ManoeuvreAnswer & { readonly answer: "possible" }) | null;
}

/** Steps down, in m, from the estimate in search of a path that can be made exact. */
const stepsDown = [0, 0.01, 0.02, 0.04, 0.08] as const;

/** Largest clearance for a question; its own `margin` is not used. */
export function largestClearance(question: ManoeuvreQuestion, range: ClearanceRange): LargestClearance {
  const about = bisect(range, (margin) => latticeFinds(question, margin));
  if (about === null) return { proven: null, about, noMoreThan: range.from + deflation, path: null };
  for (const down of stepsDown) {
    const margin = about - down;
    if (margin < range.from) break;
    const found = findManoeuvre({ ...question, margin });
    if (found.answer === "possible") {
      return { proven: margin, about, noMoreThan: about + range.within + deflation, path: found };
    }
  }
  return { proven: null, about, noMoreThan: about + range.within + deflation, path: null };
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

function latticeFinds(question: ManoeuvreQuestion, margin: number): boolean {
  const posed = pose(question, margin);
  for (const one of posed.checked) {
    if (!standsFree(one, { x: 0, y: 0, heading: 0 }) || !standsFree(one, posed.end)) return false;
  }
  const fronts = frontsOf(posed, latticeFor(posed, fine), 0);
  growFronts(fronts, question.mostChanges);
  return fronts.met !== null && fronts.met <= question.mostChanges;
}
