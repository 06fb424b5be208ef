// A feature's ground figure that can be read again with moved numbers: vertices as functions of the read.

import type { Chain, Figure } from "../geometry/figure.ts";
import { polygonOf } from "../geometry/polygon.ts";
import type { Segment } from "../geometry/segment.ts";
import { dot, minus, norm } from "../geometry/vector.ts";
import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { roundedLine } from "./rounded-line.ts";

/** A vertex as a function of the read. */
export type LivePoint = (read: Read) => Point;

export interface LiveChain {
  readonly points: readonly LivePoint[];
  readonly ends: "open" | "closed";
}

/**
 * Chains of live vertices. `solid` where the inside belongs to it; `grow` is added all round (a round thing is a
 * point that has grown), so that a clear distance is that of the chains less both growths.
 */
export interface LiveFigure {
  readonly chains: readonly LiveChain[];
  readonly solid: boolean;
  readonly grow: (read: Read) => number;
  /** No point of it moves farther than so many times what one of its numbers moves; null, or left out, where that is not known. */
  readonly steepest?: (read: Read) => number | null;
}

/** Corners that are drawn, and radii: they move as far as their numbers do. */
const asDrawn = (): number => 1;

const noGrowth = (): number => 0;

/** A peg or spot as a live vertex. */
export function liveSpot(spot: Spot): LivePoint {
  return (read) => [read(spot.east), read(spot.north)];
}

/** The figure that a feature takes on the ground; null where it has no shape. A line with a width becomes its outline. */
export function groundFigure(feature: Feature): LiveFigure | null {
  const known = grounds.get(feature);
  if (known !== undefined) return known;
  const figure = groundFigureOf(feature);
  grounds.set(feature, figure);
  return figure;
}

const grounds = new WeakMap<Feature, LiveFigure | null>();

function groundFigureOf(feature: Feature): LiveFigure | null {
  const { shape } = feature;
  if (!shape) return null;
  switch (shape.form) {
    case "point":
      return { ...drawn([liveSpot(shape.at)]), grow: halfOf(feature) };
    case "circle":
      return { ...drawn([liveSpot(shape.centre)]), grow: (read) => read(shape.across) / 2 };
    case "outline":
      return {
        chains: [shape.outline, ...shape.holes].map((ring) => ({ points: ring.map(liveSpot), ends: "closed" })),
        solid: true,
        grow: noGrowth,
        steepest: asDrawn,
      };
    case "line":
      // A road is drawn by its edge next to the plot: on which side of it the road lies does not matter to a distance.
      return shape.width && feature.kind !== "road"
        ? widened(roundedLine(feature, shape.line.map(liveSpot), shape.width), shape.width)
        : drawn(shape.line.map(liveSpot));
  }
}

/** An open chain of points as they are drawn. */
function drawn(points: readonly LivePoint[]): LiveFigure {
  return { chains: [{ points, ends: "open" }], solid: false, grow: noGrowth, steepest: asDrawn };
}

/** What tells how wide a thing is that is given by its middle. */
const widthAtPoint: Readonly<Record<string, string>> = { tree: "stem", obstacle: "across" };

/** Half the stem of a tree, half the width of an obstacle that stands at a point; nothing for other points. */
function halfOf(feature: Feature): (read: Read) => number {
  const across = propertyOf(feature, widthAtPoint[feature.kind] ?? "");
  return isQuantity(across) ? (read) => read(across) / 2 : noGrowth;
}

/** The line itself, without its width. */
export function centreFigure(feature: Feature): LiveFigure | null {
  const { shape } = feature;
  if (shape?.form !== "line") return groundFigure(feature);
  return drawn(shape.line.map(liveSpot));
}

/** A single point. */
export function spotFigure(spot: Spot): LiveFigure {
  const known = spots.get(spot) ?? drawn([liveSpot(spot)]);
  spots.set(spot, known);
  return known;
}

const spots = new WeakMap<Spot, LiveFigure>();

