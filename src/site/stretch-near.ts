// The part of a drawn line that lies near a place, so that a drawing shows what matters and no more.

import { distance } from "../geometry/point.ts";
import type { Point } from "../model/reading.ts";

/** So much of a line on both sides of a place is drawn, m. */
const shown = 4;

/** Consecutive points of a line about its point nearest to a place, as far as they lie within a few metres of it. */
export function stretchNear(line: readonly Point[], at: Point): readonly Point[] {
  const far = line.map((point) => distance(point, at));
  const nearest = far.indexOf(Math.min(...far));
  let [from, to] = [nearest, nearest];
  while (from > 0 && (far[from - 1] as number) <= shown) from -= 1;
  while (to < line.length - 1 && (far[to + 1] as number) <= shown) to += 1;
  // One more on both sides, so that a line of few points is not lost.
  return line.slice(Math.max(0, from - 1), to + 2);
}

/** The same of a ring: it is opened where it lies farthest from the place. */
export function ringNear(ring: readonly Point[], at: Point): readonly Point[] {
  const far = ring.map((point) => distance(point, at));
  const farthest = far.indexOf(Math.max(...far));
  return stretchNear([...ring.slice(farthest), ...ring.slice(0, farthest + 1)], at);
}
