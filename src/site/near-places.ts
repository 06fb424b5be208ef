// Every place where two features come near each other, each readable again with moved numbers.

import type { Figure } from "../geometry/figure.ts";
import { type NearPair, pairDistance } from "../geometry/near-pair.ts";
import { nearestPairs } from "../geometry/near-pairs.ts";
import { between, distance } from "../geometry/point.ts";
import { footOn } from "../geometry/segment.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { figureAt, type LiveChain, type LiveFigure, liveSide } from "./live-figure.ts";

/** One vertex against one side. `distance` is signed: below 0 where the figures overlap. */
export interface NearPlace {
  readonly key: string;
  readonly pair: NearPair;
  readonly distance: (read: Read) => number;
  /** No number moves the distance by more than so many times its own move; undefined where that is not known. */
  readonly steepest?: number;
  /** The two nearest points: on the edge of the first figure, on the edge of the second. */
  readonly ends: (read: Read) => readonly [Point, Point];
  /** The same on the chains, before any growth: the middle of a round thing. */
  readonly bareEnds: (read: Read) => readonly [Point, Point];
}

const figures = new WeakMap<Read, WeakMap<LiveFigure, Figure>>();

/** The figure at a read, kept: one figure is compared with many. Only for reads whose numbers do not change while they live. */
function keptFigure(live: LiveFigure, read: Read): Figure {
  const ofRead = figures.get(read) ?? new WeakMap<LiveFigure, Figure>();
  figures.set(read, ofRead);
  const figure = ofRead.get(live) ?? figureAt(live, read);
  ofRead.set(live, figure);
  return figure;
}

/** Places where two live figures are within `reach` of each other; the least distance of the list is the clear distance. */
export function nearPlaces(a: LiveFigure, b: LiveFigure, reach: number, read: Read): readonly NearPlace[] {
  const grown = a.grow(read) + b.grow(read);
  const steepest = together(a.steepest?.(read) ?? null, b.steepest?.(read) ?? null);
  return nearestPairs(keptFigure(a, read), keptFigure(b, read), reach + grown).map((pair) =>
    nearPlace({ a, b, steepest }, pair),
  );
}

/** Both figures may read one and the same number. */
function together(one: number | null, other: number | null): number | undefined {
  return one === null || other === null ? undefined : one + other;
}

interface Two {
  readonly a: LiveFigure;
  readonly b: LiveFigure;
  readonly steepest: number | undefined;
}

function nearPlace({ a, b, steepest }: Two, pair: NearPair): NearPlace {
  const [own, other] = pair.vertexOf === "a" ? [a, b] : [b, a];
  const vertex = (own.chains[pair.chain] as LiveChain).points[pair.vertex] as (read: Read) => Point;
  const sides = other.chains[pair.sideChain] as LiveChain;
  const side = (read: Read) => liveSide(sides, pair.side, read);
  const bareEnds = (read: Read): readonly [Point, Point] => {
    const at = vertex(read);
    const foot = footOn(side(read), at).foot;
    return pair.vertexOf === "a" ? [at, foot] : [foot, at];
  };
  return {
    key: `${pair.vertexOf}${pair.chain}.${pair.vertex}-${pair.sideChain}.${pair.side}`,
    pair,
    distance: (read) => pairDistance(pair, vertex(read), side(read)) - a.grow(read) - b.grow(read),
    ...(steepest === undefined ? {} : { steepest }),
    ends: (read) => grownEnds(bareEnds(read), a.grow(read), b.grow(read)),
    bareEnds,
  };
}

/** Ends moved towards each other by the growth of each figure. */
function grownEnds([one, other]: readonly [Point, Point], growOne: number, growOther: number): readonly [Point, Point] {
  const apart = distance(one, other);
  if (apart === 0) return [one, other];
  return [between(one, other, growOne / apart), between(other, one, growOther / apart)];
}
