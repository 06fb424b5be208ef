// A net of triangles over surveyed points: built once, read with whatever levels the points are given later.

import { boxOf } from "../geometry/box.ts";
import { indexBoxes, type BoxIndex } from "../geometry/index-boxes.ts";
import type { Point } from "../geometry/point.ts";
import { breakEdges } from "./breaklines.ts";
import { delaunay } from "./delaunay.ts";
import { distinctPoints } from "./distinct-points.ts";
import { forceEdges, type Edge } from "./forced-edges.ts";
import type { NetTrouble } from "./net-trouble.ts";
import { withoutOuterNeedles } from "./outer-needles.ts";

/** Triangles over `points`. `corners` holds three point numbers to a triangle, counter-clockwise. */
export interface Net {
  readonly points: readonly Point[];
  readonly corners: ArrayLike<number>;
  /** The same edge in the triangle beyond, -1 on the outside. Edge 3t + k runs from corner k of triangle t to the next. */
  readonly twins: ArrayLike<number>;
  /** Edges that follow a breakline. */
  readonly breaks: readonly Edge[];
  readonly index: BoxIndex;
}

/** A net as far as it could be made (null where there is none), and what stood in the way. */
export interface NetResult {
  readonly net: Net | null;
  readonly troubles: readonly NetTrouble[];
}

/**
 * Delaunay triangulation of `points` (plane metres) with breaklines (lists of point numbers) forced in as edges. Points
 * that lie on a breakline split it. Of two points in one place the later is left out, of two breaklines that cross the
 * piece of the later; each is told. Needles without width on the outside are left out. Levels play no part, so the net holds for any levels of the same points.
 */
export function buildNet(points: readonly Point[], breaklines: readonly (readonly number[])[]): NetResult {
  const { kept, standsFor, troubles } = distinctPoints(points);
  if (kept.length < 3) return { net: null, troubles: [...troubles, { is: "too-few-points", points: kept.length }] };
  const local = kept.map((i) => points[i] as Point);
  const made = delaunay(local);
  if (made.corners.length === 0) return { net: null, troubles: [...troubles, { is: "on-one-line" }] };
  const { edges, troubles: lineTroubles } = breakEdges(points, breaklines, { kept, standsFor });
  const placeOf = new Map(kept.map((i, place) => [i, place]));
  const wanted = edges.map(([a, b]): Edge => [placeOf.get(a) as number, placeOf.get(b) as number]);
  const failed = forceEdges(made, local, wanted).map(([a, b]): Edge => [kept[a] as number, kept[b] as number]);
  const { corners: places, twins } = withoutOuterNeedles(made, local);
  if (places.length === 0) return { net: null, troubles: [...troubles, { is: "on-one-line" }] };
  const notForced = failed.map((edge): NetTrouble => ({ is: "not-forced", edge }));
  const corners = Array.from(places, (place) => kept[place] as number);
  const index = indexBoxes(trianglesOf({ points, corners }).map(boxOf));
  const breaks = edges.filter((edge) => !failed.some((other) => other[0] === edge[0] && other[1] === edge[1]));
  return {
    net: { points, corners, twins: Array.from(twins), breaks, index },
    troubles: [...troubles, ...lineTroubles, ...notForced],
  };
}

/** The same triangles over points that have been moved a little, given in the same order. Null where one is missing. */
export function withPoints(net: Net, points: readonly Point[]): Net | null {
  if (points.length !== net.points.length) return null;
  return { ...net, points, index: indexBoxes(trianglesOf({ points, corners: net.corners }).map(boxOf)) };
}

/** The corner points of every triangle. */
export function trianglesOf({
  points,
  corners,
}: {
  readonly points: readonly Point[];
  readonly corners: ArrayLike<number>;
}): readonly (readonly [Point, Point, Point])[] {
  return Array.from({ length: corners.length / 3 }, (_, t) => {
    const at = (k: number): Point => points[corners[3 * t + k] as number] as Point;
    return [at(0), at(1), at(2)] as const;
  });
}
