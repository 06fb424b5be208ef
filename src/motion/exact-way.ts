// From fronts that meet to an exact path: a few ways over the meeting are refined in turn; if none can be made exact,
// the fronts go on to ways of more changes, which are roomier.

import { waysOver } from "./meeting.ts";
import type { Arc } from "./pose.ts";
import type { Posed } from "./posed.ts";
import { refine } from "./refine.ts";
import { roughPathOf } from "./rough-path.ts";
import { goOn } from "./two-sided.ts";
import type { Fronts } from "./two-sided.ts";
import { wallsOf } from "./walls.ts";

/** Ways tried at the least number of changes, and at each greater number after that: usually, and as a last resort. */
const usualTries: readonly number[] = [4, 3, 2];
export const manyTries: readonly number[] = [16, 8, 4];

/** An exactly checked path with at most `most` changes near a way that the fronts have found; null where none was. */
export function exactWay(posed: Posed, fronts: Fronts, most: number, triesAt = usualTries): readonly Arc[] | null {
  const walls = posed.checked.map(wallsOf);
  for (const tries of triesAt) {
    if (fronts.met === null || fronts.met > most) return null;
    const limits = { walls, largestCurvature: 1 / posed.radius, mostChanges: fronts.met };
    for (const way of waysOver(fronts, tries)) {
      const arcs = refine(roughPathOf(way, fronts.problem.lattice, posed.radius, posed.end), limits);
      if (arcs !== null) return arcs;
    }
    goOn(fronts, most);
  }
  return null;
}
