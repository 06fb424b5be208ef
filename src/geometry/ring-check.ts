// What is wrong with a drawn line, ring or area, so that it can be told before anything is measured on it.

import { distance, isFinitePoint, type Point } from "./point.ts";
import { ringsOf, type Polygon } from "./polygon.ts";
import { ringArea, sidesOf, whereInRing } from "./ring.ts";
import { crossingPoint, leftOf, meeting, type Segment } from "./segment.ts";
import { piecesOf } from "./line.ts";
import { dot, minus } from "./vector.ts";

/**
 * One fault. Vertices, sides and holes are counted from 0; side i runs from vertex i to the next. `ring` is 0 for the
 * outline (or the line itself), 1 for the first hole, and so on. `at` is where to look.
 */
export type ShapeFault =
  | { readonly is: "not-a-number"; readonly ring: number; readonly vertex: number }
  | { readonly is: "too-few-points"; readonly ring: number; readonly points: number }
  | { readonly is: "repeated-point"; readonly ring: number; readonly vertex: number; readonly at: Point }
  | { readonly is: "spike"; readonly ring: number; readonly vertex: number; readonly at: Point }
  | { readonly is: "no-area"; readonly ring: number; readonly at: Point }
  | { readonly is: "sides-cross"; readonly ring: number; readonly sides: readonly [number, number]; readonly at: Point }
  | { readonly is: "sides-touch"; readonly ring: number; readonly sides: readonly [number, number]; readonly at: Point }
  | { readonly is: "hole-outside"; readonly ring: number; readonly at: Point }
  | { readonly is: "hole-in-hole"; readonly ring: number; readonly within: number; readonly at: Point }
  | { readonly is: "rings-cross"; readonly rings: readonly [number, number]; readonly at: Point };

// The grid to which drawn points are snapped, metres: nearer than this is the same place.
const samePlace = 1e-6;

/** Faults of an open line. A line may well cross itself on the ground: the caller says whether that matters. */
export function lineFaults(line: readonly Point[]): readonly ShapeFault[] {
  const bad = badPoints(line, 0, 2);
  if (bad.length > 0) return bad;
  return [...repeats(line, piecesOf(line), 0), ...spikes(line, 0, "open"), ...selfMeetings(piecesOf(line), 0, "open")];
}

/** Faults of a ring (first point not repeated at the end). */
export function ringFaults(ring: readonly Point[]): readonly ShapeFault[] {
  return faultsOfRing(ring, 0);
}

/** Faults of an area: of each of its rings, and of how the rings lie to each other. */
export function polygonFaults(polygon: Polygon): readonly ShapeFault[] {
  const rings = ringsOf(polygon);
  const own = rings.flatMap((ring, i) => faultsOfRing(ring, i));
  // How rings lie to each other means nothing until each is a ring.
  return own.length > 0 ? own : faultsBetween(rings);
}

function faultsOfRing(points: readonly Point[], ring: number): readonly ShapeFault[] {
  const bad = badPoints(points, ring, 3);
  if (bad.length > 0) return bad;
  const sides = sidesOf(points);
  const faults = [
    ...repeats(points, sides, ring),
    ...spikes(points, ring, "closed"),
    ...selfMeetings(sides, ring, "closed"),
  ];
  const longest = Math.max(...sides.map(([start, end]) => distance(start, end)));
  const empty = ringArea(points) <= longest * samePlace && !faults.some(({ is }) => is === "sides-cross");
  return empty ? [{ is: "no-area", ring, at: points[0] as Point }] : faults;
}

function badPoints(points: readonly Point[], ring: number, least: number): readonly ShapeFault[] {
  const bad = points.flatMap((point, vertex): readonly ShapeFault[] =>
    isFinitePoint(point) ? [] : [{ is: "not-a-number", ring, vertex }],
  );
  if (bad.length > 0) return bad;
  const places = points.filter((point, i) => !points.slice(0, i).some((other) => distance(point, other) <= samePlace));
  return places.length < least ? [{ is: "too-few-points", ring, points: places.length }] : [];
}

function repeats(points: readonly Point[], sides: readonly Segment[], ring: number): readonly ShapeFault[] {
  return sides.flatMap(([start, end], i): readonly ShapeFault[] =>
    distance(start, end) <= samePlace ? [{ is: "repeated-point", ring, vertex: (i + 1) % points.length, at: end }] : [],
  );
}

