// Where the points of a net stand too far apart to say what lies between.

import { distance, type Point } from "../geometry/point.ts";
import { nextEdge } from "./delaunay.ts";
import type { Edge } from "./forced-edges.ts";
import type { Net } from "./net.ts";

/**
 * Edges longer than `times` the median edge, longest first: ground between far-apart points is guessed, and along the
 * outside of the net it is often not ground at all.
 */
export function longEdges(net: Net, times: number): readonly { readonly edge: Edge; readonly length: number }[] {
  const edges = uniqueEdges(net).map((edge) => ({
    edge,
    length: lengthIn(net, edge),
  }));
  const sorted = edges.toSorted((a, b) => b.length - a.length);
  const median = sorted[Math.floor(sorted.length / 2)]?.length ?? 0;
  return sorted.filter(({ length }) => length > times * median);
}

function uniqueEdges({ corners, twins }: Pick<Net, "corners" | "twins">): readonly Edge[] {
  return Array.from(corners, (_, e) => e)
    .filter((e) => e > (twins[e] as number))
    .map((e): Edge => [corners[e] as number, corners[nextEdge(e)] as number]);
}

/** The longest edge of a net and the middle one of all by length; empty for a net without edges. */
export function longestEdges(net: Net): readonly Edge[] {
  const sorted = uniqueEdges(net).toSorted((a, b) => lengthIn(net, b) - lengthIn(net, a));
  const [longest, middle] = [sorted[0], sorted[Math.floor(sorted.length / 2)]];
  return longest === undefined || middle === undefined ? [] : [longest, middle];
}

function lengthIn(net: Net, [a, b]: Edge): number {
  return distance(net.points[a] as Point, net.points[b] as Point);
}
