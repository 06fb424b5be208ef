// Does the coarse lattice, with its larger allowance, ever miss a way of as few changes as the fine one has with its own?

import { coarse, coarseDeflation, deflation, findsWay, fine } from "../../src/motion/find-manoeuvre.ts";
import type { LatticeStep } from "../../src/motion/lattice.ts";
import { pose } from "../../src/motion/posed.ts";
import type { Posed } from "../../src/motion/posed.ts";
import { standsFree } from "../../src/motion/sweep.ts";
import { randomPad } from "./random-pads.ts";

export interface AllowanceTally {
  pads: number;
  /** Pads on which both lattices have the same least number of changes, or none. */
  same: number;
  /** Seeds of pads on which the coarse lattice needs more changes than the fine one. */
  readonly missed: number[];
}

export function compareLattices(seeds: readonly number[]): AllowanceTally {
  const tally: AllowanceTally = { pads: 0, same: 0, missed: [] };
  for (const seed of seeds) {
    const posed = pose(randomPad(seed));
    const ends = [{ x: 0, y: 0, heading: 0 }, posed.end];
    if (!ends.every((end) => posed.checked.every((one) => standsFree(one, end)))) continue;
    const onCoarse = leastChanges(posed, coarse, coarseDeflation);
    const onFine = leastChanges(posed, fine, deflation);
    tally.pads += 1;
    if (onCoarse === onFine) tally.same += 1;
    if (onCoarse > onFine) tally.missed.push(seed);
  }
  return tally;
}

/** Least changes of a way over a lattice, up to eight; ten where there is none. */
function leastChanges(posed: Posed, step: LatticeStep, smaller: number): number {
  return [0, 2, 4, 6, 8].find((most) => findsWay(posed, { step, deflation: smaller, most })) ?? 10;
}