/** Vertices at which the line turns straight back on itself. */
function spikes(points: readonly Point[], ring: number, ends: "open" | "closed"): readonly ShapeFault[] {
  const count = points.length;
  return points.flatMap((at, vertex): readonly ShapeFault[] => {
    if (ends === "open" && (vertex === 0 || vertex === count - 1)) return [];
    const before = points[(vertex + count - 1) % count] as Point;
    const after = points[(vertex + 1) % count] as Point;
    if (distance(before, at) <= samePlace || distance(at, after) <= samePlace) return [];
    const back = dot(minus(at, before), minus(after, at)) < 0;
    // Measured at the nearer of the two neighbours: how far the arms of the spike stand apart there.
    const [nearer, farther] = distance(at, before) < distance(at, after) ? [before, after] : [after, before];
    return back && Math.abs(leftOf([at, farther], nearer)) <= samePlace ? [{ is: "spike", ring, vertex, at }] : [];
  });
}

/** More meetings of one ring or line with itself are not looked for: a scribble has a million of them. */
export const mostMeetings = 200;

/** Sides that meet, other than neighbours at their common vertex. A side without length is a repeated point, no more. */
function selfMeetings(all: readonly Segment[], ring: number, ends: "open" | "closed"): readonly ShapeFault[] {
  const faults: ShapeFault[] = [];
  const kept = all.flatMap(([start, end], i) => (distance(start, end) > samePlace ? [i] : []));
  for (const [place, i] of kept.entries()) {
    for (let next = place + 2; next < kept.length; next++) {
      const j = kept[next] as number;
      if (ends === "closed" && place === 0 && j === kept.at(-1)) continue;
      const [a, b] = [all[i] as Segment, all[j] as Segment];
      const how = boundsApart(a, b) ? "apart" : meeting(a, b);
      if (how === "apart") continue;
      const at = crossingPoint(a, b) ?? a[0];
      faults.push({ is: how === "cross" ? "sides-cross" : "sides-touch", ring, sides: [i, j], at });
      if (faults.length >= mostMeetings) return faults;
    }
  }
  return faults;
}

function boundsApart([a1, a2]: Segment, [b1, b2]: Segment): boolean {
  return (
    Math.max(a1[0], a2[0]) < Math.min(b1[0], b2[0]) ||
    Math.max(b1[0], b2[0]) < Math.min(a1[0], a2[0]) ||
    Math.max(a1[1], a2[1]) < Math.min(b1[1], b2[1]) ||
    Math.max(b1[1], b2[1]) < Math.min(a1[1], a2[1])
  );
}

function faultsBetween(rings: readonly (readonly Point[])[]): readonly ShapeFault[] {
  const faults: ShapeFault[] = [];
  for (let i = 0; i < rings.length; i++) {
    for (let j = i + 1; j < rings.length; j++) faults.push(...faultsOfPair(rings, i, j));
  }
  return faults;
}

/** Ring `i` before ring `j`: the outline comes first, so where `i` is 0 the other is a hole of it. */
function faultsOfPair(rings: readonly (readonly Point[])[], i: number, j: number): readonly ShapeFault[] {
  const [one, two] = [rings[i] as readonly Point[], rings[j] as readonly Point[]];
  for (const a of sidesOf(one)) {
    for (const b of sidesOf(two)) {
      if (meeting(a, b) === "cross") return [{ is: "rings-cross", rings: [i, j], at: crossingPoint(a, b) as Point }];
    }
  }
  const first = two[0] as Point;
  if (i === 0) return liesIn(one, two) ? [] : [{ is: "hole-outside", ring: j, at: first }];
  if (liesIn(one, two)) return [{ is: "hole-in-hole", ring: j, within: i, at: first }];
  if (liesIn(two, one)) return [{ is: "hole-in-hole", ring: i, within: j, at: one[0] as Point }];
  return [];
}

/** Whether `inner`, which does not cross `outer`, lies inside it: told by its first vertex or middle of a side off the edge. */
function liesIn(outer: readonly Point[], inner: readonly Point[]): boolean {
  const tries = sidesOf(inner).flatMap(([start, end]): readonly Point[] => [
    start,
    [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2],
  ]);
  for (const at of tries) {
    const where = whereInRing(outer, at);
    if (where !== "boundary") return where === "inside";
  }
  return true;
}
