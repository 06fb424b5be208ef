// Ground over a net: each point has a level, each triangle is a plane.

import type { Point } from "../geometry/point.ts";
import { azimuth, norm } from "../geometry/vector.ts";
import type { Net } from "./net.ts";
import { triangleAt } from "./triangle-at.ts";

/** A net with levels, metres, in the order of its points. */
export interface Surface {
  readonly net: Net;
  readonly levels: readonly number[];
}

/** A plane: level = atOrigin + east (x - x0) + north (y - y0), with (x0, y0) the origin. Slopes in metres per metre. */
export interface Plane {
  readonly origin: Point;
  readonly atOrigin: number;
  readonly east: number;
  readonly north: number;
}

/** Plane through three points with levels: z = z0 + a (x - x0) + b (y - y0); null where they lie on one line. */
export function planeThrough(
  points: readonly [Point, Point, Point],
  levels: readonly [number, number, number],
): Plane | null {
  const [[x0, y0], [x1, y1], [x2, y2]] = points;
  const twice = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0);
  if (twice === 0) return null;
  const [rise1, rise2] = [levels[1] - levels[0], levels[2] - levels[0]];
  const east = (rise1 * (y2 - y0) - rise2 * (y1 - y0)) / twice;
  const north = (rise2 * (x1 - x0) - rise1 * (x2 - x0)) / twice;
  return { origin: points[0], atOrigin: levels[0], east, north };
}

/** A level plane at `level`. */
export function levelPlane(level: number): Plane {
  return { origin: [0, 0], atOrigin: level, east: 0, north: 0 };
}

/** Level of a plane at a point, metres. */
export function levelOnPlane({ origin, atOrigin, east, north }: Plane, [x, y]: Point): number {
  return atOrigin + east * (x - origin[0]) + north * (y - origin[1]);
}

/** Steepest slope of a plane, metres per metre: sqrt(a^2 + b^2). */
export function slopeOf({ east, north }: Plane): number {
  return norm([east, north]);
}

/** Azimuth in which a plane falls, radians clockwise from north: atan2(-a, -b). Null where it is level. */
export function fallAzimuth({ east, north }: Plane): number | null {
  return east === 0 && north === 0 ? null : azimuth([-east, -north]);
}

/** Corners and levels of triangle `t`. */
export function cornersOf(
  surface: Surface,
  t: number,
): { readonly points: readonly [Point, Point, Point]; readonly levels: readonly [number, number, number] } {
  const number = (k: number): number => surface.net.corners[3 * t + k] as number;
  const point = (k: number): Point => surface.net.points[number(k)] as Point;
  const level = (k: number): number => surface.levels[number(k)] as number;
  return { points: [point(0), point(1), point(2)], levels: [level(0), level(1), level(2)] };
}

/** Plane of triangle `t`; null where moved points have brought its corners onto one line. */
export function planeOf(surface: Surface, t: number): Plane | null {
  const { points, levels } = cornersOf(surface, t);
  return planeThrough(points, levels);
}

/** Ground at a point: the triangle there (it stays valid for other levels), its plane, and the level in metres. */
export interface GroundAt {
  readonly triangle: number;
  readonly plane: Plane;
  readonly level: number;
}

/** Ground at a point, or null outside the net: nothing is guessed beyond the outermost points. */
export function groundAt(surface: Surface, at: Point): GroundAt | null {
  const triangle = triangleAt(surface.net, at);
  const plane = triangle === null ? null : planeOf(surface, triangle);
  if (triangle === null || plane === null) return null;
  return { triangle, plane, level: levelOnPlane(plane, at) };
}

/**
 * How much each corner of a triangle counts for the level at a point in it (barycentric, sum 1), by point number: the
 * level is the sum of weight times level, its standard uncertainty the root of the sum of (weight times u) squared.
 */
export function weightsAt(
  net: Net,
  t: number,
  at: Point,
): readonly { readonly point: number; readonly weight: number }[] {
  const numbers = [0, 1, 2].map((k) => net.corners[3 * t + k] as number);
  const [a, b, c] = numbers.map((i) => net.points[i] as Point) as [Point, Point, Point];
  const share = (k: number): number => {
    const levels = [0, 0, 0] as [number, number, number];
    levels[k] = 1;
    const plane = planeThrough([a, b, c], levels);
    return plane === null ? 1 / 3 : levelOnPlane(plane, at);
  };
  return numbers.map((point, k) => ({ point, weight: share(k) }));
}
