// What: how far along the road does a driver see who waits at a gate to come out, past what is drawn?
// Formula: length along the near edge to where the ray from the eye past a thing meets it; on a straight edge, with the eye x back
//   and the thing r along and d in, that is r x / (x - d).
// Source: plane geometry (COMPUTED); x and y as road guides use them (READ: a county's guide; MEMORY: Manual for Streets 7.7).
// Valid: a level road whose edge is drawn as it bends; things as high as the eye or more, or of unsaid height; nothing is known beyond what is drawn.
// Witness: the line of sight past the thing that stands in it, and the road's edge that is seen.

import { pointAtRun, stretchOf } from "../geometry/line.ts";
import { distance } from "../geometry/point.ts";
import { footOn, type Segment } from "../geometry/segment.ts";
import { cross, dot, minus, plus, times, unit } from "../geometry/vector.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Point, Scene } from "../model/reading.ts";
import { inTheWay } from "../site/in-the-way.ts";
import { centreFigure, type LivePoint, liveSpot } from "../site/live-figure.ts";
import type { LiveRing } from "../site/live-ring.ts";

/** Sight farther than this is told as so far at least, m: beyond the longest that a guide asks for. */
const farthest = 300;
/** A gate farther from the road than this is not where one looks out, m. */
const mostSetback = 25;

const heights: Readonly<Record<string, string>> = {
  wall: "height",
  fence: "height",
  hedge: "height",
  heap: "height",
  tank: "height",
  obstacle: "height",
  bank: "height",
};
const high: ReadonlySet<string> = new Set(["building"]);

export const sightAlongRoad: Measure = {
  name: "sight-along-road",
  dimension: "length",
  roles: { gate: "a gate by a road", road: "a road" },
  parameters: { back: { dimension: "length", default: 0 }, eye: { dimension: "length", default: 0 } },
  phrase: "{found} of {road} can be seen from {gate}",
  shortName: "seen along the road",
  find: ({ gate, road }, scene, parameters): Found => {
    const frame = gate && road ? frameOf(gate, road, scene.read) : null;
    if (!gate || !road || !frame) return { is: "does-not-bear" };
    const back = Number(parameters["back"]);
    const looking = {
      read: scene.read,
      heading: Math.atan2(frame(scene.read).along[1], frame(scene.read).along[0]),
      tall: Number(parameters["eye"]),
      gates: scene.standing("gates"),
    };
    const things = scene.standing().filter((thing) => hides(thing, Number(parameters["eye"]), scene));
    const edge = edgeOf(road);
    // The piece that the eye stands before: one further on, for the end that was carried on.
    const from = (read: Read) => runAt(edge, frame(scene.read).index + 1, frame(read).foot, read);
    const along: Looking = { frame, edge, from, back, read: scene.read };
    const blocks = things.flatMap((thing) =>
      (inTheWay(thing, looking)?.rings ?? []).flatMap((ring) => blocksOf(thing, ring, along)),
    );
    return { is: "found", places: ([1, -1] as const).map((side) => nearestBlock(blocks, side, along)) };
  },
};

/** The road's edge as seen from the gate: the foot of the gate's middle on it, the way along it, and the way in. */
interface Frame {
  /** Which piece of the drawn edge it is. */
  readonly index: number;
  readonly foot: Point;
  readonly along: Point;
  readonly into: Point;
}

function frameOf(gate: Feature, road: Feature, read: Read): ((read: Read) => Frame) | null {
  const [line] = centreFigure(road)?.chains ?? [];
  const posts = gate.shape?.form === "line" ? gate.shape.line.map(liveSpot) : [];
  if (!line || line.points.length < 2 || posts.length < 2) return null;
  const middle = (now: Read) =>
    times(
      posts.reduce<Point>((sum, post) => plus(sum, post(now)), [0, 0]),
      1 / posts.length,
    );
  const side = (index: number, now: Read): Segment => [line.points[index]!(now), line.points[index + 1]!(now)];
  const gap = (index: number) => distance(footOn(side(index, read), middle(read)).foot, middle(read));
  const nearest = line.points.slice(1).reduce((best, _, i) => (gap(i) < gap(best) ? i : best), 0);
  if (gap(nearest) > mostSetback) return null;
  return (now) => {
    const [from, to] = side(nearest, now);
    const along = unit(minus(to, from)) ?? [1, 0];
    const at = middle(now);
    const foot = plus(from, times(along, dot(minus(at, from), along)));
    return { index: nearest, foot, along, into: unit(minus(at, foot)) ?? [-along[1], along[0]] };
  };
}

function hides(thing: Feature, eye: number, { read }: Scene): boolean {
  if (high.has(thing.kind)) return true;
  const property = heights[thing.kind];
  const height = property === undefined ? undefined : propertyOf(thing, property);
  return property !== undefined && (!isQuantity(height) || read(height) >= eye);
}

interface Looking {
  readonly frame: (read: Read) => Frame;
  /** The road's edge, carried on straight at both ends, and how far along it the eye stands. */
  readonly edge: readonly LivePoint[];
  readonly from: (read: Read) => number;
  readonly back: number;
  readonly read: Read;
}

