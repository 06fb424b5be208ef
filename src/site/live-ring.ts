// Closed rings of live vertices: made from lines and round things, joined, and moved in or out with frozen topology.

import { ringAround } from "../geometry/circle.ts";
import { grown } from "../geometry/overlay.ts";
import { type Polygon, polygonOf } from "../geometry/polygon.ts";
import { signedArea, whereInRing } from "../geometry/ring.ts";
import { cross, dot, minus, norm, plus, times, unit } from "../geometry/vector.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { beside, type LivePoint } from "./live-figure.ts";

/** A closed ring of live vertices, either way round. */
export type LiveRing = readonly LivePoint[];

export function ringAt(ring: LiveRing, read: Read): readonly Point[] {
  return ring.map((point) => point(read));
}

/** Outline of a line with a width that may be live. */
export function ringAlong(line: readonly LivePoint[], width: (read: Read) => number): LiveRing {
  const side = (sign: 1 | -1) => line.map((_, index) => beside(line, index, (read) => (sign * width(read)) / 2));
  return [...side(1), ...side(-1).reverse()];
}

/** A round thing is taken as a ring that lies no farther than this outside it, metres. */
const roundSlack = 0.002;

/**
 * Ring round a live circle. Its corners are counted from `heading` (radians), so that it turns with what looks at it.
 * Null for a circle of no size.
 */
export function ringRound(
  centre: LivePoint,
  radius: (read: Read) => number,
  { read, heading }: { readonly read: Read; readonly heading: number },
): LiveRing | null {
  const now = radius(read);
  if (!(now > 0)) return null;
  const sides = ringAround({ centre: [0, 0], radius: now }, roundSlack, "around").length;
  const outer = 1 / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, k): LivePoint => {
    const angle = heading + (2 * Math.PI * k) / sides;
    const direction: Point = [outer * Math.cos(angle), outer * Math.sin(angle)];
    return (moved) => plus(centre(moved), times(direction, radius(moved)));
  });
}

/** Areas are joined a hair's breadth larger (m), so that those that touch are one, whichever way rounding parts them. */
const hair = 1e-5;
/** Vertices of a union lie this near to what they come from (m): the hair and the clipping grid, with room for crossings at a slant. */
const near = 5e-5;

/**
 * Rings of what several live areas cover together, outlines and holes. A vertex of the union is a vertex of an area, or
 * the crossing of two sides; as that it moves with the numbers. Null where the areas cannot be joined.
 */
export function joinedRings(areas: readonly LiveRing[], read: Read): readonly LiveRing[] | null {
  const plain = areas.map((ring) => ringAt(ring, read));
  const polygons = plain.flatMap((ring): Polygon[] => [polygonOf(ring)]);
  const joined = grown(polygons, hair, { corners: "mitre" });
  if (!joined) return null;
  const rings = joined
    .flatMap((polygon) => [polygon.outline, ...polygon.holes])
    .map(withoutSpecks)
    .map(withoutNeedless);
  return rings.map((ring) => ring.map((vertex) => sourceOf(vertex, areas, plain)));
}

/** Sides shorter than this (m) come of drawing, not of the ground. */
const speck = 0.005;

function withoutSpecks(ring: readonly Point[]): readonly Point[] {
  return ring.filter((vertex, i) => norm(minus(vertex, ring.at(i - 1) as Point)) > speck);
}

/** A vertex this near to the line from the one before to the next (m) bends nothing. */
const unbent = 1e-4;

/** A ring without vertices on its straight sides: which of them a union leaves depends on how the plot is turned. */
function withoutNeedless(ring: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const [i, vertex] of ring.entries()) {
    const before = kept.at(-1) ?? ring.at(-1) ?? vertex;
    const next = ring[(i + 1) % ring.length] as Point;
    // Against the whole line: a splinter without width runs out along a side and back.
    const way = unit(minus(next, before));
    if (way && Math.abs(cross(way, minus(vertex, before))) > unbent) kept.push(vertex);
  }
  return kept;
}

interface LiveSide {
  readonly from: LivePoint;
  readonly to: LivePoint;
}

function sourceOf(vertex: Point, areas: readonly LiveRing[], plain: readonly (readonly Point[])[]): LivePoint {
  const through: { readonly side: LiveSide; readonly way: Point }[] = [];
  for (const [i, ring] of plain.entries()) {
    for (const [k, from] of ring.entries()) {
      const live = areas[i] as LiveRing;
      if (norm(minus(from, vertex)) < near) return live[k] as LivePoint;
      const next = (k + 1) % ring.length;
      const to = ring[next] as Point;
      if (distanceTo(vertex, from, to) < near)
        through.push({
          side: { from: live[k] as LivePoint, to: live[next] as LivePoint },
          way: unit(minus(to, from)) ?? [1, 0],
        });
    }
  }
  const [first] = through;
  const second = through.find(({ way }) => first && Math.abs(cross(first.way, way)) > 1e-3);
  return first && second ? crossing(first.side, second.side) : () => vertex;
}

function distanceTo(point: Point, from: Point, to: Point): number {
  const way = minus(to, from);
  const size = dot(way, way);
  const t = size === 0 ? 0 : Math.max(0, Math.min(1, dot(minus(point, from), way) / size));
  return norm(minus(plus(from, times(way, t)), point));
}

function crossing(a: LiveSide, b: LiveSide): LivePoint {
  return (read) => {
    const [p, q] = [a.from(read), b.from(read)];
    const along = minus(a.to(read), p);
    const other = minus(b.to(read), q);
    const t = cross(minus(q, p), other) / cross(along, other);
    return plus(p, times(along, t));
  };
}

/**
 * A plain ring with every side moved to its right by `by` metres (outwards, for an outline that runs counter-clockwise;
 * into the hole, for a hole that runs clockwise). Null where a side would be turned round.
 */
export function movedOut(ring: readonly Point[], by: number): readonly Point[] | null {
  if (by === 0) return ring;
  const count = ring.length;
  const live = ring.map(
    (point): LivePoint =>
      () =>
        point,
  );
  const around = (index: number) =>
    [live.at(index - 1), live[index], live[(index + 1) % count]] as readonly LivePoint[];
  const none: Read = () => 0;
  const moved = ring.map((_, index) => beside(around(index), 1, () => -by)(none));
  const turned = ring.some((from, index) => {
    const next = (index + 1) % count;
    const before = minus(ring[next] as Point, from);
    return dot(before, minus(moved[next] as Point, moved[index] as Point)) <= 0;
  });
  return turned ? null : moved;
}

/**
 * Plain rings of an area with all its edges moved out (in, where below 0), by the same vertices where that can be done,
 * else joined anew. Null where nothing is left.
 */
export function movedArea(rings: readonly (readonly Point[])[], by: number): readonly (readonly Point[])[] | null {
  const moved = rings.map((ring) => movedOut(ring, by));
  if (moved.every((ring) => ring !== null)) return moved;
  const [outlines, holes] = [
    rings.filter((ring) => signedArea(ring) > 0),
    rings.filter((ring) => signedArea(ring) <= 0),
  ];
  const areas = outlines.map((outline) =>
    polygonOf(
      outline,
      holes.filter((hole) => isWithin(hole, outline)),
    ),
  );
  const anew = grown(areas, by, { corners: "mitre" });
  return anew && anew.length > 0 ? anew.flatMap((polygon) => [polygon.outline, ...polygon.holes]) : null;
}

const isWithin = (hole: readonly Point[], outline: readonly Point[]) =>
  hole[0] !== undefined && whereInRing(outline, hole[0]) === "inside";
