// The finished top of a surface: a level plane, or one that falls from a point towards another.

import { type Feature, isQuantity, isSpot, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Plane } from "../terrain/surface.ts";
import { liveSpot } from "./live-figure.ts";
import type { LivePlane } from "./ground.ts";

/** The plane of a finished surface; null where its level, or the way it falls, is not in the plan. */
export function finishedPlane(surface: Feature): LivePlane | null {
  const level = propertyOf(surface, "finished.level");
  const fall = propertyOf(surface, "finished.fall");
  if (!isQuantity(level)) return null;
  if (fall === undefined) return (read) => ({ origin: [0, 0], atOrigin: read(level), east: 0, north: 0 });
  const direction = fallDirection(surface);
  return isQuantity(fall) && direction ? (read) => falling(read(level), read(fall), direction(read)) : null;
}

interface Direction {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** From where and towards what the finished surface falls; null where the plan does not say. */
function fallDirection(surface: Feature): ((read: Read) => Direction) | null {
  const from = propertyOf(surface, "finished.at");
  const to = propertyOf(surface, "finished.towards");
  if (!isSpot(from) || !isSpot(to)) return null;
  return (read) => ({ from: liveSpot(from)(read), to: liveSpot(to)(read) });
}

function falling(level: number, fall: number, { from, to }: Direction): Plane | null {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0) return null;
  const [east, north] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  return { origin: from, atOrigin: level, east: -fall * east, north: -fall * north };
}
