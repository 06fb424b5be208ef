// Which way water runs on the ground as it was levelled, and what it meets.

import { distance, type Point } from "../geometry/point.ts";
import { crossingPoint, meeting, type Segment } from "../geometry/segment.ts";
import type { Feature, LevelledPlace, Plan } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { type FlowPath, flowPath } from "../terrain/flow-path.ts";
import { groundAt, type Surface } from "../terrain/surface.ts";
import { groundOf } from "./ground.ts";
import { figureAt, groundFigure } from "./live-figure.ts";

/** Something that the water meets, how far down its way, metres. */
export interface Met {
  readonly feature: Feature;
  readonly run: number;
}

/** The way of the water from one thing; null where no levels were taken round the place it starts from. */
export interface WaterWay {
  readonly from: Feature;
  readonly path: FlowPath | null;
  /** What it meets, nearest first, each once. */
  readonly meets: readonly Met[];
}

/** The ground at the plan's own values; null without a net. */
export function groundSurface(levels: readonly LevelledPlace[], read: Read): Surface | null {
  const ground = groundOf({ levels, read });
  return ground.net === null ? null : { net: ground.net, levels: ground.levels.map(read) };
}

/** Kinds that shed water, or spill when they are blocked or full. */
const spilling: ReadonlySet<string> = new Set([
  "building",
  "surface",
  "heap",
  "chamber",
  "septic tank",
  "soakaway",
  "drainage field",
  "tank",
  "outfall",
]);

/** What does not stand in the way of water: wishes, lines on paper, and what hangs above. */
const passed: ReadonlySet<string> = new Set([
  "manoeuvre",
  "job",
  "stock",
  "approach",
  "animals",
  "carrier",
  "strip",
  "tree",
  "fence",
  "gate",
  "service",
  "drain",
  "catchment",
  "route",
  "boundary",
]);

/** Ways of the water from everything that sheds or spills among `standing`; empty where the ground was not levelled. */
export function waterWays(plan: Plan, standing: readonly Feature[], read: Read): readonly WaterWay[] {
  const surface = groundSurface(plan.levels, read);
  if (surface === null) return [];
  const sides = standing.flatMap((feature) =>
    passed.has(feature.kind) ? [] : [{ feature, sides: sidesOf(feature, read) }],
  );
  return standing
    .filter(({ kind }) => spilling.has(kind))
    .map((from) => {
      const start = lowestOf(from, surface, read);
      const path = start && flowPath(surface, start);
      return {
        from,
        path,
        meets: path
          ? metBy(
              path.points,
              sides.filter(({ feature }) => feature !== from),
            )
          : [],
      };
    });
}

/** Where water leaves a thing first: the lowest of its corners on the ground; null where one of them lies off the levels. */
function lowestOf(feature: Feature, surface: Surface, read: Read): Point | null {
  const figure = groundFigure(feature);
  const points = figure === null ? [] : (figureAt(figure, read).chains[0]?.points ?? []);
  const levels = points.map((point) => groundAt(surface, point)?.level ?? null);
  let lowest: number | null = null;
  for (const [k, level] of levels.entries()) {
    if (level === null) return null;
    if (lowest === null || level < (levels[lowest] as number)) lowest = k;
  }
  return lowest === null ? null : (points[lowest] as Point);
}

function sidesOf(feature: Feature, read: Read): readonly Segment[] {
  const figure = groundFigure(feature);
  const chains = figure === null ? [] : figureAt(figure, read).chains;
  return chains.flatMap(({ points, ends }) => {
    const closed = ends === "closed" ? [...points, ...points.slice(0, 1)] : points;
    return closed.slice(1).map((end, k): Segment => [closed[k] as Point, end]);
  });
}

function metBy(
  points: readonly Point[],
  others: readonly { readonly feature: Feature; readonly sides: readonly Segment[] }[],
): readonly Met[] {
  let walked = 0;
  const met = new Map<Feature, number>();
  for (const [k, end] of points.slice(1).entries()) {
    const step: Segment = [points[k] as Point, end];
    for (const { feature, sides } of others) {
      for (const side of sides) {
        if (meeting(step, side) === "apart") continue;
        const run = walked + distance(step[0], crossingPoint(step, side) ?? step[1]);
        met.set(feature, Math.min(run, met.get(feature) ?? run));
      }
    }
    walked += distance(step[0], end);
  }
  return [...met].map(([feature, run]) => ({ feature, run })).sort((a, b) => a.run - b.run);
}
