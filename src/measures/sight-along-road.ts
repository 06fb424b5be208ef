// What: how far along the road does a driver see who waits at a gate to come out, past what is drawn?
// Formula: from the eye, x back from the road's near edge, the ray past a thing r along and d in meets the edge at r x / (x - d).
// Source: plane geometry (COMPUTED); x and y as road guides use them (READ: a county's guide; MEMORY: Manual for Streets 7.7).
// Valid: a straight and level road; things as high as the eye or more, or of unsaid height; nothing is known beyond what is drawn.
// Witness: the line of sight past the thing that stands in it, and the road's edge that is seen.

import { distance } from "../geometry/point.ts";
import { footOn, type Segment } from "../geometry/segment.ts";
import { cross, dot, minus, plus, times, unit } from "../geometry/vector.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Point, Scene } from "../model/reading.ts";
import { inTheWay } from "../site/in-the-way.ts";
import { centreFigure, liveSpot } from "../site/live-figure.ts";
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
    if (!gate || !frame) return { is: "does-not-bear" };
    const back = Number(parameters["back"]);
    const looking = {
      read: scene.read,
      heading: Math.atan2(frame(scene.read).along[1], frame(scene.read).along[0]),
      tall: Number(parameters["eye"]),
      gates: scene.standing("gates"),
    };
    const things = scene.standing().filter((thing) => hides(thing, Number(parameters["eye"]), scene));
    const blocks = things.flatMap((thing) =>
      (inTheWay(thing, looking)?.rings ?? []).flatMap((ring) =>
        blocksOf(thing, ring, { frame, back, read: scene.read }),
      ),
    );
    return {
      is: "found",
      places: ([1, -1] as const).map((side) => nearestBlock(blocks, side, { frame, back, read: scene.read })),
    };
  },
};

/** The road's edge as seen from the gate: the foot of the gate's middle on it, the way along it, and the way in. */
interface Frame {
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
    return { foot, along, into: unit(minus(at, foot)) ?? [-along[1], along[0]] };
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

function blocksOf(thing: Feature, ring: LiveRing, looking: Looking): readonly Block[] {
  const { frame, back, read } = looking;
  const place = (at: Point, now: Read): Point => {
    const { foot, along, into } = frame(now);
    return [dot(minus(at, foot), along), dot(minus(at, foot), into)];
  };
  const corners = ring.flatMap((corner, k): Block[] => {
    const [, depth] = place(corner(read), read);
    if (depth <= 0 || depth >= back) return [];
    const seen = (now: Read) => {
      const [run, deep] = place(corner(now), now);
      return (run * back) / (back - deep);
    };
    return [{ thing, key: `${thing.name} ${k}`, seen, at: corner }];
  });
  const crossings = ring.flatMap((corner, k): Block[] => {
    const next = ring[(k + 1) % ring.length]!;
    const [a, b] = [place(corner(read), read), place(next(read), read)];
    if (a[1] > 0 === b[1] > 0) return [];
    const at = (now: Read): Point => {
      const [p, q] = [place(corner(now), now), place(next(now), now)];
      const { foot, along } = frame(now);
      return plus(foot, times(along, p[0] - (p[1] * (q[0] - p[0])) / (q[1] - p[1])));
    };
    return [{ thing, key: `${thing.name} ${k} edge`, seen: (now) => place(at(now), now)[0], at }];
  });
  return [...corners, ...crossings];
}

function nearestBlock(blocks: readonly Block[], side: 1 | -1, { frame, back, read }: Looking): CandidatePlace {
  const own = blocks.filter(({ seen }) => side * seen(read) > 0 && side * seen(read) < farthest);
  const nearest = own.reduce<Block | null>(
    (best, block) => (best === null || side * block.seen(read) < side * best.seen(read) ? block : best),
    null,
  );
  const eyeAt = (now: Read) => plus(frame(now).foot, times(frame(now).into, back));
  const seenTo = (now: Read, run: number) => plus(frame(now).foot, times(frame(now).along, run));
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
      { part: "thing", form: "line", points: [frame(now).foot, seenTo(now, nearest.seen(now))] },
    ],
  };
}

/** On which hand of somebody who comes out a side of the road's edge lies. */
function handOf({ along, into }: Frame, side: 1 | -1): "left" | "right" {
  return side * cross(along, into) > 0 ? "left" : "right";
}
