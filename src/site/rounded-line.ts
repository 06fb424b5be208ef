// A middle line whose corners are rounded, as a way is laid out: the same corners with an arc in place of each.

import { distance } from "../geometry/point.ts";
import { cross, dot, minus, plus, times, toTheLeft, unit } from "../geometry/vector.ts";
import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";

/** A vertex as a function of the read. */
type LivePoint = (read: Read) => Point;

/** An arc is drawn in so many pieces: at 90 degrees and 12 m they lie 6 mm inside it. */
const pieces = 24;

/** The middle line of a way with its bends rounded, where the plan gives their radius; else the line as it is drawn. */
export function roundedLine(
  way: Feature,
  line: readonly LivePoint[],
  width: Quantity | undefined,
): readonly LivePoint[] {
  const radius = propertyOf(way, "bend.radius");
  if (!isQuantity(radius) || line.length < 3) return line;
  const to = propertyOf(way, "bend.to");
  const side = (typeof to === "string" ? toEdge[to] : undefined) ?? 0;
  const middle = (read: Read) => Math.max(0, read(radius) + (width ? (side * read(width)) / 2 : 0));
  return line.flatMap((corner, i) => {
    const [before, after] = [line[i - 1], line[i + 1]];
    return before && after ? arcAt([before, corner, after], middle) : [corner];
  });
}

/** From the edge that a radius is given to, how many half widths out the middle line lies. */
const toEdge: Readonly<Record<string, 1 | -1>> = { "inner edge": 1, "outer edge": -1 };

type Corner = readonly [LivePoint, LivePoint, LivePoint];

/** Points of the arc at a corner: its ends lie R tan(turn / 2) from the corner, but never past the middle of a piece. */
function arcAt(corner: Corner, radius: (read: Read) => number): readonly LivePoint[] {
  return Array.from({ length: pieces + 1 }, (_, k) => (read: Read): Point => {
    const [before, at, after] = corner.map((point) => point(read)) as unknown as readonly [Point, Point, Point];
    const [into, out] = [unit(minus(at, before)), unit(minus(after, at))];
    if (!into || !out) return at;
    const turn = Math.atan2(cross(into, out), dot(into, out));
    const most = Math.min(distance(before, at), distance(at, after)) / 2;
    const half = Math.tan(Math.abs(turn) / 2);
    const back = Math.min(most, radius(read) * half);
    if (half < 1e-9 || back <= 0) return at;
    const start = minus(at, times(into, back));
    const towards = times(toTheLeft(into), Math.sign(turn));
    const bend = back / half;
    const share = (Math.abs(turn) * k) / pieces;
    return plus(plus(start, times(into, bend * Math.sin(share))), times(towards, bend * (1 - Math.cos(share))));
  });
}
