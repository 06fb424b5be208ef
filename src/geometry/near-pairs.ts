// Every place where two figures come near: each vertex of one against each side of the other, within a reach.

import { boxHolds, boxOf } from "./box.ts";
import { crossingPairs } from "./crossing-pairs.ts";
import { neighboursOf, sideAt, sideCount, type Chain, type Figure } from "./figure.ts";
import type { NearPair } from "./near-pair.ts";
import { nearestSide } from "./nearest.ts";
import { sideOf } from "./orientation.ts";
import { overlapPairs } from "./overlap-pairs.ts";
import type { Point } from "./point.ts";
import { whereInPolygon } from "./polygon.ts";
import { signedArea } from "./ring.ts";
import { footOn, type Segment } from "./segment.ts";

export { pairDistance, type NearPair } from "./near-pair.ts";

/**
 * Every vertex of one figure against every side of the other whose distance is at most `reach` metres, in the
 * order of the indexes. A vertex inside the other area is paired with its nearest side only, whatever the reach;
 * two sides that cross are paired through the end that has least way back. The least `distance` of the list is
 * the clear distance where the figures are apart, and below 0 where they overlap.
 */
export function nearestPairs(a: Figure, b: Figure, reach: number): readonly NearPair[] {
  const pairs = [
    ...vertexPairs({ figure: a, other: b, vertexOf: "a" }, reach),
    ...vertexPairs({ figure: b, other: a, vertexOf: "b" }, reach),
    ...crossingPairs(a, b),
  ];
  // Areas that touch, and of which no corner lies inside: they may share edges and overlap all the same.
  const meet = pairs.some(({ distance }) => distance < touching) && !pairs.some(({ distance }) => distance < -touching);
  return meet ? [...pairs, ...overlapPairs(a, b)] : pairs;
}

/** Nearer than this is touching, metres. */
const touching = 1e-9;

interface Task {
  readonly figure: Figure;
  readonly other: Figure;
  readonly vertexOf: "a" | "b";
}

function vertexPairs(task: Task, reach: number): readonly NearPair[] {
  const { area } = task.other;
  const areaBox = area && boxOf(area.outline);
  const pairs: NearPair[] = [];
  for (const [chain, { points }] of task.figure.chains.entries()) {
    for (const [vertex, at] of points.entries()) {
      const corner = { vertexOf: task.vertexOf, chain, vertex, at };
      const inside = area && areaBox && boxHolds(areaBox, at) && whereInPolygon(area, at) === "inside";
      if (inside) pairs.push(...insidePair(task.other, corner));
      else addApartPairs(pairs, task, corner, reach);
    }
  }
  return pairs;
}

interface Corner {
  readonly vertexOf: "a" | "b";
  readonly chain: number;
  readonly vertex: number;
  readonly at: Point;
}

function insidePair(other: Figure, corner: Corner): readonly NearPair[] {
  const found = nearestSide(other, corner.at);
  if (found === null) return [];
  const { sideChain, side, foot, distance } = found;
  const now = sideOf(...sideAt(other.chains[sideChain] as Chain, side), corner.at);
  return [{ ...corner, sideChain, side, foot, how: "inside", outside: now > 0 ? -1 : 1, distance: -distance }];
}

function addApartPairs(pairs: NearPair[], { figure, other }: Task, corner: Corner, reach: number): void {
  const { vertexOf, chain, vertex, at } = corner;
  for (const [sideChain, sides] of other.chains.entries()) {
    const count = sideCount(sides);
    for (let side = 0; side < count; side++) {
      const segment = sideAt(sides, side);
      const { foot, distance } = footOn(segment, at);
      if (!(distance <= reach)) continue;
      const now = sideOf(segment[0], segment[1], at);
      const outside = now !== 0 ? now : (outerSide(other, sideChain) ?? sideOfNeighbours(figure, corner, segment));
      pairs.push({ vertexOf, chain, vertex, at, sideChain, side, foot, how: "apart", outside, distance });
    }
  }
}

/** The side of the segments of an area's ring on which the area does not lie; null for a figure that is no area. */
function outerSide(figure: Figure, sideChain: number): 1 | -1 | null {
  if (figure.area === null) return null;
  const points = (figure.chains[sideChain] as Chain).points;
  const onTheRight = signedArea(points) > 0;
  return onTheRight === (sideChain === 0) ? -1 : 1;
}

/** For a vertex that lies on the other line itself: the side from which its own figure reaches there. */
function sideOfNeighbours(figure: Figure, { chain, vertex }: Corner, segment: Segment): 1 | -1 {
  let balance = 0;
  for (const point of neighboursOf(figure.chains[chain] as Chain, vertex)) balance += sideOf(...segment, point);
  return balance < 0 ? -1 : 1;
}
