// Vectors of the plane: differences of points, metres east and metres north.

import type { Point } from "../model/reading.ts";

/** A difference of two points, metres east and north. */
export type Vector = readonly [number, number];

/** From `a` to `b`, metres. */
export function minus(b: Point, a: Point): Vector {
  return [b[0] - a[0], b[1] - a[1]];
}

/** The point reached from `a` by `v`, metres. */
export function plus(a: Point, v: Vector): Point {
  return [a[0] + v[0], a[1] + v[1]];
}

/** `v` stretched `by` times. */
export function times(v: Vector, by: number): Vector {
  return [v[0] * by, v[1] * by];
}

/** Scalar product u.v = ux vx + uy vy, square metres. */
export function dot(u: Vector, v: Vector): number {
  return u[0] * v[0] + u[1] * v[1];
}

/** Cross product u x v = ux vy - uy vx, square metres; positive where `v` points to the left of `u`. */
export function cross(u: Vector, v: Vector): number {
  return u[0] * v[1] - u[1] * v[0];
}

/** Length of a vector, metres. */
export function norm(v: Vector): number {
  return Math.sqrt(v[0] * v[0] + v[1] * v[1]);
}

/** The vector of length 1 in the direction of `v`; null where `v` has no direction. */
export function unit(v: Vector): Vector | null {
  const length = norm(v);
  return length > 0 ? [v[0] / length, v[1] / length] : null;
}

/** `v` turned a quarter circle to the left (counter-clockwise, seen from above). */
export function toTheLeft(v: Vector): Vector {
  return [-v[1], v[0]];
}

/** `v` turned counter-clockwise by `angle` radians. */
export function turned(v: Vector, angle: number): Vector {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return [v[0] * cosine - v[1] * sine, v[0] * sine + v[1] * cosine];
}

/** Azimuth of `v`: radians clockwise from north, 0 to 2 pi (2 pi left out). 0 for a vector without direction. */
export function azimuth(v: Vector): number {
  const angle = Math.atan2(v[0], v[1]);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

/** The vector of length 1 that has this azimuth (radians clockwise from north). */
export function fromAzimuth(angle: number): Vector {
  return [Math.sin(angle), Math.cos(angle)];
}

/** Angle by which one turns from `u` to `v`: radians, positive to the left, over -pi up to pi. */
export function turnBetween(u: Vector, v: Vector): number {
  return Math.atan2(cross(u, v), dot(u, v));
}
