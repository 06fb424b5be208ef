// The way water takes down the ground from a point.

import { between, distance, type Point } from "../geometry/point.ts";
import { footOn, type Segment } from "../geometry/segment.ts";
import { cross, minus, type Vector } from "../geometry/vector.ts";
import { nextEdge } from "./delaunay.ts";
import { groundAt, planeOf, slopeOf, type Plane, type Surface } from "./surface.ts";

/**
 * A way downhill. It ends in a `hollow` from which nothing falls, on ground that is `level`, or at the `edge` of the net
 * beyond which the ground is not known.
 */
export interface FlowPath {
  readonly points: readonly Point[];
  readonly levels: readonly number[];
  readonly end: "hollow" | "level" | "edge";
}

// Ground that falls less than this (metres per metre: 1 mm in 10 km) is level.
const levelSlope = 1e-7;
// Nearer than this (metres) to a corner or an edge is on it.
const onIt = 1e-9;

/**
 * The way down from `start`: straight down each triangle, along an edge where both sides fall towards it, from a corner
 * down the steepest of the triangles and edges there. Null where `start` lies off the net.
 */
export function flowPath(surface: Surface, start: Point): FlowPath | null {
  const ground = groundAt(surface, start);
  if (ground === null) return null;
  const points: Point[] = [start];
  const levels: number[] = [ground.level];
  let place: Place = placeIn(surface, ground.triangle, start);
  // The way falls all the time, so it meets no corner twice; this bound is far from reached.
  for (let steps = 0; steps < 6 * surface.net.corners.length + 6; steps++) {
    const step = stepFrom(surface, place);
    if (typeof step === "string") return { points, levels, end: step };
    points.push(step.at);
    levels.push(step.level);
    place = step.place;
  }
  return { points, levels, end: "level" };
}

type Place =
  | { readonly on: "triangle"; readonly triangle: number; readonly at: Point }
  | { readonly on: "edge"; readonly edge: number; readonly at: Point }
  | { readonly on: "corner"; readonly corner: number; readonly at: Point };

interface Step {
  readonly at: Point;
  readonly level: number;
  readonly place: Place;
}

function segmentOf({ net }: Surface, e: number): Segment {
  return [net.points[net.corners[e] as number] as Point, net.points[net.corners[nextEdge(e)] as number] as Point];
}

function levelOf(surface: Surface, e: number): number {
  return surface.levels[surface.net.corners[e] as number] as number;
}

/** Where a point of a triangle lies: inside it, on an edge, or on a corner. */
function placeIn(surface: Surface, triangle: number, at: Point): Place {
  const edges = [3 * triangle, 3 * triangle + 1, 3 * triangle + 2];
  const corner = edges.find((e) => distance(segmentOf(surface, e)[0], at) <= onIt);
  if (corner !== undefined) return { on: "corner", corner: surface.net.corners[corner] as number, at };
  const edge = edges.find((e) => footOn(segmentOf(surface, e), at).distance <= onIt);
  return edge === undefined ? { on: "triangle", triangle, at } : { on: "edge", edge, at };
}

function stepFrom(surface: Surface, place: Place): Step | FlowPath["end"] {
  if (place.on === "triangle") return downTriangle(surface, place.triangle, place.at);
  return place.on === "edge" ? fromEdge(surface, place.edge, place.at) : fromCorner(surface, place.corner, place.at);
}

function fallOf({ east, north }: Plane): Vector {
  return [-east, -north];
}

/** Straight down a triangle, to the edge by which the fall leaves it. */
function downTriangle(surface: Surface, triangle: number, at: Point): Step | FlowPath["end"] {
  const plane = planeOf(surface, triangle);
  if (plane === null || slopeOf(plane) <= levelSlope) return "level";
  const fall = fallOf(plane);
  let [best, least]: [number | null, number] = [null, Number.POSITIVE_INFINITY];
  for (let e = 3 * triangle; e < 3 * triangle + 3; e++) {
    const [from, to] = segmentOf(surface, e);
    const outward = cross(fall, minus(to, from));
    if (outward <= 0) continue;
    const reach = cross(minus(from, at), minus(to, from)) / outward;
    if (reach < least) [best, least] = [e, Math.max(0, reach)];
  }
  if (best === null) return "level";
  const met = [at[0] + fall[0] * least, at[1] + fall[1] * least] as const;
  return arrival(surface, best, met);
}

