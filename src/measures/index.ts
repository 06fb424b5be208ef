// The list of measures: one line each.

import type { Measure } from "../model/reading.ts";
import { clearDistance } from "./clear-distance.ts";
import { clearWidth } from "./clear-width.ts";
import { distanceFromCrown } from "./distance-from-crown.ts";
import { distanceFromStem } from "./distance-from-stem.ts";
import { equivalentJumpHeight } from "./equivalent-jump-height.ts";

const all: readonly Measure[] = [clearDistance, clearWidth, distanceFromCrown, distanceFromStem, equivalentJumpHeight];

/** Measures by name. */
export const measures: ReadonlyMap<string, Measure> = new Map(all.map((measure) => [measure.name, measure]));
