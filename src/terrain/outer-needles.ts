// Triangles without width along the outside of a net, which come of points that stand on one line or nearly so.

import { distance, type Point } from "../geometry/point.ts";
import { footOn } from "../geometry/segment.ts";
import { type HalfEdges, nextEdge, previousEdge } from "./delaunay.ts";
import { samePlace } from "./distinct-points.ts";
import type { Net } from "./net.ts";

type Edges = Pick<Net, "corners" | "twins">;

/** Whether the triangle of an outer half-edge, with its third corner so far from that edge, is to be taken off. */
type IsNeedle = (edge: number, ends: readonly [Point, Point], width: number) => boolean;

/** Triangles taken off from the outside inwards: one that is laid bare is looked at too. */
function takenOff({ corners, twins }: Edges, points: readonly Point[], isNeedle: IsNeedle): ReadonlySet<number> {
  const gone = new Set<number>();
  const at = (e: number): Point => points[corners[e] as number] as Point;
  const outer = Array.from(twins, (_, e) => e).filter((e) => twins[e] === -1);
  for (let e = outer.pop(); e !== undefined; e = outer.pop()) {
    const t = Math.floor(e / 3);
    const ends = [at(e), at(nextEdge(e))] as const;
    if (gone.has(t) || !isNeedle(e, ends, footOn(ends, at(previousEdge(e))).distance)) continue;
    gone.add(t);
    outer.push(...[nextEdge(e), previousEdge(e)].map((side) => twins[side] as number).filter((side) => side !== -1));
  }
  return gone;
}

/**
 * The triangulation without outer triangles whose third corner lies within `samePlace` of the outer edge. Pegs put in
 * along one straight line stand on it but for the last binary digit, and a plane through three of them would slope by
 * metres in that digit.
 */
export function withoutOuterNeedles(net: HalfEdges, points: readonly Point[]): HalfEdges {
  const gone = takenOff(net, points, (_, __, width) => width <= samePlace);
  if (gone.size === 0) return net;
  const left = Array.from({ length: net.corners.length / 3 }, (_, t) => t).filter((t) => !gone.has(t));
  const placeOf = new Map(left.map((t, place) => [t, place]));
  const moved = (e: number): number => {
    const place = placeOf.get(Math.floor(e / 3));
    return e === -1 || place === undefined ? -1 : 3 * place + (e % 3);
  };
  const edges = left.flatMap((t) => [3 * t, 3 * t + 1, 3 * t + 2]);
  return {
    corners: Int32Array.from(edges, (e) => net.corners[e] as number),
    twins: Int32Array.from(edges, (e) => moved(net.twins[e] as number)),
  };
}

/**
 * Least width of an outer triangle over the length of its outer edge. Below it the edge joins the ends of what is nearly
 * one line of levels: it is no ground that anybody saw, and the plane across it says nothing of a slope (method).
 */
const leastWidth = 0.02;

/** Outer triangles of a net that say nothing of how the ground leans: needles, but for those along a drawn break. */
export function outerNeedles(net: Net): ReadonlySet<number> {
  const breaks = new Set(net.breaks.flatMap(([a, b]) => [`${a} ${b}`, `${b} ${a}`]));
  const isDrawn = (e: number): boolean => breaks.has(`${net.corners[e]} ${net.corners[nextEdge(e)]}`);
  return takenOff(net, net.points, (e, [from, to], width) => width < leastWidth * distance(from, to) && !isDrawn(e));
}
