// Joining points to triangles. The only file that imports the triangulation package.

import Delaunator from "delaunator";
import type { Point } from "../geometry/point.ts";

/**
 * Triangles as half-edges. Half-edge e runs from point `corners[e]` to the next corner of its triangle (e / 3, rounded
 * down); `twins[e]` is the same edge in the triangle beyond, -1 on the outside. Every triangle counter-clockwise.
 */
export interface HalfEdges {
  readonly corners: Int32Array;
  readonly twins: Int32Array;
}

/** Delaunay triangulation of `points`, which must be finite and apart. No triangles where all lie on one line. */
export function delaunay(points: readonly Point[]): HalfEdges {
  const flat = new Float64Array(points.length * 2);
  for (const [i, [east, north]] of points.entries()) {
    flat[2 * i] = east;
    // The package turns its triangles for an axis that points down.
    flat[2 * i + 1] = -north;
  }
  const { triangles, halfedges } = new Delaunator(flat);
  return { corners: Int32Array.from(triangles), twins: Int32Array.from(halfedges) };
}

/** The half-edge after `e` in its triangle. */
export function nextEdge(e: number): number {
  return e % 3 === 2 ? e - 2 : e + 1;
}

/** The half-edge before `e` in its triangle. */
export function previousEdge(e: number): number {
  return e % 3 === 0 ? e + 2 : e - 1;
}
