// Turning a Delaunay triangulation so that wanted edges are in it, and the rest stays as near to Delaunay as it can.
// Sloan 1993, "A fast algorithm for generating constrained Delaunay triangulations" (MEMORY).

import { sideOf, sideOfCircle } from "../geometry/orientation.ts";
import type { Point } from "../geometry/point.ts";
import { meeting } from "../geometry/segment.ts";
import { nextEdge, previousEdge, type HalfEdges } from "./delaunay.ts";

/** An edge, by the numbers of its points. */
export type Edge = readonly [number, number];

/**
 * Forces `wanted` edges into the triangulation (changed in place). They must not cross each other nor pass through a
 * point. Gives back those that could not be forced: none, as long as that holds.
 */
export function forceEdges(net: HalfEdges, points: readonly Point[], wanted: readonly Edge[]): readonly Edge[] {
  const mesh: Mesh = { ...net, points, fixed: new Set(), where: edgePlaces(net, points.length) };
  const failed: Edge[] = [];
  for (const edge of wanted) {
    if (!forceEdge(mesh, edge)) failed.push(edge);
    mesh.fixed.add(keyOf(mesh, edge[0], edge[1])).add(keyOf(mesh, edge[1], edge[0]));
  }
  return failed;
}

interface Mesh extends HalfEdges {
  readonly points: readonly Point[];
  readonly fixed: Set<number>;
  /** Half-edge by its two points. */
  readonly where: Map<number, number>;
}

function keyOf({ points }: { readonly points: readonly Point[] }, from: number, to: number): number {
  return from * points.length + to;
}

function edgePlaces({ corners }: HalfEdges, count: number): Map<number, number> {
  const where = new Map<number, number>();
  for (let e = 0; e < corners.length; e++)
    where.set((corners[e] as number) * count + (corners[nextEdge(e)] as number), e);
  return where;
}

function halfEdgeOf(mesh: Mesh, [from, to]: Edge): number | undefined {
  return mesh.where.get(keyOf(mesh, from, to)) ?? mesh.where.get(keyOf(mesh, to, from));
}

function forceEdge(mesh: Mesh, edge: Edge): boolean {
  if (halfEdgeOf(mesh, edge) !== undefined) return true;
  const queue = crossedEdges(mesh, edge);
  const fresh: Edge[] = [];
  // Each turn either takes an edge away from those crossed or makes room for it; this bound is far from reached.
  let turnsLeft = 10 * (queue.length + 1) ** 2;
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    if (turnsLeft-- === 0) return false;
    const e = halfEdgeOf(mesh, next) as number;
    const turned = flip(mesh, e);
    if (turned === null) queue.push(next);
    else if (crosses(mesh, turned, edge)) queue.push(turned);
    else fresh.push(turned);
  }
  if (halfEdgeOf(mesh, edge) === undefined) return false;
  smooth(
    mesh,
    fresh.filter((made) => !sameEdge(made, edge)),
  );
  return true;
}

function sameEdge(a: Edge, b: Edge): boolean {
  return (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);
}

function crosses({ points }: Mesh, a: Edge, b: Edge): boolean {
  const segmentOf = ([from, to]: Edge): [Point, Point] => [points[from] as Point, points[to] as Point];
  return meeting(segmentOf(a), segmentOf(b)) === "cross";
}

function crossedEdges(mesh: Mesh, edge: Edge): Edge[] {
  const { corners, twins, points } = mesh;
  const [a, b] = [points[edge[0]] as Point, points[edge[1]] as Point];
  const [west, east] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
  const [south, north] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  const crossed: Edge[] = [];
  for (let e = 0; e < corners.length; e++) {
    if ((twins[e] as number) < e) continue;
    const made: Edge = [corners[e] as number, corners[nextEdge(e)] as number];
    const [p, q] = [points[made[0]] as Point, points[made[1]] as Point];
    const apart =
      (p[0] < west && q[0] < west) ||
      (p[0] > east && q[0] > east) ||
      (p[1] < south && q[1] < south) ||
      (p[1] > north && q[1] > north);
    if (!apart && crosses(mesh, made, edge)) crossed.push(made);
  }
  return crossed;
}

/** Turns the diagonal of the quadrangle about half-edge `e`; null where that is not convex, or the edge is fixed or outside. */
function flip(mesh: Mesh, e: number): Edge | null {
  const { corners, twins, where } = mesh;
  const twin = twins[e] as number;
  if (twin === -1) return null;
  const [from, to] = [corners[e] as number, corners[twin] as number];
  const [left, right] = [corners[previousEdge(e)] as number, corners[previousEdge(twin)] as number];
  if (mesh.fixed.has(keyOf(mesh, from, to)) || !isConvex(mesh, [left, from, right, to])) return null;
  const [beyondLeft, beyondRight] = [twins[previousEdge(e)] as number, twins[previousEdge(twin)] as number];
  where.delete(keyOf(mesh, from, to));
  where.delete(keyOf(mesh, to, from));
  corners[e] = right;
  corners[twin] = left;
  link(mesh, e, beyondRight);
  link(mesh, twin, beyondLeft);
  link(mesh, previousEdge(e), previousEdge(twin));
  for (const changed of [e, twin, previousEdge(e), previousEdge(twin)]) {
    where.set(keyOf(mesh, corners[changed] as number, corners[nextEdge(changed)] as number), changed);
  }
  return [left, right];
}

function link({ twins }: HalfEdges, a: number, b: number): void {
  twins[a] = b;
  if (b !== -1) twins[b] = a;
}

function isConvex({ points }: Mesh, ring: readonly number[]): boolean {
  return ring.every((_, i) => {
    const [a, b, c] = [i, i + 1, i + 2].map((at) => points[ring[at % 4] as number] as Point) as [Point, Point, Point];
    return sideOf(a, b, c) === 1;
  });
}

/** Turns the fresh edges until each is Delaunay or cannot be. */
function smooth(mesh: Mesh, fresh: readonly Edge[]): void {
  let edges = fresh;
  for (let rounds = 0; rounds <= fresh.length && edges.length > 0; rounds++) {
    let changed = false;
    edges = edges.map((edge) => {
      const e = halfEdgeOf(mesh, edge) as number;
      const turned = isDelaunay(mesh, e) ? null : flip(mesh, e);
      changed ||= turned !== null;
      return turned ?? edge;
    });
    if (!changed) return;
  }
}

function isDelaunay({ corners, twins, points }: Mesh, e: number): boolean {
  const twin = twins[e] as number;
  if (twin === -1) return true;
  const at = (edge: number): Point => points[corners[edge] as number] as Point;
  return sideOfCircle(at(e), at(nextEdge(e)), at(previousEdge(e)), at(previousEdge(twin))) !== 1;
}
