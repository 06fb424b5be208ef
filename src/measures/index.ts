// The list of measures: one line each.

import type { Measure } from "../model/reading.ts";
import { ageAtWork } from "./age-at-work.ts";
import { beyondStructuralRoots } from "./beyond-structural-roots.ts";
import { clearDistance } from "./clear-distance.ts";
import { clearWidth } from "./clear-width.ts";
import { daysAfter } from "./days-after.ts";
import { difference } from "./difference.ts";
import { distanceBehind } from "./distance-behind.ts";
import { distanceFromCrown } from "./distance-from-crown.ts";
import { distanceFromStem } from "./distance-from-stem.ts";
import { equivalentJumpHeight } from "./equivalent-jump-height.ts";
import { heightOver } from "./height-over.ts";
import { monthsInSeason } from "./months-in-season.ts";
import { notInACircle } from "./not-in-a-circle.ts";
import { outsideSlopeLine } from "./outside-slope-line.ts";
import { overlapShare } from "./overlap-share.ts";
import { saidSo } from "./said-so.ts";
import { shareOfRootZone } from "./share-of-root-zone.ts";
import { statedMeasures } from "./stated.ts";
import { stockShare } from "./stock-share.ts";

const all: readonly Measure[] = [
  ageAtWork,
  beyondStructuralRoots,
  clearDistance,
  clearWidth,
  daysAfter,
  difference,
  distanceBehind,
  distanceFromCrown,
  distanceFromStem,
  equivalentJumpHeight,
  heightOver,
  monthsInSeason,
  notInACircle,
  outsideSlopeLine,
  overlapShare,
  saidSo,
  shareOfRootZone,
  stockShare,
  ...statedMeasures,
];

/** Measures by name. */
export const measures: ReadonlyMap<string, Measure> = new Map(all.map((measure) => [measure.name, measure]));