/** A corner, or a side that crosses the road's edge, that ends the view: how far along the edge, signed. */
interface Block {
  readonly thing: Feature;
  readonly key: string;
  readonly seen: (read: Read) => number;
  readonly at: (read: Read) => Point;
}

/** The road's edge with both its ends carried on straight. */
function edgeOf(road: Feature): readonly LivePoint[] {
  const points = centreFigure(road)?.chains[0]?.points ?? [];
  const on = (end: LivePoint | undefined, before: LivePoint | undefined): readonly LivePoint[] =>
    end && before
      ? [(read) => plus(end(read), times(unit(minus(end(read), before(read))) ?? [1, 0], farthest + mostSetback))]
      : [];
  return [...on(points[0], points[1]), ...points, ...on(points.at(-1), points.at(-2))];
}

/** How far along a line a point on its piece `index` lies, m. */
function runAt(line: readonly LivePoint[], index: number, at: Point, now: Read): number {
  let run = 0;
  for (let i = 0; i < index; i++) run += distance(line[i]!(now), line[i + 1]!(now));
  const [from, to] = [line[index]!(now), line[index + 1]!(now)];
  return run + dot(minus(at, from), unit(minus(to, from)) ?? [1, 0]);
}

/** Where the line through a and b meets that through c and d, with its place between a and b and between c and d. */
function meetingOf([a, b]: Segment, [c, d]: Segment) {
  const [first, second] = [minus(b, a), minus(d, c)];
  const turn = cross(first, second);
  if (Math.abs(turn) < 1e-12) return null;
  const [along, beyond] = [cross(minus(c, a), second) / turn, cross(minus(c, a), first) / turn];
  return { at: plus(a, times(first, along)), along, beyond };
}

function blocksOf(thing: Feature, ring: LiveRing, looking: Looking): readonly Block[] {
  const { edge, from, read } = looking;
  const pieces = edge.slice(1).map((_, index) => index);
  const side = (index: number, now: Read): Segment => [edge[index]!(now), edge[index + 1]!(now)];
  const seenTo = (cut: (now: Read) => Point | null, index: number) => (now: Read) => {
    const at = cut(now);
    return at ? runAt(edge, index, at, now) - from(now) : Number.NaN;
  };
  const eye = (now: Read) => plus(looking.frame(now).foot, times(looking.frame(now).into, looking.back));
  return ring.flatMap((corner, k) =>
    pieces.flatMap((index): readonly Block[] => {
      const next = ring[(k + 1) % ring.length]!;
      // The line of sight over the corner meets the edge beyond the corner.
      const sight = (now: Read) => meetingOf([eye(now), corner(now)], side(index, now));
      const over = sight(read);
      const crossing = (now: Read) => meetingOf([corner(now), next(now)], side(index, now));
      const met = crossing(read);
      const key = `${thing.name} ${k} ${index}`;
      return [
        ...(over && over.along > 1 && isOn(over.beyond)
          ? [{ thing, key, seen: seenTo((now) => sight(now)?.at ?? null, index), at: corner }]
          : []),
        ...(met && isOn(met.along) && isOn(met.beyond)
          ? [{ thing, key: `${key} edge`, seen: seenTo((now) => crossing(now)?.at ?? null, index), at: corner }]
          : []),
      ];
    }),
  );
}

const isOn = (share: number): boolean => share >= 0 && share <= 1;

function nearestBlock(blocks: readonly Block[], side: 1 | -1, looking: Looking): CandidatePlace {
  const { frame, back, edge, from, read } = looking;
  const own = blocks.filter(({ seen }) => side * seen(read) > 0 && side * seen(read) < farthest);
  const nearest = own.reduce<Block | null>(
    (best, block) => (best === null || side * block.seen(read) < side * best.seen(read) ? block : best),
    null,
  );
  const eyeAt = (now: Read) => plus(frame(now).foot, times(frame(now).into, back));
  const line = (now: Read) => edge.map((point) => point(now));
  const seenTo = (now: Read, run: number) => pointAtRun(line(now), from(now) + run) ?? frame(now).foot;
  if (!nearest)
    return {
      key: `${side}`,
      value: () => farthest,
      bound: "at_least",
      where: "nothing that is drawn stands in the way",
      witness: () => [],
    };
  return {
    key: `${side} ${nearest.key}`,
    value: (now) => side * nearest.seen(now),
    where: `past ${featureWords(nearest.thing)}, to the ${handOf(frame(read), side)} as one comes out`,
    witness: (now) => [
      { part: "found", form: "line", points: [eyeAt(now), seenTo(now, nearest.seen(now))], label: "seen so far" },
      { part: "thing", form: "line", points: alongEdge(line(now), from(now), nearest.seen(now)) },
    ],
  };
}

/** The stretch of the edge that is seen. */
function alongEdge(line: readonly Point[], from: number, seen: number): readonly Point[] {
  return stretchOf(line, Math.min(from, from + seen), Math.max(from, from + seen));
}

/** On which hand of somebody who comes out a side of the road's edge lies. */
function handOf({ along, into }: Frame, side: 1 | -1): "left" | "right" {
  return side * cross(along, into) > 0 ? "left" : "right";
}