/**
 * A point that has grown to a circle of a given radius (a crown, a root zone). `gain` is how many times farther the
 * circle reaches than a number of its radius moves, where that is known.
 */
export function roundFigure(at: LivePoint, radius: (read: Read) => number, gain: number | null = null): LiveFigure {
  return { ...drawn([at]), grow: radius, steepest: () => gain && Math.max(1, gain) };
}

/** Outline of a line with a width: left side out, right side back, corners mitred. */
function widened(line: readonly LivePoint[], width: Quantity): LiveFigure {
  const side = (sign: 1 | -1) => line.map((_, index) => beside(line, index, (read) => (sign * read(width)) / 2));
  return {
    chains: [{ points: [...side(1), ...side(-1).reverse()], ends: "closed" }],
    solid: true,
    grow: noGrowth,
    steepest: (read) =>
      steepestBeside(
        line.map((point) => point(read)),
        read(width) / 2,
      ),
  };
}

/**
 * How many times farther a corner of a widened line moves than a number it is made of. With nowhere a turn of more
 * than 60 degrees and no piece shorter than the whole width, the end of a mitre lies at most 1.16 half widths out, and a way that is turned by
 * moving its end takes it along by no more than that move: 1 + 2 x 1.16 / 2, rounded up. Null for other lines.
 */
function steepestBeside(line: readonly Point[], half: number): number | null {
  const ways = line.slice(1).map((point, index) => minus(point, line[index] as Point));
  if (ways.some((way) => norm(way) < 2 * half)) return null;
  const turns = ways
    .slice(1)
    .map((way, index) => dot(way, ways[index] as Point) / (norm(way) * norm(ways[index] as Point)));
  return turns.every((cosine) => cosine >= 0.5) ? 3 : null;
}

/** Vertex `index` of a line, moved `left` metres to its left: p + left (n1 + n2) / (1 + n1.n2). */
export function beside(line: readonly LivePoint[], index: number, left: (read: Read) => number): LivePoint {
  // Written out by coordinates: the doubt of every distance to a way with a width asks this some twenty times.
  return (read) => {
    const here = (line[index] as LivePoint)(read);
    const before = line[index - 1]?.(read) ?? here;
    const after = line[index + 1]?.(read) ?? here;
    const by = left(read);
    const e1 = here[0] - before[0];
    const n1 = here[1] - before[1];
    const e2 = after[0] - here[0];
    const n2 = after[1] - here[1];
    const long1 = Math.sqrt(e1 * e1 + n1 * n1);
    const long2 = Math.sqrt(e2 * e2 + n2 * n2);
    if (long1 === 0 && long2 === 0) return [here[0], here[1] + by];
    // One way of the two where the other has no length; the left of (e, n) is (-n, e).
    const we1 = long1 > 0 ? e1 / long1 : e2 / long2;
    const wn1 = long1 > 0 ? n1 / long1 : n2 / long2;
    const we2 = long2 > 0 ? e2 / long2 : we1;
    const wn2 = long2 > 0 ? n2 / long2 : wn1;
    const opened = 1 + we1 * we2 + wn1 * wn2;
    if (opened < 1e-12) return [here[0] - by * wn1, here[1] + by * we1];
    return [here[0] - (by * (wn1 + wn2)) / opened, here[1] + (by * (we1 + we2)) / opened];
  };
}

/** The plain figure at a read. */
export function figureAt(live: LiveFigure, read: Read): Figure {
  const chains = live.chains.map((chain): Chain => ({
    points: chain.points.map((point) => point(read)),
    ends: chain.ends,
  }));
  const [outline, ...holes] = chains.map((chain) => chain.points);
  return { chains, area: live.solid && outline ? polygonOf(outline, holes) : null };
}

/** Side `index` of a live chain at a read. */
export function liveSide({ points }: LiveChain, index: number, read: Read): Segment {
  const start = points[index] as LivePoint;
  const end = points[(index + 1) % points.length] as LivePoint;
  return [start(read), end(read)];
}
