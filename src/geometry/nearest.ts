// Clear distance between two figures, with the two points where they come nearest.

import { sideAt, sideCount, type Figure } from "./figure.ts";
import { distance, type Point } from "./point.ts";
import { holdsPoint } from "./polygon.ts";
import { crossingPoint, footOn, meeting, type Segment } from "./segment.ts";

/** A vertex of one figure and a side of the other. Chains, vertices and sides are counted from 0. */
export interface VertexAndSide {
  readonly vertexOf: "a" | "b";
  readonly chain: number;
  readonly vertex: number;
  readonly sideChain: number;
  readonly side: number;
}

/** The nearest pair of points. `pair` is null where the figures meet, `distance` then 0. */
export interface Nearest {
  readonly distance: number;
  readonly onA: Point;
  readonly onB: Point;
  readonly pair: VertexAndSide | null;
}

/** Nearest points of two segments: [on a, on b]. The same point twice where they meet. */
export function nearestOfSegments(
  a: Segment,
  b: Segment,
): { readonly distance: number; readonly onA: Point; readonly onB: Point } {
  if (meeting(a, b) !== "apart") {
    const at = crossingPoint(a, b) ?? sharedEnd(a, b);
    return { distance: 0, onA: at, onB: at };
  }
  let best = { distance: Number.POSITIVE_INFINITY, onA: a[0], onB: b[0] };
  for (const end of b) {
    const { foot, distance: off } = footOn(a, end);
    if (off < best.distance) best = { distance: off, onA: foot, onB: end };
  }
  for (const end of a) {
    const { foot, distance: off } = footOn(b, end);
    if (off < best.distance) best = { distance: off, onA: end, onB: foot };
  }
  return best;
}

/** An end of one overlapping segment that lies on the other. */
function sharedEnd(a: Segment, b: Segment): Point {
  const ends: readonly (readonly [Point, Segment])[] = [
    [a[0], b],
    [a[1], b],
    [b[0], a],
    [b[1], a],
  ];
  return ends.reduce((best, next) =>
    footOn(next[1], next[0]).distance < footOn(best[1], best[0]).distance ? next : best,
  )[0];
}

/**
 * Clear distance of two figures in metres: 0 where they touch, cross or one holds the other. It is always found
 * between a vertex of one and a side of the other. Null where a figure has no vertices.
 */
export function nearest(a: Figure, b: Figure): Nearest | null {
  const met = meetingPlace(a, b);
  if (met !== null) return { distance: 0, onA: met, onB: met, pair: null };
  const fromA = nearestVertex(a, b);
  const fromB = nearestVertex(b, a);
  if (fromA === null || fromB === null) return null;
  const { chain, vertex, sideChain, side } = fromA.distance <= fromB.distance ? fromA : fromB;
  const place = { chain, vertex, sideChain, side };
  if (fromA.distance <= fromB.distance) {
    return { distance: fromA.distance, onA: fromA.at, onB: fromA.foot, pair: { vertexOf: "a", ...place } };
  }
  return { distance: fromB.distance, onA: fromB.foot, onB: fromB.at, pair: { vertexOf: "b", ...place } };
}

/** A point that both figures hold; null where they are apart. */
export function meetingPlace(a: Figure, b: Figure): Point | null {
  for (const [sideA, sideB] of sidePairs(a, b)) {
    if (meeting(sideA, sideB) === "apart") continue;
    return nearestOfSegments(sideA, sideB).onA;
  }
  return heldVertex(a, b) ?? heldVertex(b, a);
}

/** Where no sides meet, a chain lies wholly inside or wholly outside the other area: its first vertex tells. */
function heldVertex(figure: Figure, other: Figure): Point | null {
  if (other.area === null) return null;
  for (const { points } of figure.chains) {
    const first = points[0];
    if (first !== undefined && holdsPoint(other.area, first)) return first;
  }
  return null;
}

/** Every side of one figure with every side of the other. */
function* sidePairs(a: Figure, b: Figure): Generator<readonly [Segment, Segment]> {
  for (const chainA of a.chains) {
    for (let i = 0; i < sideCount(chainA); i++) {
      const sideA = sideAt(chainA, i);
      for (const chainB of b.chains) for (let j = 0; j < sideCount(chainB); j++) yield [sideA, sideAt(chainB, j)];
    }
  }
}

interface VertexFoot {
  readonly chain: number;
  readonly vertex: number;
  readonly sideChain: number;
  readonly side: number;
  readonly at: Point;
  readonly foot: Point;
  readonly distance: number;
}

function nearestVertex(figure: Figure, other: Figure): VertexFoot | null {
  let best: VertexFoot | null = null;
  for (const [chain, { points }] of figure.chains.entries()) {
    for (const [vertex, at] of points.entries()) {
      const found = nearestSide(other, at);
      if (found !== null && (best === null || found.distance < best.distance)) best = { chain, vertex, at, ...found };
    }
  }
  return best;
}

/** The side of a figure that lies nearest to a point, with the foot; null for a figure without vertices. */
export function nearestSide(
  figure: Figure,
  at: Point,
): { readonly sideChain: number; readonly side: number; readonly foot: Point; readonly distance: number } | null {
  let best = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [sideChain, chain] of figure.chains.entries()) {
    for (let side = 0; side < sideCount(chain); side++) {
      const { foot, distance: off } = footOn(sideAt(chain, side), at);
      if (off < least) [best, least] = [{ sideChain, side, foot, distance: off }, off];
    }
  }
  return best;
}

/** Distance of a point from a figure, metres: 0 on it and inside an area. Null for a figure without vertices. */
export function distanceTo(figure: Figure, at: Point): number | null {
  if (figure.area !== null && holdsPoint(figure.area, at)) return 0;
  const found = nearestSide(figure, at);
  return found === null ? null : distance(found.foot, at);
}
