// Stretches of a way that are wider than the rest, as ground of their own: square ends, the middle line between.

import { lineLength, runsOf } from "../geometry/line.ts";
import { between, distance } from "../geometry/point.ts";
import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { type LiveFigure, type LivePoint, liveSpot } from "./live-figure.ts";
import { type LiveRing, ringAlong } from "./live-ring.ts";
import { passingPlaces } from "./passing-places.ts";

/** One ring for every wider stretch of a way drawn by its middle line. */
export function widerRings(way: Feature, read: Read): readonly LiveRing[] {
  const { shape } = way;
  if (shape?.form !== "line") return [];
  const line = shape.line.map(liveSpot);
  const whole = lineLength(line.map((point) => point(read)));
  return passingPlaces(way)
    .filter(({ words }) => words !== "")
    .flatMap((place) => {
      const [from, to] = [Math.max(0, place.from(read)), Math.min(whole, place.to(read))];
      if (!(to > from)) return [];
      return [ringAlong(stretch(line, { from: place.from, to: place.to }, read), place.width)];
    });
}

/** The same as solid figures, for distances. */
export function widerFigures(way: Feature, read: Read): readonly LiveFigure[] {
  return widerRings(way, read).map((points) => ({ chains: [{ points, ends: "closed" }], solid: true, grow: () => 0 }));
}

interface Span {
  readonly from: (read: Read) => number;
  readonly to: (read: Read) => number;
}

/** The line from run to run; which corners lie between stays as it is now. */
function stretch(line: readonly LivePoint[], span: Span, now: Read): readonly LivePoint[] {
  const runs = runsOf(line.map((point) => point(now)));
  const inner = line.filter((_, i) => (runs[i] as number) > span.from(now) && (runs[i] as number) < span.to(now));
  return [placeAt(line, span.from, runs, now), ...inner, placeAt(line, span.to, runs, now)];
}

function placeAt(
  line: readonly LivePoint[],
  run: (read: Read) => number,
  runs: readonly number[],
  now: Read,
): LivePoint {
  const last = line.length - 1;
  const found = runs.findIndex((far, i) => i > 0 && far >= run(now));
  const after = found < 1 ? last : found;
  const [a, b] = [line[after - 1] as LivePoint, line[after] as LivePoint];
  return (read) => {
    const before = lineLength(line.slice(0, after).map((point) => point(read)));
    const long = Math.max(1e-9, distance(a(read), b(read)));
    return between(a(read), b(read), Math.max(0, Math.min(1, (run(read) - before) / long)));
  };
}
