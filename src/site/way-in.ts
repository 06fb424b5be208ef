// Where a vehicle comes in or goes out: the open end of a track or a gateway, with a straight run of ground outside it.

import { placeAtRun, runsOf } from "../geometry/line.ts";
import { polygonOf, whereInPolygon } from "../geometry/polygon.ts";
import { ringCentroid, sidesOf } from "../geometry/ring.ts";
import { crossingPoint } from "../geometry/segment.ts";
import { between, distance } from "../geometry/point.ts";
import { dot, minus, plus, times, toTheLeft, unit } from "../geometry/vector.ts";
import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { liveSpot, type LivePoint } from "./live-figure.ts";
import { type LiveRing, ringAlong } from "./live-ring.ts";
import { roundedLine } from "./rounded-line.ts";
import { widerRings } from "./wider-stretches.ts";

/** A way in: ground to drive on, the middle of its open end, and the heading inwards (radians from east). */
export interface WayIn {
  readonly rings: readonly LiveRing[];
  readonly at: Point;
  readonly heading: number;
  /** Its other end, with the heading there and how long it runs straight before it (m); null for a gate. */
  readonly innerEnd: { readonly at: Point; readonly heading: number; readonly straight: number } | null;
}

/** What a way in is laid out with. */
export interface WayWork {
  readonly read: Read;
  /** The rest of the ground that wheels may use. */
  readonly others: readonly (readonly Point[])[];
  /** Straight ground outside the open end, m. */
  readonly outside: number;
  /** Of a long track only so much before it meets the rest is looked at, m. */
  readonly keep: number;
}

/** How far the run outside reaches in, so that the two join (m). */
const overlap = 0.3;

/** The way in by a track (a surface drawn by its middle line) or by a gate; null for other shapes. */
export function wayIn(feature: Feature, work: WayWork): WayIn | null {
  const { shape } = feature;
  if (shape?.form !== "line") return null;
  const { width } = shape;
  const line = roundedLine(feature, shape.line.map(liveSpot), width);
  if (feature.kind === "gate") return line.length === 2 ? throughGate(line as [LivePoint, LivePoint], work) : null;
  if (!width) return null;
  const way = byTrack(line, (read) => read(width), work);
  return { ...way, rings: [...way.rings, ...widerRings(feature, work.read)] };
}

function byTrack(given: readonly LivePoint[], width: (read: Read) => number, work: WayWork): WayIn {
  const line = joinedOn(cropped(fromOpenEnd(given, work), work), width, work);
  const [first, second] = line as [LivePoint, LivePoint];
  const inwards = (read: Read) => unit(minus(second(read), first(read))) ?? ([1, 0] as Point);
  const outer: LivePoint = (read) => plus(first(read), times(inwards(read), -work.outside));
  const inner: LivePoint = (read) =>
    plus(first(read), times(inwards(read), Math.min(overlap, distance(first(read), second(read)) / 2)));
  const [east, north] = inwards(work.read);
  return {
    rings: [ringAlong(line, width), ringAlong([outer, inner], width)],
    at: first(work.read),
    heading: Math.atan2(north, east),
    innerEnd: innerEndOf(line, work.read),
  };
}

function innerEndOf(line: readonly LivePoint[], read: Read): WayIn["innerEnd"] {
  const [before, end] = line.slice(-2).map((point) => point(read)) as [Point, Point];
  const [east, north] = minus(end, before);
  return { at: end, heading: Math.atan2(north, east), straight: Math.hypot(east, north) };
}

/** An end nearer than this to other ground is meant to join it (m). */
const joins = 0.3;
/** An end is carried on in steps of so many parts of the width until it lies wholly on the other ground. */
const stepsOn = 10;

/**
 * A line whose ends stop at the edge of other ground, carried on until both corners lie on that ground: a track drawn
 * up to the slanting side of a yard leaves no wedge. Ends that are not near other ground stay.
 */
export function joinedOn(
  line: readonly LivePoint[],
  width: (read: Read) => number,
  work: Pick<WayWork, "read" | "others">,
): readonly LivePoint[] {
  return carriedOn(carriedOn(line, width, work).toReversed(), width, work).toReversed();
}

function carriedOn(
  line: readonly LivePoint[],
  width: (read: Read) => number,
  { read, others }: Pick<WayWork, "read" | "others">,
): readonly LivePoint[] {
  const [end, before] = [line.at(-1), line.at(-2)];
  if (!end || !before) return line;
  const at = end(read);
  const way = unit(minus(at, before(read)));
  const ground = others.find((ring) => gapTo([ring], at) < joins);
  if (!way || !ground) return line;
  const wide = width(read);
  const corners = (by: number) =>
    [1, -1].map((side) => plus(plus(at, times(way, by)), times(toTheLeft(way), (side * wide) / 2)));
  const lies = (by: number) => corners(by).every((corner) => whereInPolygon(polygonOf(ground), corner) !== "outside");
  const steps = Array.from({ length: stepsOn + 1 }, (_, i) => (i * wide) / stepsOn);
  const by = steps.find(lies);
  if (by === undefined || by === 0) return line;
  const on: LivePoint = (now) => plus(end(now), times(unit(minus(end(now), before(now))) ?? way, by));
  return [...line.slice(0, -1), on];
}

