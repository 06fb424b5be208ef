// The stretches of a line that lie within areas.

import { piecesOf, runsOf, stretchOf } from "./line.ts";
import { between, distance, type Point } from "./point.ts";
import { holdsPoint, ringsOf, type Polygon } from "./polygon.ts";
import { sidesOf } from "./ring.ts";
import { crossingPoint, footOn, meeting, type Segment } from "./segment.ts";

/** A stretch of a line: runs of its start and end in metres, and its points with the bends between. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly line: readonly Point[];
}

// Shorter bits are rounding, not ground (metres).
const shortest = 1e-9;

/**
 * The stretches of `line` within any of `areas`, in the order walked, joined where they follow on each other.
 * The boundary counts as within; a stretch that only runs along a slanting boundary is decided by rounding.
 */
export function stretchesWithin(line: readonly Point[], areas: readonly Polygon[]): readonly Stretch[] {
  return stretchesWhere(line, areas, (at) => areas.some((area) => holdsPoint(area, at)));
}

/** The stretches of `line` outside all of `areas`. */
export function stretchesOutside(line: readonly Point[], areas: readonly Polygon[]): readonly Stretch[] {
  return stretchesWhere(line, areas, (at) => !areas.some((area) => holdsPoint(area, at)));
}

/** Length of `line` within `areas`, metres. What lies in two of them counts once. */
export function lengthWithin(line: readonly Point[], areas: readonly Polygon[]): number {
  return stretchesWithin(line, areas).reduce((sum, { from, to }) => sum + to - from, 0);
}

function stretchesWhere(
  line: readonly Point[],
  areas: readonly Polygon[],
  wanted: (at: Point) => boolean,
): readonly Stretch[] {
  const sides = areas.flatMap((area) => ringsOf(area).flatMap((ring) => sidesOf(ring)));
  const runs = runsOf(line);
  const kept: { from: number; to: number }[] = [];
  for (const [i, piece] of piecesOf(line).entries()) {
    const start = runs[i] as number;
    const length = distance(piece[0], piece[1]);
    if (length === 0) continue;
    const cuts = cutsOf(piece, sides);
    for (const [j, to] of cuts.slice(1).entries()) {
      const from = cuts[j] as number;
      if ((to - from) * length <= shortest || !wanted(between(piece[0], piece[1], (from + to) / 2))) continue;
      const last = kept.at(-1);
      if (last !== undefined && start + from * length - last.to <= shortest) last.to = start + to * length;
      else kept.push({ from: start + from * length, to: start + to * length });
    }
  }
  return kept.map(({ from, to }) => ({ from, to, line: stretchOf(line, from, to) }));
}

/** Shares of a piece, from 0 to 1, at which it meets a side. */
function cutsOf(piece: Segment, sides: readonly Segment[]): readonly number[] {
  const cuts = [0, 1];
  for (const side of sides) {
    const how = meeting(piece, side);
    if (how === "apart") continue;
    const met = crossingPoint(piece, side);
    for (const at of met === null ? side : [met]) cuts.push(footOn(piece, at).share);
  }
  return cuts.sort((a, b) => a - b);
}
