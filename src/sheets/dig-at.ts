// How deep to dig, or how high to fill, at a corner of what is to be built: down to its formation or its invert.

import { keyOfKind } from "../model/kinds.ts";
import type { Feature, Plan } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import { drainRuns } from "../site/drain-runs.ts";
import { invertNear } from "../site/dug-depth.ts";
import { finishedPlane } from "../site/finished-level.ts";
import { groundOf, groundUnder, levelAtPoint, roughness } from "../site/ground.ts";
import { layersOf } from "../site/layer-volumes.ts";
import { liveSpot } from "../site/live-figure.ts";
import { levelOnPlane, slopeOf } from "../terrain/surface.ts";
import { surveyDoubt } from "./survey-doubt.ts";

type Live = (read: Read) => number;

/** What is built up to and what is dug down to, as levels. */
interface Wanted {
  readonly top: Live | null;
  readonly bottom: Live;
  /** What lies at the bottom, in words. */
  readonly to: "the finished top" | "the formation" | "the invert";
  /** True where a layer has no thickness, so that the formation is not known. */
  readonly layerUnknown?: boolean;
}

/** Levels and the dig at one corner. Metres. */
export interface Dig {
  readonly top: number | null;
  readonly bottom: number;
  readonly to: Wanted["to"];
  readonly layerUnknown: boolean;
  /** Ground above the bottom (below 0: fill) with its standard uncertainty; null where no level was taken around it. */
  readonly depth: { readonly value: number; readonly u: number } | null;
}

/**
 * The dig at a spot of a feature; null where the plan gives no level there. `pegU` is the standard uncertainty of the
 * peg on the flat: on sloping ground a peg that stands aside stands higher or lower.
 */
export function digAt(feature: Feature, spot: Spot, { plan, read }: { readonly plan: Plan; readonly read: Read }) {
  const wanted = surfaceBottom(feature, spot) ?? drainBottom(feature, spot, plan);
  if (wanted === null) return null;
  const ground = groundOf({ levels: plan.levels, read });
  const level = levelAtPoint(ground, liveSpot(spot), read);
  const plane = groundUnder(ground, liveSpot(spot)(read))?.plane(read) ?? null;
  const depth: Live | null = level && ((now) => level(now) - wanted.bottom(now));
  return (pegU: number): Dig => ({
    top: wanted.top?.(read) ?? null,
    bottom: wanted.bottom(read),
    to: wanted.to,
    layerUnknown: wanted.layerUnknown ?? false,
    depth:
      depth && plane
        ? {
            value: depth(read),
            u: Math.hypot(surveyDoubt(depth, plan.numbers), roughness, slopeOf(plane) * pegU),
          }
        : null,
  });
}

/** The finished top of a surface, and the formation under all its layers. */
function surfaceBottom(feature: Feature, spot: Spot): Wanted | null {
  const plane = finishedPlane(feature);
  if (plane === null) return null;
  const top: Live = (read) => {
    const now = plane(read);
    return now === null ? Number.NaN : levelOnPlane(now, liveSpot(spot)(read));
  };
  const thicknesses = layersOf(feature).map(({ thickness }) => thickness);
  const layers = thicknesses.filter((thickness) => thickness !== null);
  const layerUnknown = layers.length < thicknesses.length;
  if (layers.length === 0 || layerUnknown) return { top: null, bottom: top, to: "the finished top", layerUnknown };
  const bottom: Live = (read) => layers.reduce((level, layer) => level - read(layer), top(read));
  return { top, bottom, to: "the formation" };
}

/** The invert of a drain where its line passes the spot. */
function drainBottom(feature: Feature, spot: Spot, plan: Plan): Wanted | null {
  if (feature.kind !== "drain") return null;
  const runs = drainRuns(feature, (key) => plan.features.filter(({ kind }) => keyOfKind(kind) === key));
  const run = runs.find(({ line }) => line.includes(spot));
  if (!run?.upper.invert || !run.lower.invert) return null;
  return { top: null, bottom: (read) => invertNear(run, liveSpot(spot)(read), read), to: "the invert" };
}