/** Arriving on edge `e`: at one of its corners where that is near enough. */
function arrival(surface: Surface, e: number, met: Point): Step {
  const segment = segmentOf(surface, e);
  const { share } = footOn(segment, met);
  const at = between(segment[0], segment[1], share);
  const [start, end] = [levelOf(surface, e), levelOf(surface, nextEdge(e))];
  if (distance(at, segment[0]) <= onIt) return atCorner(surface, e);
  if (distance(at, segment[1]) <= onIt) return atCorner(surface, nextEdge(e));
  return { at, level: start + (end - start) * share, place: { on: "edge", edge: e, at } };
}

function atCorner(surface: Surface, e: number): Step {
  const corner = surface.net.corners[e] as number;
  const at = surface.net.points[corner] as Point;
  return { at, level: surface.levels[corner] as number, place: { on: "corner", corner, at } };
}

/** From a place on an edge: into the triangle that falls away from it, steepest first, else down along the edge. */
function fromEdge(surface: Surface, e: number, at: Point): Step | FlowPath["end"] {
  const twin = surface.net.twins[e] as number;
  const ways = [e, twin].filter((side) => side !== -1);
  let [best, steepest]: [number | null, number] = [null, levelSlope];
  for (const side of ways) {
    const plane = planeOf(surface, Math.floor(side / 3));
    const [from, to] = segmentOf(surface, side);
    if (plane === null || cross(minus(to, from), fallOf(plane)) <= 0) continue;
    if (slopeOf(plane) > steepest) [best, steepest] = [Math.floor(side / 3), slopeOf(plane)];
  }
  if (best !== null) return downTriangle(surface, best, at);
  if (twin === -1 && fallsOut(surface, e)) return "edge";
  const drop = levelOf(surface, e) - levelOf(surface, nextEdge(e));
  const [from, to] = segmentOf(surface, e);
  if (Math.abs(drop) <= levelSlope * distance(from, to)) return "level";
  return atCorner(surface, drop > 0 ? nextEdge(e) : e);
}

/** Whether the triangle of an outside edge falls out over it. */
function fallsOut(surface: Surface, e: number): boolean {
  const plane = planeOf(surface, Math.floor(e / 3));
  const [from, to] = segmentOf(surface, e);
  return plane !== null && slopeOf(plane) > levelSlope && cross(minus(to, from), fallOf(plane)) < 0;
}

/** From a corner: down the steepest of the triangles that fall away within their own angle, and of the edges. */
function fromCorner(surface: Surface, corner: number, at: Point): Step | FlowPath["end"] {
  const { net } = surface;
  const leaving = Array.from(net.corners, (_, e) => e).filter((e) => net.corners[e] === corner);
  let [best, steepest]: [(() => Step | FlowPath["end"]) | null, number] = [null, levelSlope];
  for (const e of leaving) {
    const arriving = nextEdge(nextEdge(e));
    for (const far of [nextEdge(e), arriving]) {
      const drop = (surface.levels[corner] as number) - levelOf(surface, far);
      const slope = drop / distance(at, segmentOf(surface, far)[0]);
      if (slope > steepest) [best, steepest] = [() => atCorner(surface, far), slope];
    }
    const plane = planeOf(surface, Math.floor(e / 3));
    if (plane === null || slopeOf(plane) <= steepest || !fallsWithin(surface, e, fallOf(plane))) continue;
    [best, steepest] = [() => downTriangle(surface, Math.floor(e / 3), at), slopeOf(plane)];
  }
  if (best !== null) return best();
  const outside = leaving.some((e) => net.twins[e] === -1 || net.twins[nextEdge(nextEdge(e))] === -1);
  const someFall = leaving.some((e) => slopeOf(planeOf(surface, Math.floor(e / 3)) ?? levelGround) > levelSlope);
  return outside && someFall ? "edge" : someFall ? "hollow" : "level";
}

const levelGround: Plane = { origin: [0, 0], atOrigin: 0, east: 0, north: 0 };

/** Whether a fall from the corner where edge `e` starts points into the triangle of `e`. */
function fallsWithin(surface: Surface, e: number, fall: Vector): boolean {
  const [from, to] = segmentOf(surface, e);
  const other = segmentOf(surface, nextEdge(nextEdge(e)))[0];
  return cross(minus(to, from), fall) > 0 && cross(fall, minus(other, from)) > 0;
}

/** Fall along a way from its first point to its last, metres; the length in metres; both 0 for a lone point. */
export function fallAlong(path: FlowPath): { readonly fall: number; readonly length: number } {
  const length = path.points.slice(1).reduce((sum, point, i) => sum + distance(path.points[i] as Point, point), 0);
  return { fall: (path.levels[0] as number) - (path.levels.at(-1) as number), length };
}
