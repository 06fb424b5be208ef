// A first place for a station from the way it was measured; the adjustment starts there and keeps its side.

import type { Point } from "../model/reading.ts";

/** Why no first place can be found. */
export type StartFault =
  | { readonly fault: "cannot-close"; readonly words: string; readonly hint: string }
  | { readonly fault: "which-side" }
  | { readonly fault: "no-length"; readonly words: string };

export interface Tie {
  readonly to: string;
  readonly from: Point;
  readonly length: number;
}

/** A side of a line between two known points. */
export interface SideOfLine {
  readonly side: "left" | "right";
  readonly line: readonly [Point, Point];
}

export function isFault(start: Point | StartFault): start is StartFault {
  return "fault" in start;
}

const metres = (length: number): string => `${length.toFixed(2)} m`;

/** Twice the area of a, b, p: above 0 where p is left of the way from a to b. */
function leftness([a, b]: readonly [Point, Point], p: Point): number {
  return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
}

/**
 * The two points that lie at two tapes from two known ones: x = (b^2 - a^2 + c^2) / 2c along the base of length c,
 * y = +- sqrt(b^2 - x^2) beside it (b the tape to the first). COMPUTED. A fault where the triangle cannot close.
 */
function cuts(one: Tie, two: Tie): readonly [Point, Point] | StartFault {
  const east = two.from[0] - one.from[0];
  const north = two.from[1] - one.from[1];
  const base = Math.hypot(east, north);
  if (!(base > 0)) return { fault: "no-length", words: `${one.to} and ${two.to} lie on one spot` };
  const along = (one.length ** 2 - two.length ** 2 + base ** 2) / (2 * base);
  const square = one.length ** 2 - along ** 2;
  if (!(square > 0)) return cannotClose(one, two, base);
  const off = Math.sqrt(square);
  const [e, n] = [east / base, north / base];
  const at = (left: number): Point => [one.from[0] + along * e - left * n, one.from[1] + along * n + left * e];
  return [at(off), at(-off)];
}

function cannotClose(one: Tie, two: Tie, base: number): StartFault {
  const tapes = `${metres(one.length)} from ${one.to} and ${metres(two.length)} from ${two.to}`;
  const short = base - one.length - two.length;
  const words = `${tapes}, which lie ${metres(base)} apart`;
  const gap = metres(Math.max(0.01, Math.abs(short > 0 ? short : Math.abs(one.length - two.length) - base)));
  const hint =
    short > 0
      ? `the two tapes do not reach each other by ${gap}; measure both again`
      : `one tape is too long or the other too short by ${gap}; measure both again`;
  return { fault: "cannot-close", words, hint };
}

/** Mean misfit of a point against tapes, metres. */
function misfit(at: Point, ties: readonly Tie[]): number {
  const squares = ties.map((tie) => (Math.hypot(at[0] - tie.from[0], at[1] - tie.from[1]) - tie.length) ** 2);
  return Math.sqrt(squares.reduce((total, square) => total + square, 0) / Math.max(1, squares.length));
}

/** How square two ties cut: 1 at a right angle, 0 where they run into each other. */
function squareness(one: Tie, two: Tie): number {
  const found = cuts(one, two);
  if ("fault" in found) return -1;
  const [at] = found;
  return Math.abs(leftness([at, one.from], two.from)) / (one.length * two.length);
}

/** The pair of ties that cuts best; the first pair where none closes. */
function bestPair(ties: readonly Tie[]): readonly [Tie, Tie] | null {
  let best: readonly [Tie, Tie] | null = null;
  let most = Number.NEGATIVE_INFINITY;
  for (const [i, one] of ties.entries()) {
    for (const two of ties.slice(i + 1)) {
      const square = squareness(one, two);
      if (square > most) [best, most] = [[one, two], square];
    }
  }
  return best;
}

// A third tape tells the two sides apart where one misfit is this many times the other and over what a tape can miss.
const tellingRatio = 4;
const tellingGap = 0.1;

/** The place of a station from two or more ties. Two need a side; more can tell it by themselves. */
export function placeByTies(ties: readonly Tie[], side: SideOfLine | null): Point | StartFault {
  const pair = bestPair(ties);
  if (pair === null) return { fault: "which-side" };
  const found = cuts(...pair);
  if ("fault" in found) return found;
  const [one, two] = found;
  const sided = side === null ? null : onSide(side, one, two);
  if (sided !== null) return sided;
  const [gapOne, gapTwo] = [misfit(one, ties), misfit(two, ties)];
  const [near, far] = gapOne < gapTwo ? [gapOne, gapTwo] : [gapTwo, gapOne];
  if (!(far > tellingGap && far > tellingRatio * near)) return { fault: "which-side" };
  return gapOne < gapTwo ? one : two;
}

/** The one of two points that lies on the side asked for; null where both do, or neither. */
function onSide({ side, line }: SideOfLine, one: Point, two: Point): Point | null {
  const sign = side === "left" ? 1 : -1;
  const [oneFits, twoFits] = [sign * leftness(line, one) > 0, sign * leftness(line, two) > 0];
  if (oneFits === twoFits) return null;
  return oneFits ? one : two;
}

/** From the start of a line, `run` along it and `left` to its left. */
export function placeByOffset([a, b]: readonly [Point, Point], run: number, left: number): Point | StartFault {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (!(length > 0)) return { fault: "no-length", words: "both ends of the line lie on one spot" };
  const [e, n] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  return [a[0] + run * e - left * n, a[1] + run * n + left * e];
}

/** By azimuth (radians clockwise from grid north) and tape. */
export function placeByBearing(from: Point, azimuth: number, length: number): Point {
  return [from[0] + length * Math.sin(azimuth), from[1] + length * Math.cos(azimuth)];
}

/** The angle at which two ties meet, radians, 0 to pi. */
export function cutAngle(at: Point, one: Point, two: Point): number {
  const u = [one[0] - at[0], one[1] - at[1]] as const;
  const v = [two[0] - at[0], two[1] - at[1]] as const;
  return Math.abs(Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]));
}