/** The line from its open end: the first, unless only the last one lies off the rest of the ground. */
function fromOpenEnd(line: readonly LivePoint[], { read, others }: WayWork): readonly LivePoint[] {
  const meets = (end: LivePoint | undefined) => end !== undefined && gapTo(others, end(read)) < joins;
  return meets(line[0]) && !meets(line.at(-1)) ? line.toReversed() : line;
}

/** The last part of a long track before it first meets the rest of the ground, and all that follows. */
function cropped(line: readonly LivePoint[], { read, others, keep }: WayWork): readonly LivePoint[] {
  const plain = line.map((point) => point(read));
  const meets = firstMeeting(plain, others);
  if (meets === null || meets - keep <= 0) return line;
  const place = placeAtRun(plain, meets - keep);
  const after = runsOf(plain).findIndex((run) => run > meets - keep);
  if (!place || after < 1) return line;
  const [from, to] = [line[after - 1] as LivePoint, line[after] as LivePoint];
  const share =
    distance(plain[after - 1] as Point, place.point) / distance(plain[after - 1] as Point, plain[after] as Point);
  return [(now) => between(from(now), to(now), share), ...line.slice(after)];
}

function firstMeeting(line: readonly Point[], others: readonly (readonly Point[])[]): number | null {
  const runs = runsOf(line);
  let first: number | null = null;
  for (const [i, from] of line.slice(0, -1).entries()) {
    for (const side of others.flatMap((ring) => sidesOf(ring))) {
      const at = crossingPoint([from, line[i + 1] as Point], side);
      const run = at ? (runs[i] as number) + distance(from, at) : null;
      if (run !== null && (first === null || run < first)) first = run;
    }
    if (first !== null) return first;
  }
  // Drawn up to the edge of the rest, it meets it there, whichever side of the edge its last digit puts it.
  const end = line.at(-1);
  return end && gapTo(others, end) < joins ? (runs.at(-1) ?? null) : null;
}

function throughGate([a, b]: readonly [LivePoint, LivePoint], { read, others, outside }: WayWork): WayIn {
  const middle = between(a(read), b(read), 0.5);
  const rest = others.map((ring) => ringCentroid(ring) ?? middle);
  const towards = rest.reduce<Point>((sum, point) => plus(sum, minus(point, middle)), [0, 0]);
  const left = toTheLeft(unit(minus(b(read), a(read))) ?? [1, 0]);
  const sign = dot(left, towards) >= 0 ? 1 : -1;
  const beside =
    (post: LivePoint, by: number): LivePoint =>
    (now) =>
      plus(post(now), times(toTheLeft(unit(minus(b(now), a(now))) ?? [1, 0]), sign * by));
  return {
    rings: [[beside(a, overlap), beside(b, overlap), beside(b, -outside), beside(a, -outside)]],
    at: middle,
    heading: Math.atan2(sign * left[1], sign * left[0]),
    innerEnd: null,
  };
}

/** A bay: the middle of its ground, the heading in from the rest of the ground, and its length that way. */
export interface BayAt {
  readonly middle: Point;
  readonly heading: number;
}

/** Lengths that differ by less (m) are alike: then the order in which the bay is drawn decides, not rounding. */
const alike = 1e-6;

/** Where a vehicle stands in a bay: along its longest side, nose away from the nearest other ground. */
export function bayAt(ring: readonly Point[], others: readonly (readonly Point[])[]): BayAt | null {
  const middle = ringCentroid(ring);
  const sides = sidesOf(ring);
  const longest = sides.reduce(
    (best, side) => (distance(...side) > distance(...best) + alike ? side : best),
    sides[0] ?? [
      [0, 0],
      [0, 0],
    ],
  );
  const along = unit(minus(longest[1], longest[0]));
  if (!middle || !along) return null;
  const reach = distance(...longest) / 2;
  const nearness = (sign: number) => gapTo(others, plus(middle, times(along, sign * reach)));
  const inwards = times(along, nearness(1) < nearness(-1) - alike ? -1 : 1);
  return { middle, heading: Math.atan2(inwards[1], inwards[0]) };
}

function gapTo(others: readonly (readonly Point[])[], point: Point): number {
  const inside = others.some((ring) => whereInPolygon(polygonOf(ring), point) !== "outside");
  if (inside) return 0;
  return others
    .flatMap((ring) => sidesOf(ring))
    .reduce((least, [from, to]) => {
      const way = minus(to, from);
      const size = dot(way, way);
      const t = size === 0 ? 0 : Math.max(0, Math.min(1, dot(minus(point, from), way) / size));
      return Math.min(least, distance(point, plus(from, times(way, t))));
    }, Infinity);
}
