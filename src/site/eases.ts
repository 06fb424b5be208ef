// What could make a manoeuvre easier: a side of its ground carried out, its track made wider, a loose thing moved off.
// Each is a thing in place of another, with numbers of its own that one amount moves.

import { figureAt, groundFigure, liveSpot } from "./live-figure.ts";
import { meetingPlace } from "../geometry/nearest.ts";
import { distance } from "../geometry/point.ts";
import { areaFigure } from "../geometry/figure.ts";
import { polygonOf } from "../geometry/polygon.ts";
import { ringCentroid, signedArea } from "../geometry/ring.ts";
import { dot, minus, plus, times, toTheLeft, unit } from "../geometry/vector.ts";
import { type Feature, featureWords, type Shape } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";
import type { Point, Scene } from "../model/reading.ts";
import { compassWord } from "./compass.ts";

/** Makes numbers that follow others until they are moved. */
export interface Making {
  readonly like: <Q extends Quantity>(quantity: Q) => Q;
  readonly spotLike: (spot: Spot) => Spot;
}

/** One change that an amount in metres makes larger. */
export interface Ease {
  readonly was: Feature;
  readonly becomes: Feature;
  /** By how much each new number moves, by id. */
  readonly moves: (amount: number) => ReadonlyMap<number, number>;
  readonly most: number;
  /** A sentence without its full stop; the amount is in words. */
  readonly words: (amount: string, value: number) => string;
  /** The ground that is newly taken, for the drawing and for what stands there: a strip beyond the old edge, or all of it. */
  readonly taken: (amount: number) => readonly Point[];
  readonly newly: "strip" | "all";
}

/** Sides shorter than this (m) are corners, not sides. */
const leastSide = 1;
/** A side is carried out no farther than this (m): beyond it another place is better. */
const mostOut = 6;
/** A corner is carried along its neighbouring side unless that runs nearly beside the moved one. */
const leastSlant = 0.3;

/** One ease for every side of a ground drawn by its corners. */
export function sideEases(ground: Feature, read: Read, making: Making): readonly Ease[] {
  const { shape } = ground;
  if (shape?.form !== "outline") return [];
  const ring = shape.outline.map((spot) => liveSpot(spot)(read));
  return ring.flatMap((from, side): Ease[] => {
    const to = ring[(side + 1) % ring.length] as Point;
    return distance(from, to) < leastSide ? [] : [sideEase({ ground, shape, ring, side }, making)];
  });
}

interface SideOf {
  readonly ground: Feature;
  readonly shape: Extract<Shape, { form: "outline" }>;
  readonly ring: readonly Point[];
  readonly side: number;
}

function sideEase({ ground, shape, ring, side }: SideOf, making: Making): Ease {
  const count = ring.length;
  const at = (index: number) => ring[(index + count) % count] as Point;
  const along = unit(minus(at(side + 1), at(side))) ?? [1, 0];
  const out = times(toTheLeft(along), signedArea(ring) > 0 ? -1 : 1);
  const carried = (corner: number, beyond: number): Point => {
    const beside = unit(minus(at(corner), at(beyond))) ?? out;
    const slant = dot(beside, out);
    return slant > leastSlant ? times(beside, 1 / slant) : out;
  };
  const ways = [carried(side, side - 1), carried(side + 1, side + 2)] as const;
  const corners = [side, (side + 1) % count] as const;
  const outline = shape.outline.map((spot, index) =>
    index === corners[0] || index === corners[1] ? making.spotLike(spot) : spot,
  );
  const names = corners.map((index) => shape.outline[index]?.name);
  const pegs = names.every((name) => name !== undefined)
    ? `pegs ${names.join(" and ")}`
    : `corners ${corners[0] + 1} and ${corners[1] + 1}`;
  return {
    was: ground,
    becomes: { ...ground, shape: { ...shape, outline } },
    most: mostOut,
    moves: (amount) => new Map(corners.flatMap((index, k) => moveOf(outline[index] as Spot, times(ways[k]!, amount)))),
    words: (amount) => `Carry the ${compassWord(out)} side of ${featureWords(ground)} (${pegs}) out by ${amount}`,
    taken: (amount) => [
      at(side),
      at(side + 1),
      plus(at(side + 1), times(ways[1], amount)),
      plus(at(side), times(ways[0], amount)),
    ],
    newly: "strip",
  };
}

const moveOf = (spot: Spot, by: Point): readonly (readonly [number, number])[] => [
  [spot.east.id, by[0]],
  [spot.north.id, by[1]],
];

/** A track drawn by its middle line, made wider on both sides alike. */
export function widthEase(track: Feature, read: Read, making: Making): readonly Ease[] {
  const { shape } = track;
  if (shape?.form !== "line" || !shape.width) return [];
  const width = making.like(shape.width);
  const now = read(shape.width);
  const wider: Feature = { ...track, shape: { ...shape, width } };
  const outline = (amount: number): readonly Point[] => {
    const moved: Read = (quantity) => (quantity.id === width.id ? now + amount : read(quantity));
    const figure = groundFigure(wider);
    return figure ? (figureAt(figure, moved).chains[0]?.points ?? []) : [];
  };
  return [
    {
      was: track,
      becomes: wider,
      most: mostOut / 2,
      moves: (amount) => new Map([[width.id, amount]]),
      words: (amount, value) => `Make ${featureWords(track)} ${(now + value).toFixed(2)} m wide (${amount} more)`,
      taken: outline,
      newly: "all",
    },
  ];
}

