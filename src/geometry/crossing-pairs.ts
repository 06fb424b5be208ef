// Where two figures pass through each other: which end has least way back.

import { boxesMeet, boxOf } from "./box.ts";
import { sideAt, sideCount, type Chain, type Figure } from "./figure.ts";
import type { NearPair } from "./near-pair.ts";
import { sideOf } from "./orientation.ts";
import type { Point } from "./point.ts";
import { boundsApart, footOn, meeting, type Segment } from "./segment.ts";

/**
 * One pair for every two sides that pass through each other, and for every vertex that lies on a side which its
 * figure passes through there. Paired is the end that has least way back; `distance` is that way, below 0, metres.
 */
export function crossingPairs(a: Figure, b: Figure): readonly NearPair[] {
  const pairs: NearPair[] = [];
  for (const [ca, chainA] of a.chains.entries()) {
    // Most figures lie apart, and most sides need not be looked at one by one.
    const reached = [...b.chains.entries()].filter(([, chainB]) => chainsMeet(chainA, chainB));
    if (reached.length === 0) continue;
    for (let i = 0; i < sideCount(chainA); i++) {
      for (const [cb, chainB] of reached) {
        for (let j = 0; j < sideCount(chainB); j++) {
          const ends = crossingEnds({ chain: chainA, side: i }, { chain: chainB, side: j });
          if (ends.length === 0) continue;
          const corners = ends.map((end): Back => ({
            ...end,
            chain: end.vertexOf === "a" ? ca : cb,
            sideChain: end.vertexOf === "a" ? cb : ca,
          }));
          pairs.push(shortestWayBack(corners));
        }
      }
    }
  }
  return pairs;
}

/** Whether the boxes around two chains share a point; where they do not, no two sides do. */
function chainsMeet(one: Chain, other: Chain): boolean {
  const [a, b] = [boxOf(one.points), boxOf(other.points)];
  return a !== null && b !== null && boxesMeet(a, b);
}

interface SideOfChain {
  readonly chain: Chain;
  readonly side: number;
}

interface End {
  readonly vertexOf: "a" | "b";
  readonly vertex: number;
  readonly at: Point;
  readonly side: number;
  readonly segment: Segment;
}
interface Back extends End {
  readonly chain: number;
  readonly sideChain: number;
}

const none: readonly End[] = [];

/** The ends that could be taken back to undo the crossing of two sides; none where they do not cross. */
function crossingEnds(a: SideOfChain, b: SideOfChain): readonly End[] {
  const sideA = sideAt(a.chain, a.side);
  const sideB = sideAt(b.chain, b.side);
  if (boundsApart(sideA, sideB)) return none;
  const how = meeting(sideA, sideB);
  if (how === "cross")
    return [...endsOf(a, "a", { ...b, segment: sideB }), ...endsOf(b, "b", { ...a, segment: sideA })];
  if (how !== "touch") return [];
  return [...passingEnds(a, "a", { ...b, segment: sideB }), ...passingEnds(b, "b", { ...a, segment: sideA })];
}

interface Against extends SideOfChain {
  readonly segment: Segment;
}

function endsOf({ chain, side }: SideOfChain, vertexOf: "a" | "b", against: Against): readonly End[] {
  return [side, (side + 1) % chain.points.length].map((vertex) => ({
    vertexOf,
    vertex,
    at: chain.points[vertex] as Point,
    side: against.side,
    segment: against.segment,
  }));
}

/** Where a chain passes through a segment exactly at the first vertex of its side: the vertices before and after. */
function passingEnds({ chain, side }: SideOfChain, vertexOf: "a" | "b", against: Against): readonly End[] {
  const count = chain.points.length;
  if (count < 2 || (chain.ends === "open" && side === 0)) return [];
  const before = (side + count - 1) % count;
  const after = (side + 1) % count;
  const sides = [before, side, after].map((i) => sideOf(...against.segment, chain.points[i] as Point));
  const strictlyWithin = footOn(against.segment, chain.points[side] as Point).share;
  if (sides[1] !== 0 || (sides[0] as number) * (sides[2] as number) >= 0) return [];
  if (strictlyWithin <= 0 || strictlyWithin >= 1) return [];
  return [before, after].map((vertex) => ({
    vertexOf,
    vertex,
    at: chain.points[vertex] as Point,
    side: against.side,
    segment: against.segment,
  }));
}

function shortestWayBack(ends: readonly Back[]): NearPair {
  const pairs = ends.map(({ vertexOf, chain, vertex, at, sideChain, side, segment }): NearPair => {
    const { foot, distance } = footOn(segment, at);
    const outside = sideOf(...segment, at) > 0 ? -1 : 1;
    return { vertexOf, chain, vertex, at, sideChain, side, foot, how: "crossing", outside, distance: -distance };
  });
  return pairs.reduce((best, next) => (next.distance > best.distance ? next : best));
}
