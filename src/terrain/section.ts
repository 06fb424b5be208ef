// The ground along a line, seen from the side.

import { boxOf, type Box } from "../geometry/box.ts";
import { piecesOf, runsOf } from "../geometry/line.ts";
import { between, distance, type Point } from "../geometry/point.ts";
import { crossingPoint, footOn, meeting, type Segment } from "../geometry/segment.ts";
import { nextEdge } from "./delaunay.ts";
import { samePlace } from "./distinct-points.ts";
import { levelOnPlane, planeOf, type Surface } from "./surface.ts";
import { triangleAt } from "./triangle-at.ts";

/** A place on the ground line: run along the line and level, metres, and the point on the plan. */
export interface SectionPoint {
  readonly run: number;
  readonly level: number;
  readonly at: Point;
}

// Cuts nearer together than this (metres) are one.
const sameCut = 1e-9;

/**
 * Ground along a line: straight from edge to edge of the net, so exact for that ground. One list for every stretch that
 * lies over the net; where the line leaves it, the list ends, and nothing is guessed.
 */
export function sectionAlong(surface: Surface, line: readonly Point[]): readonly (readonly SectionPoint[])[] {
  const runs = runsOf(line);
  const stretches: SectionPoint[][] = [];
  let open: SectionPoint[] = [];
  const close = (): void => {
    if (open.length > 0) stretches.push(open);
    open = [];
  };
  for (const [i, piece] of piecesOf(line).entries()) {
    const length = distance(piece[0], piece[1]);
    for (const [from, to] of cutsOf(surface, piece, length)) {
      const ends = groundBetween(surface, piece, [from, to]);
      if (ends === null) {
        close();
        continue;
      }
      const start = runs[i] as number;
      if (open.length === 0)
        open.push({ run: start + from * length, level: ends[0], at: between(piece[0], piece[1], from) });
      open.push({ run: start + to * length, level: ends[1], at: between(piece[0], piece[1], to) });
    }
  }
  close();
  return stretches;
}

/** Levels at both ends of a bit of a piece that lies within one triangle; null where it lies off the net. */
function groundBetween(
  surface: Surface,
  piece: Segment,
  [from, to]: readonly [number, number],
): readonly [number, number] | null {
  const triangle = triangleAt(surface.net, between(piece[0], piece[1], (from + to) / 2));
  const plane = triangle === null ? null : planeOf(surface, triangle);
  if (plane === null) return null;
  return [levelOnPlane(plane, between(piece[0], piece[1], from)), levelOnPlane(plane, between(piece[0], piece[1], to))];
}

/** Shares of a piece between which no edge of the net is crossed. */
function cutsOf({ net }: Surface, piece: Segment, length: number): readonly (readonly [number, number])[] {
  if (length === 0) return [];
  const shares = [0, 1];
  for (const t of net.index.within(boxOf(piece) as Box, samePlace)) {
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      const edge: Segment = [
        net.points[net.corners[e] as number] as Point,
        net.points[net.corners[nextEdge(e)] as number] as Point,
      ];
      // A corner on the piece but for a rounding is a cut, though no edge there meets it.
      const corner = footOn(piece, edge[0]);
      if (corner.distance <= samePlace) shares.push(corner.share);
      const how = meeting(piece, edge);
      if (how === "apart") continue;
      const met = crossingPoint(piece, edge);
      for (const at of met === null ? edge : [met]) shares.push(footOn(piece, at).share);
    }
  }
  const sorted = shares.sort((a, b) => a - b);
  const distinct = sorted.filter((share, i) => i === 0 || (share - (sorted[i - 1] as number)) * length > sameCut);
  if (distinct.length > 1) distinct[distinct.length - 1] = 1;
  return distinct.slice(1).map((to, i) => [distinct[i] as number, to] as const);
}

/** Level of a section at a run, metres, straight between its points; null off its ends. */
export function levelAtRun(section: readonly SectionPoint[], run: number): number | null {
  for (const [i, end] of section.slice(1).entries()) {
    const start = section[i] as SectionPoint;
    if (run < start.run || run > end.run) continue;
    const share = end.run > start.run ? (run - start.run) / (end.run - start.run) : 0;
    return start.level + (end.level - start.level) * share;
  }
  return null;
}

/** The steepest bit of a section: slope in metres per metre, above 0 where it rises with the run; null for less than two points. */
export function steepestOf(
  section: readonly SectionPoint[],
): { readonly slope: number; readonly from: SectionPoint; readonly to: SectionPoint } | null {
  let best: { readonly slope: number; readonly from: SectionPoint; readonly to: SectionPoint } | null = null;
  for (const [i, to] of section.slice(1).entries()) {
    const from = section[i] as SectionPoint;
    if (!(to.run > from.run)) continue;
    const slope = (to.level - from.level) / (to.run - from.run);
    if (best === null || Math.abs(slope) > Math.abs(best.slope)) best = { slope, from, to };
  }
  return best;
}