/** Kinds that can be moved though they stand there already. */
const loose: ReadonlySet<string> = new Set(["heap", "spoil place"]);
const movable: ReadonlySet<string> = new Set([...loose, "obstacle", "tank"]);

/** Whether a thing may be moved at all. */
export function canMove(thing: Feature): boolean {
  const spots = spotsOf(thing.shape);
  return movable.has(thing.kind) && (loose.has(thing.kind) || !thing.existing) && spots.length > 0;
}

/** A loose thing moved the shortest way off a ground, up to where it lies `clear` metres beyond its edge. */
export function awayEase(
  thing: Feature,
  ground: readonly (readonly Point[])[],
  { read, clear, making }: { readonly read: Read; readonly clear: number; readonly making: Making },
): Ease | null {
  const points = edgeOf(thing, read);
  const way = shortestOff(points, ground);
  if (!way || !thing.shape) return null;
  const shape = mapSpots(thing.shape, making);
  const spots = spotsOf(shape);
  return {
    was: thing,
    becomes: { ...thing, shape },
    most: way.by + clear,
    moves: (amount) => new Map(spots.flatMap((spot) => moveOf(spot, times(way.out, amount)))),
    words: (amount) => `Move ${featureWords(thing)} ${amount} to the ${compassWord(way.out)}`,
    taken: (amount) => points.map((point) => plus(point, times(way.out, amount))),
    newly: "all",
  };
}

function mapSpots(shape: Shape, { spotLike }: Making): Shape {
  switch (shape.form) {
    case "point":
      return { ...shape, at: spotLike(shape.at) };
    case "circle":
      return { ...shape, centre: spotLike(shape.centre) };
    case "line":
      return { ...shape, line: shape.line.map(spotLike) };
    case "outline":
      return {
        ...shape,
        outline: shape.outline.map(spotLike),
        holes: shape.holes.map((hole) => hole.map(spotLike)),
      };
  }
}

function spotsOf(shape: Shape | null): readonly Spot[] {
  if (!shape) return [];
  if (shape.form === "point") return [shape.at];
  if (shape.form === "circle") return [shape.centre];
  return shape.form === "line" ? shape.line : [...shape.outline, ...shape.holes.flat()];
}

const roundCorners = 16;

/** Points round a thing. */
function edgeOf(thing: Feature, read: Read): readonly Point[] {
  const figure = groundFigure(thing);
  if (!figure) return [];
  const radius = figure.grow(read);
  const points = figureAt(figure, read).chains.flatMap((chain) => chain.points);
  if (radius === 0) return points;
  return points.flatMap((point) =>
    Array.from({ length: roundCorners }, (_, k): Point => {
      const angle = (2 * Math.PI * k) / roundCorners;
      return plus(point, [radius * Math.cos(angle), radius * Math.sin(angle)]);
    }),
  );
}

/** Over which side of a ground a thing is soonest off it, and how far that is. */
function shortestOff(
  points: readonly Point[],
  ground: readonly (readonly Point[])[],
): { readonly out: Point; readonly by: number } | null {
  let best: { readonly out: Point; readonly by: number } | null = null;
  const middle = ringCentroid(points) ?? points[0];
  if (!middle) return null;
  for (const ring of ground) {
    const turn = signedArea(ring) > 0 ? -1 : 1;
    for (const [side, from] of ring.entries()) {
      const to = ring[(side + 1) % ring.length] as Point;
      const along = unit(minus(to, from));
      const run = along ? dot(minus(middle, from), along) : -1;
      if (!along || run < 0 || run > distance(from, to)) continue;
      const out = times(toTheLeft(along), turn);
      const by = Math.max(...points.map((point) => -dot(minus(point, from), out)));
      if (by > 0 && (best === null || by < best.by)) best = { out, by };
    }
  }
  return best;
}

/** Kinds that new ground must not be laid over, nor loose things moved onto. */
const fixed: ReadonlySet<string> = new Set([
  "boundary",
  "road",
  "building",
  "wall",
  "fence",
  "hedge",
  "water",
  "bank",
  "septic tank",
  "soakaway",
  "drainage field",
  "tank",
  "steps",
]);

/** The ends of a strip are looked at so much short of its sides (m), and its inner edge so much inside the old one. */
const ends = 0.05;

/** Whether what is newly taken meets something that cannot give way; what the thing met before does not count. */
export function isTaken(ease: Ease, amount: number, scene: Scene): boolean {
  const taken = areaFigure(polygonOf(ease.newly === "strip" ? drawnIn(ease.taken(amount)) : ease.taken(amount)));
  const before = ease.newly === "strip" ? null : areaFigure(polygonOf(ease.taken(0)));
  return scene.standing().some((feature) => {
    const other = fixed.has(feature.kind) && feature.name !== ease.was.name ? groundFigure(feature) : null;
    if (!other) return false;
    const plain = figureAt(other, scene.read);
    return meetingPlace(taken, plain) !== null && (before === null || meetingPlace(before, plain) === null);
  });
}

/** A strip (its old edge first) with its ends drawn in and its old edge a little inside. */
function drawnIn([a, b, c, d]: readonly Point[]): readonly Point[] {
  if (!a || !b || !c || !d) return [];
  const along = times(unit(minus(b, a)) ?? [1, 0], ends);
  const out = times(unit(minus(plus(c, d), plus(a, b))) ?? [0, 1], ends);
  return [minus(plus(a, along), out), minus(minus(b, along), out), minus(c, along), plus(d, along)];
}
