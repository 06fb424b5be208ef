// Circles and arcs: areas they cut off, and their points.

import type { Point } from "./point.ts";
import { ringsOf, type Polygon } from "./polygon.ts";
import { counterClockwise, sidesOf } from "./ring.ts";
import type { Segment } from "./segment.ts";
import { cross, dot, fromAzimuth, minus, norm, plus, times, turnBetween, type Vector } from "./vector.ts";

/** Centre and radius, metres. */
export interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

/**
 * Area of the piece that a straight line cuts off a circle, square metres: A = r^2 acos(d/r) - d sqrt(r^2 - d^2),
 * r the radius and d the distance of the line from the centre (0 up to r: the lesser piece; below 0: the greater).
 * 0 where the line misses, the whole circle where it lies beyond on the other side.
 */
export function cutOffArea(radius: number, lineDistance: number): number {
  if (lineDistance >= radius) return 0;
  if (lineDistance <= -radius) return Math.PI * radius * radius;
  const half = Math.sqrt(radius * radius - lineDistance * lineDistance);
  return radius * radius * Math.acos(lineDistance / radius) - lineDistance * half;
}

/**
 * Area that a circle and a polygon share, square metres: exact, by sectors and triangles about the centre.
 * Each side of the polygon is split where it crosses the circle; a part inside adds (p x q)/2, a part outside
 * r^2/2 times the angle it spans (COMPUTED: Green's theorem round the edge of the common area).
 */
export function sharedWithCircle({ centre, radius }: Circle, polygon: Polygon): number {
  let area = 0;
  for (const [i, ring] of ringsOf(polygon).entries()) {
    let twice = 0;
    for (const [start, end] of sidesOf(counterClockwise(ring))) {
      twice += twiceSharedAlong(minus(start, centre), minus(end, centre), radius);
    }
    area += i === 0 ? twice / 2 : -twice / 2;
  }
  return Math.max(0, area);
}

function twiceSharedAlong(start: Vector, end: Vector, radius: number): number {
  const sector = (p: Vector, q: Vector): number => radius * radius * turnBetween(p, q);
  const inside = shareInside(start, minus(end, start), radius);
  if (inside === null) return sector(start, end);
  const [from, to] = inside;
  const enters = plus(start, times(minus(end, start), from));
  const leaves = plus(start, times(minus(end, start), to));
  return (from > 0 ? sector(start, enters) : 0) + cross(enters, leaves) + (to < 1 ? sector(leaves, end) : 0);
}

/** Shares, within 0 to 1, between which start + share way lies in the circle about the origin; null where it never does. */
function shareInside(start: Vector, way: Vector, radius: number): readonly [number, number] | null {
  const square = dot(way, way);
  if (square === 0) return null;
  const nearest = -dot(start, way) / square;
  const off = norm(plus(start, times(way, nearest)));
  if (off >= radius) return null;
  const half = Math.sqrt(((radius - off) * (radius + off)) / square);
  const [from, to] = [Math.max(0, nearest - half), Math.min(1, nearest + half)];
  return from < to ? [from, to] : null;
}

/** The points of a segment that lie on the circle, in the order walked. A line that only grazes has none. */
export function crossingsWithCircle({ centre, radius }: Circle, [start, end]: Segment): readonly Point[] {
  const way = minus(end, start);
  const inside = shareInside(minus(start, centre), way, radius) ?? [];
  return inside.filter((share) => share > 0 && share < 1).map((share) => plus(start, times(way, share)));
}

/** The point of a circle at an azimuth (radians clockwise from north, seen from the centre). */
export function pointOnCircle({ centre, radius }: Circle, azimuth: number): Point {
  return plus(centre, times(fromAzimuth(azimuth), radius));
}

/** A number of straight sides for an arc of `angle` radians whose sides stay within `slack` metres of it. */
export function sidesForArc(radius: number, angle: number, slack: number): number {
  if (!(radius > slack)) return Math.max(1, Math.ceil(Math.abs(angle) / (Math.PI / 2)));
  // Sagitta s = r (1 - cos(a/2)) of a side that spans the angle a.
  const each = 2 * Math.acos(1 - slack / radius);
  return Math.max(1, Math.ceil(Math.abs(angle) / each - 1e-9));
}

/**
 * A ring of straight sides for a circle, counter-clockwise from north. `inscribed`: corners on the circle;
 * `around`: sides touch the circle from outside, so that nothing of it is left out; at least four sides.
 * Sides stay within `slack` metres of the circle (corners of `around`: nearly so).
 */
export function ringAround(circle: Circle, slack: number, fit: "inscribed" | "around"): readonly Point[] {
  const count = Math.max(4, sidesForArc(circle.radius, 2 * Math.PI, slack));
  const stretch = fit === "around" ? 1 / Math.cos(Math.PI / count) : 1;
  const drawn = { centre: circle.centre, radius: circle.radius * stretch };
  return Array.from({ length: count }, (_, i) => pointOnCircle(drawn, -(2 * Math.PI * i) / count));
}

/**
 * A line of straight sides along an arc, corners on the arc, from azimuth `from` on by `sweep` radians
 * (clockwise above 0), within `slack` metres. Both ends are met.
 */
export function lineAlongArc(
  circle: Circle,
  arc: { readonly from: number; readonly sweep: number },
  slack: number,
): readonly Point[] {
  const count = sidesForArc(circle.radius, arc.sweep, slack);
  return Array.from({ length: count + 1 }, (_, i) => pointOnCircle(circle, arc.from + (arc.sweep * i) / count));
}
