// The list of measures: one line each.

import type { Measure } from "../model/reading.ts";
import { beyondStructuralRoots } from "./beyond-structural-roots.ts";
import { clearDistance } from "./clear-distance.ts";
import { clearWidth } from "./clear-width.ts";
import { difference } from "./difference.ts";
import { distanceFromCrown } from "./distance-from-crown.ts";
import { distanceFromStem } from "./distance-from-stem.ts";
import { equivalentJumpHeight } from "./equivalent-jump-height.ts";
import { heightOver } from "./height-over.ts";
import { overlapShare } from "./overlap-share.ts";
import { saidSo } from "./said-so.ts";
import { shareOfRootZone } from "./share-of-root-zone.ts";
import { statedMeasures } from "./stated.ts";

const all: readonly Measure[] = [
  beyondStructuralRoots,
  clearDistance,
  clearWidth,
  difference,
  distanceFromCrown,
  distanceFromStem,
  equivalentJumpHeight,
  heightOver,
  overlapShare,
  saidSo,
  shareOfRootZone,
  ...statedMeasures,
];

/** Measures by name. */
export const measures: ReadonlyMap<string, Measure> = new Map(all.map((measure) => [measure.name, measure]));
