// How deep a dig goes and how deep a footing lies, as levels or as depths below the ground, whichever the plan gives.

import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Missing, Point, Scene } from "../model/reading.ts";
import { footOn } from "../geometry/segment.ts";
import type { LiveNumber } from "./drain-nodes.ts";
import { type DrainRun, missingInverts, planLength, pointsOf, runOf } from "./drain-runs.ts";

/** A depth that may be known as a level above the datum, as metres below the ground, or both. */
export interface Deep {
  readonly level: ((read: Read, at: Point) => number) | null;
  readonly below: LiveNumber | null;
}

const number = (feature: Feature, property: string): LiveNumber | null => {
  const quantity = propertyOf(feature, property);
  return isQuantity(quantity) ? (read) => read(quantity) : null;
};

/** Bottom of a dig: a drain trench `bed` metres under the pipe, or an excavation. */
export function digBottom(dig: Feature, bed: number, scene: Scene): Deep | { readonly missing: readonly Missing[] } {
  if (dig.kind === "drain run") return trenchBottom(dig, bed, scene);
  const bottom = number(dig, "bottom");
  const depth = number(dig, "depth");
  if (!bottom && !depth) return { missing: [wanted(dig, "depth", "the depth")] };
  return { level: bottom && ((read) => bottom(read)), below: depth };
}

function trenchBottom(dig: Feature, bed: number, scene: Scene): Deep | { readonly missing: readonly Missing[] } {
  const run = runOf(dig, scene);
  if (!run) return { missing: [] };
  const depth = number(run.drain, "depth");
  const below = depth && ((read: Read) => depth(read) + bed);
  if (run.upper.invert && run.lower.invert) return { level: (read, at) => invertNear(run, at, read) - bed, below };
  return below ? { level: null, below } : { missing: missingInverts(run) };
}

/** Invert of a run at the place nearest to a point, on the straight gradient from node to node. */
export function invertNear(run: DrainRun, at: Point, read: Read): number {
  const points = pointsOf(run.line, read);
  let best = { distance: Infinity, walked: 0 };
  for (const [piece, end] of points.slice(1).entries()) {
    const start = points[piece] as Point;
    const { share, distance } = footOn([start, end], at);
    if (distance < best.distance)
      best = {
        distance,
        walked:
          planLength(run.line.slice(0, piece + 1), read) + share * Math.hypot(end[0] - start[0], end[1] - start[1]),
      };
  }
  const [top, bottom] = [run.upper.invert?.(read) ?? Number.NaN, run.lower.invert?.(read) ?? Number.NaN];
  return top + ((bottom - top) * best.walked) / run.length(read);
}

/** Underside of what a building or a wall stands on. */
export function footingUnderside(feature: Feature): Deep | { readonly missing: readonly Missing[] } {
  const underside = number(feature, "foundation.underside");
  const depth = number(feature, "foundation.depth");
  const ground = number(feature, "ground_outside");
  if (underside) return { level: (read) => underside(read), below: depth };
  if (!depth)
    return { missing: [wanted(feature, "foundation.underside", "the level of the underside of the foundation")] };
  return { level: ground && ((read) => ground(read) - depth(read)), below: depth };
}

/** Depth of a dig's bottom below a footing's underside near a point, metres; below 0 where it stays above. */
export type Deeper = (read: Read, at: Point) => number;

/** By levels where both have one, else by depths below level ground; null where they cannot be compared. */
export function howMuchDeeper(dig: Deep, footing: Deep): Deeper | null {
  const { level: bottom, below: depth } = dig;
  const { level: underside, below: footingDepth } = footing;
  if (bottom && underside) return (read, at) => underside(read, at) - bottom(read, at);
  if (depth && footingDepth) return (read) => depth(read) - footingDepth(read);
  return null;
}

function wanted(feature: Feature, property: string, what: string): Missing {
  return {
    feature,
    property,
    asks: `${what} of ${feature.kind} "${feature.name}"`,
    dimension: "length",
    why: "missing",
  };
}
