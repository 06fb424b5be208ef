// The middle of a way: its line, or the long axis of an outline that is long and narrow.

import { convexHull } from "../geometry/convex-hull.ts";
import { dot, minus, plus, times, toTheLeft, unit, type Vector } from "../geometry/vector.ts";
import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { centreFigure, figureAt, groundFigure, type LiveFigure } from "./live-figure.ts";

/** An outline at least this many times as long as it is wide is a way; less, and it is a yard with no middle line. */
const slender = 2.5;

export interface Middle {
  readonly figure: LiveFigure;
  readonly line: readonly Point[];
}

/** The middle line of a way at a read; null of what is no way. */
export function middleOf(way: Feature, read: Read): Middle | null {
  if (way.shape?.form === "line") {
    const figure = centreFigure(way);
    return figure && { figure, line: figureAt(figure, read).chains[0]?.points ?? [] };
  }
  const figure = way.shape?.form === "outline" ? groundFigure(way) : null;
  const line = figure && axisOf(figureAt(figure, read).chains[0]?.points ?? []);
  if (!line) return null;
  const points = line.map((point) => () => point);
  return { figure: { chains: [{ points, ends: "open" }], solid: false, grow: () => 0 }, line };
}

/** Long axis of the narrowest rectangle about an outline; null where it is not slender. One side of that rectangle lies along a side of the hull. */
function axisOf(outline: readonly Point[]): readonly [Point, Point] | null {
  const hull = convexHull(outline);
  const boxes = hull.flatMap((start, k) => {
    const way = unit(minus(hull[(k + 1) % hull.length] as Point, start));
    return way ? [boxAlong(hull, way)] : [];
  });
  const [narrowest] = boxes.sort((a, b) => a.width - b.width);
  return narrowest && narrowest.length >= slender * narrowest.width ? narrowest.axis : null;
}

function boxAlong(hull: readonly Point[], direction: Vector) {
  const across = toTheLeft(direction);
  const runs = hull.map((point) => dot(point, direction));
  const offsets = hull.map((point) => dot(point, across));
  const [from, to] = [Math.min(...runs), Math.max(...runs)];
  const [right, left] = [Math.min(...offsets), Math.max(...offsets)];
  const at = (run: number): Point => plus(times(direction, run), times(across, (left + right) / 2));
  return { length: to - from, width: left - right, axis: [at(from), at(to)] as const };
}
