// An area: an outline with or without holes.

import type { Point } from "./point.ts";
import { ringArea, ringCentroid, ringLength, whereInRing, type Where } from "./ring.ts";

/** An outline and the holes in it, each a ring of three or more points, running either way. */
export interface Polygon {
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
}

/** The area inside one ring. */
export function polygonOf(outline: readonly Point[], holes: readonly (readonly Point[])[] = []): Polygon {
  return { outline, holes };
}

/** The outline and then the holes. */
export function ringsOf(polygon: Polygon): readonly (readonly Point[])[] {
  return [polygon.outline, ...polygon.holes];
}

/** Area less the holes, square metres. Holes are taken to lie inside the outline and apart from each other. */
export function polygonArea(polygon: Polygon): number {
  return polygon.holes.reduce((area, hole) => area - ringArea(hole), ringArea(polygon.outline));
}

/** Area of several polygons that do not overlap, square metres. */
export function totalArea(polygons: readonly Polygon[]): number {
  return polygons.reduce((sum, polygon) => sum + polygonArea(polygon), 0);
}

/** Length of the outline and of the edges of the holes, metres. */
export function polygonEdge(polygon: Polygon): number {
  return ringsOf(polygon).reduce((sum, ring) => sum + ringLength(ring), 0);
}

/** Centroid of the area: sum (A_i C_i) / sum A_i, holes counted below 0. Null where no outline is given. */
export function polygonCentroid(polygon: Polygon): Point | null {
  const whole = ringCentroid(polygon.outline);
  const area = polygonArea(polygon);
  if (whole === null || !(area > 0)) return whole;
  // About the centroid of the outline, so that far-off coordinates lose nothing.
  let east = 0;
  let north = 0;
  for (const hole of polygon.holes) {
    const centre = ringCentroid(hole) ?? whole;
    east -= ringArea(hole) * (centre[0] - whole[0]);
    north -= ringArea(hole) * (centre[1] - whole[1]);
  }
  return [whole[0] + east / area, whole[1] + north / area];
}

/** Where `point` lies: the edge of a hole is boundary, the middle of a hole is outside. Exact. */
export function whereInPolygon(polygon: Polygon, point: Point): Where {
  const inOutline = whereInRing(polygon.outline, point);
  if (inOutline !== "inside") return inOutline;
  for (const hole of polygon.holes) {
    const inHole = whereInRing(hole, point);
    if (inHole === "boundary") return "boundary";
    if (inHole === "inside") return "outside";
  }
  return "inside";
}

/** Whether the polygon holds the point. The boundary counts as inside. */
export function holdsPoint(polygon: Polygon, point: Point): boolean {
  return whereInPolygon(polygon, point) !== "outside";
}
