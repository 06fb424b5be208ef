// A corner splay: the ground carried out into the mouth of a track, so that the corners between the two are cut off.

import { distance } from "../geometry/point.ts";
import { signedArea } from "../geometry/ring.ts";
import { crossingPoint } from "../geometry/segment.ts";
import { cross, dot, minus, plus, times, toTheLeft, unit } from "../geometry/vector.ts";
import { type Feature, featureWords, type Shape } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { liveSpot } from "./live-figure.ts";
import type { Ease, Making } from "./eases.ts";

/** A corner is cut off no farther than this (m): beyond it a wider track is better. */
const mostCut = 4;
/** Less room than this (m) beside a mouth is no corner. */
const leastRoom = 0.5;
/** A track's end nearer than this to a side meets it (m). */
const joins = 0.3;

/** Where a track meets one side of a ground. */
interface Mouth {
  readonly side: number;
  /** The two ends of the mouth along the side, and the way out along the track. */
  readonly from: Point;
  readonly to: Point;
  readonly out: Point;
  readonly along: Point;
  /** Room left on the side before and after the mouth, m. */
  readonly before: number;
  readonly after: number;
}

/** The splay of a track's mouth in a ground drawn by its corners; none where they do not meet or no corner is left. */
export function splayEases(
  ground: Feature,
  track: Feature,
  { read, making }: { readonly read: Read; readonly making: Making },
): readonly Ease[] {
  const { shape } = ground;
  if (shape?.form !== "outline" || track.shape?.form !== "line" || !track.shape.width) return [];
  const ring = shape.outline.map((spot) => liveSpot(spot)(read));
  const line = track.shape.line.map((spot) => liveSpot(spot)(read));
  const mouth = mouthOf(ring, line, read(track.shape.width));
  if (!mouth) return [];
  const cuts = [mouth.before >= leastRoom, mouth.after >= leastRoom] as const;
  if (!cuts[0] && !cuts[1]) return [];
  return [splayEase({ ground, shape, track, ring, mouth, cuts }, making)];
}

interface Splay {
  readonly ground: Feature;
  readonly shape: Extract<Shape, { form: "outline" }>;
  readonly track: Feature;
  readonly ring: readonly Point[];
  readonly mouth: Mouth;
  readonly cuts: readonly [boolean, boolean];
}

function splayEase({ ground, shape, track, ring, mouth, cuts }: Splay, making: Making): Ease {
  const [start, spots] = [ring[mouth.side] as Point, shape.outline];
  // Each new corner is known as well as the corner that its side starts from.
  const corners = cornersAt(mouth, cuts, 1).map(() => making.spotLike(spots[mouth.side]!));
  const outline = [...spots.slice(0, mouth.side + 1), ...corners, ...spots.slice(mouth.side + 1)];
  const rooms = [cuts[0] ? mouth.before : mostCut, cuts[1] ? mouth.after : mostCut];
  const both = cuts[0] && cuts[1];
  return {
    was: ground,
    becomes: { ...ground, shape: { ...shape, outline } },
    most: Math.min(mostCut, ...rooms),
    moves: (amount) =>
      new Map(
        cornersAt(mouth, cuts, amount).flatMap((corner, k) => {
          const [east, north] = minus(corner, start);
          const spot = corners[k]!;
          return [[spot.east.id, east] as const, [spot.north.id, north] as const];
        }),
      ),
    words: (amount) =>
      `Cut off the ${both ? "corners" : "corner"} where ${featureWords(track)} meets ${featureWords(ground)} by ${amount} along both`,
    taken: (amount) => {
      const [a, b] = [cutBefore(mouth, cuts, amount), cutAfter(mouth, cuts, amount)];
      return [a[0], b[1], b[0], a[1]];
    },
    newly: "strip",
  };
}

/** The new corners in the order of the ring: along the side, out into the mouth, across it, back, along the side. */
function cornersAt(mouth: Mouth, cuts: readonly [boolean, boolean], amount: number): readonly Point[] {
  const [a, b] = [cutBefore(mouth, cuts, amount), cutAfter(mouth, cuts, amount)];
  return [a[0], a[1], b[0], b[1]];
}

/** On the side, then on the track's edge; the mouth's own end twice over where nothing is cut there. */
function cutBefore({ from, along, out }: Mouth, [cut]: readonly [boolean, boolean], amount: number) {
  return [cut ? minus(from, times(along, amount)) : from, plus(from, times(out, cut ? amount : tiny))] as const;
}

function cutAfter({ to, along, out }: Mouth, [, cut]: readonly [boolean, boolean], amount: number) {
  return [plus(to, times(out, cut ? amount : tiny)), cut ? plus(to, times(along, amount)) : to] as const;
}

/** Keeps two corners apart where one side of the mouth is left as it is (m). */
const tiny = 0.01;

function mouthOf(ring: readonly Point[], line: readonly Point[], width: number): Mouth | null {
  const inwards = signedArea(ring) > 0 ? 1 : -1;
  for (const [end, next] of [
    [line[0], line[1]],
    [line.at(-1), line.at(-2)],
  ]) {
    const out = end && next && unit(minus(next, end));
    if (!out || !end || !next) continue;
    const behind = minus(end, times(out, joins));
    for (const [side, from] of ring.entries()) {
      const to = ring[(side + 1) % ring.length] as Point;
      const along = unit(minus(to, from));
      const at = along && crossingPoint([behind, next], [from, to]);
      const leaves = along ? -dot(out, times(toTheLeft(along), inwards)) : 0;
      if (!along || !at || leaves < leastSlant) continue;
      const half = width / 2 / Math.abs(cross(out, along));
      const [before, after] = [distance(from, at) - half, distance(at, to) - half];
      const ends = [minus(at, times(along, half)), plus(at, times(along, half))] as const;
      return { side, from: ends[0], to: ends[1], out, along, before, after };
    }
  }
  return null;
}

/** A track that runs along a side more than away from it has no corners to cut. */
const leastSlant = 0.5;
