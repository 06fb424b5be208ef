// A point placed by two tapes from two known points.

import type { Coordinates } from "./observation.ts";

/** Two taped lengths from two known points, and the side of the line from the first to the second. */
export interface Tie {
  readonly first: Coordinates;
  readonly second: Coordinates;
  readonly toFirst: number;
  readonly toSecond: number;
  readonly side: "left" | "right";
}

/** The point and the angle its tapes cut at, radians; or by how much the lengths fail to close, metres. */
export type Tied = { readonly at: Coordinates; readonly cutAngle: number } | { readonly gap: number };

/**
 * Place a point by two ties: x = (b^2 - a^2 + c^2) / 2c along the base from the second point's side, here taken
 * from the first: x = (a^2 - b^2 + c^2) / 2c, y = +-sqrt(a^2 - x^2). COMPUTED (law of cosines).
 * `cutAngle` is the angle between the two tapes at the point, radians: near 0 or pi the point is badly held.
 */
export function placeByTies({ first, second, toFirst, toSecond, side }: Tie): Tied {
  const east = second[0] - first[0];
  const north = second[1] - first[1];
  const base = Math.sqrt(east * east + north * north);
  const gap = Math.max(base - toFirst - toSecond, Math.abs(toFirst - toSecond) - base);
  if (!(gap <= 0) || !(base > 0)) return { gap: Number.isNaN(gap) ? Infinity : Math.max(gap, 0) };
  const along = (toFirst * toFirst - toSecond * toSecond + base * base) / (2 * base);
  const out = Math.sqrt(Math.max(0, toFirst * toFirst - along * along)) * (side === "left" ? 1 : -1);
  const at: Coordinates = [
    first[0] + (along * east - out * north) / base,
    first[1] + (along * north + out * east) / base,
  ];
  return { at, cutAngle: cutAngle(toFirst, toSecond, base) };
}

/** Angle between two ties at the point they fix, radians, by the three sides: acos((a^2 + b^2 - c^2) / 2ab). */
export function cutAngle(toFirst: number, toSecond: number, base: number): number {
  const cosine = (toFirst * toFirst + toSecond * toSecond - base * base) / (2 * toFirst * toSecond);
  return Math.acos(Math.max(-1, Math.min(1, cosine)));
}
