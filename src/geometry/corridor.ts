// The narrow places of the way between two lines.

import { lineFigure, type Figure } from "./figure.ts";
import type { NearPair } from "./near-pair.ts";
import { nearestPairs } from "./near-pairs.ts";
import { sideAt, sideCount } from "./figure.ts";
import { crossingPoint, type Segment } from "./segment.ts";
import { distance, type Point } from "./point.ts";

// The sight line of a pair ends on both lines: meetings this close to its ends (metres) are its own.
const ownEnd = 1e-9;

/**
 * Every place where the way between two lines is at most `reach` metres wide: a vertex of one against a side of the
 * other, kept only where they see each other across the way and no other part of the lines stands between.
 * Lines that cross give the crossing as well, with a width below 0.
 */
export function corridorPairs(left: readonly Point[], right: readonly Point[], reach: number): readonly NearPair[] {
  const [a, b] = [lineFigure(left), lineFigure(right)];
  return nearestPairs(a, b, reach).filter(
    (pair) => pair.how !== "apart" || (seesAcross([pair.at, pair.foot], a) && seesAcross([pair.at, pair.foot], b)),
  );
}

function seesAcross(sight: Segment, figure: Figure): boolean {
  for (const chain of figure.chains) {
    for (let side = 0; side < sideCount(chain); side++) {
      const met = crossingPoint(sight, sideAt(chain, side));
      if (met !== null && distance(met, sight[0]) > ownEnd && distance(met, sight[1]) > ownEnd) return false;
    }
  }
  return true;
}
