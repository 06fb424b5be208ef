// A feature's ground figure that can be read again with moved numbers: vertices as functions of the read.

import type { Chain, Figure } from "../geometry/figure.ts";
import { polygonOf } from "../geometry/polygon.ts";
import type { Segment } from "../geometry/segment.ts";
import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";

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
}

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
      return { chains: [{ points: [liveSpot(shape.at)], ends: "open" }], solid: false, grow: halfOf(feature) };
    case "circle":
      return {
        chains: [{ points: [liveSpot(shape.centre)], ends: "open" }],
        solid: false,
        grow: (read) => read(shape.across) / 2,
      };
    case "outline":
      return {
        chains: [shape.outline, ...shape.holes].map((ring) => ({ points: ring.map(liveSpot), ends: "closed" })),
        solid: true,
        grow: noGrowth,
      };
    case "line":
      // A road is drawn by its edge next to the plot: on which side of it the road lies does not matter to a distance.
      return shape.width && feature.kind !== "road"
        ? widened(shape.line.map(liveSpot), shape.width)
        : { chains: [{ points: shape.line.map(liveSpot), ends: "open" }], solid: false, grow: noGrowth };
  }
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
  return { chains: [{ points: shape.line.map(liveSpot), ends: "open" }], solid: false, grow: noGrowth };
}

/** A point that has grown to a circle of a given radius (a crown, a root zone). */
export function roundFigure(at: LivePoint, radius: (read: Read) => number): LiveFigure {
  return { chains: [{ points: [at], ends: "open" }], solid: false, grow: radius };
}

/** Outline of a line with a width: left side out, right side back, corners mitred. */
function widened(line: readonly LivePoint[], width: Quantity): LiveFigure {
  const side = (sign: 1 | -1) => line.map((_, index) => beside(line, index, (read) => (sign * read(width)) / 2));
  return { chains: [{ points: [...side(1), ...side(-1).reverse()], ends: "closed" }], solid: true, grow: noGrowth };
}

/** Vertex `index` of a line, moved `left` metres to its left: p + left (n1 + n2) / (1 + n1.n2). */
export function beside(line: readonly LivePoint[], index: number, left: (read: Read) => number): LivePoint {
  // Written out by coordinates: the doubt of every distance to a way with a width asks this some twenty times.
  return (read) => {
    const here = (line[index] as LivePoint)(read);
    const before = line[index - 1]?.(read) ?? here;
    const after = line[index + 1]?.(read) ?? here;
    const by = left(read);
    const [e1, n1] = [here[0] - before[0], here[1] - before[1]];
    const [e2, n2] = [after[0] - here[0], after[1] - here[1]];
    const long1 = Math.sqrt(e1 * e1 + n1 * n1);
    const long2 = Math.sqrt(e2 * e2 + n2 * n2);
    if (long1 === 0 && long2 === 0) return [here[0], here[1] + by];
    // One way of the two where the other has no length; the left of (e, n) is (-n, e).
    const [we1, wn1] = long1 > 0 ? [e1 / long1, n1 / long1] : [e2 / long2, n2 / long2];
    const [we2, wn2] = long2 > 0 ? [e2 / long2, n2 / long2] : [we1, wn1];
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
