// Breaklines taken apart into edges between neighbouring points.

import type { Point } from "../geometry/point.ts";
import { crossingPoint, footOn, meeting, type Segment } from "../geometry/segment.ts";
import type { Distinct } from "./distinct-points.ts";
import { samePlace } from "./distinct-points.ts";
import type { Edge } from "./forced-edges.ts";
import type { NetTrouble } from "./net-trouble.ts";

interface BreakPiece {
  readonly breakline: number;
  readonly edge: Edge;
}

/** Edges of all breaklines, split at the points that lie on them; a piece that would cross an earlier one is left out. */
export function breakEdges(
  points: readonly Point[],
  breaklines: readonly (readonly number[])[],
  { kept, standsFor }: Distinct,
): { readonly edges: readonly Edge[]; readonly troubles: readonly NetTrouble[] } {
  const troubles: NetTrouble[] = [];
  const pieces: BreakPiece[] = [];
  for (const [breakline, numbers] of breaklines.entries()) {
    const known = numbers.filter((point) => standsFor[point] !== undefined);
    for (const point of numbers)
      if (standsFor[point] === undefined) troubles.push({ is: "no-such-point", breakline, point });
    for (const [i, to] of known.slice(1).entries()) {
      const ends: Edge = [standsFor[known[i] as number] as number, standsFor[to] as number];
      if (ends[0] === ends[1]) continue;
      for (const edge of splitAtPoints(points, ends, kept)) {
        const across = pieces.find((other) => crossing(points, other.edge, edge) !== null);
        if (across === undefined) pieces.push({ breakline, edge });
        else {
          const at = crossing(points, across.edge, edge) as Point;
          troubles.push({ is: "breaklines-cross", breaklines: [across.breakline, breakline], at });
        }
      }
    }
  }
  return { edges: pieces.map(({ edge }) => edge), troubles };
}

function crossing(points: readonly Point[], a: Edge, b: Edge): Point | null {
  const [one, two] = [segmentOf(points, a), segmentOf(points, b)];
  return meeting(one, two) === "cross" ? crossingPoint(one, two) : null;
}

function segmentOf(points: readonly Point[], [from, to]: Edge): Segment {
  return [points[from] as Point, points[to] as Point];
}

/** The piece between two points, split at every other point that lies on it. */
function splitAtPoints(points: readonly Point[], ends: Edge, kept: readonly number[]): readonly Edge[] {
  const segment = segmentOf(points, ends);
  const between = kept.flatMap((i) => {
    if (i === ends[0] || i === ends[1]) return [];
    const { share, distance: off } = footOn(segment, points[i] as Point);
    return off <= samePlace && share > 0 && share < 1 ? [{ i, share }] : [];
  });
  const stops = [ends[0], ...between.sort((a, b) => a.share - b.share).map(({ i }) => i), ends[1]];
  return stops.slice(1).map((to, i): Edge => [stops[i] as number, to]);
}
