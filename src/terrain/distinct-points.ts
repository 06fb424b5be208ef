// Sorting out points that have no place, or share one.

import { boxOf } from "../geometry/box.ts";
import { indexBoxes } from "../geometry/index-boxes.ts";
import { isFinitePoint, type Point } from "../geometry/point.ts";
import type { NetTrouble } from "./net-trouble.ts";

/** The grid to which drawn points are snapped, metres: nearer than this is the same place, or on the line. */
export const samePlace = 1e-6;

/** Which points to use, and what each of the others stands for. */
export interface Distinct {
  readonly kept: readonly number[];
  /** For every point the number of the one kept in its place; undefined where it has no place. */
  readonly standsFor: readonly (number | undefined)[];
}

/** The points that have a place of their own; of several within `samePlace` the first. */
export function distinctPoints(points: readonly Point[]): Distinct & { readonly troubles: readonly NetTrouble[] } {
  const troubles: NetTrouble[] = [];
  const kept: number[] = [];
  const standsFor: (number | undefined)[] = [];
  const index = indexBoxes(points.map((point) => (isFinitePoint(point) ? boxOf([point]) : null)));
  for (const [i, at] of points.entries()) {
    const box = isFinitePoint(at) ? boxOf([at]) : null;
    const first = box === null ? undefined : index.within(box, samePlace).find((j) => j < i && standsFor[j] === j);
    standsFor.push(box === null ? undefined : (first ?? i));
    if (box === null) troubles.push({ is: "not-a-number", point: i });
    else if (first === undefined) kept.push(i);
    else troubles.push({ is: "same-place", points: [first, i], at });
  }
  return { kept, standsFor, troubles };
}
