// Where the plan lies on the earth, as its `earth` key says. Never used in a clearance.

import { isQuantity, type Plan, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";

export interface Earth {
  readonly at: Point;
  readonly latitude: number;
  readonly longitude: number;
  /** Angle from the plan's north to true north, radians clockwise. */
  readonly trueNorth: number;
  readonly plusMinus: number | null;
}

/** The earth tie of a plan; null where it has none. */
export function earthOf(plan: Plan, read: Read): Earth | null {
  if (!plan.site) return null;
  const number = (name: string): number | null => {
    const value = plan.site && propertyOf(plan.site, `earth.${name}`);
    return isQuantity(value) ? read(value) : null;
  };
  const station = propertyOf(plan.site, "earth.station");
  const peg = typeof station === "string" ? plan.pegs.get(station) : undefined;
  const latitude = number("latitude");
  const longitude = number("longitude");
  if (!peg || latitude === null || longitude === null) return null;
  return {
    at: [read(peg.east), read(peg.north)],
    latitude,
    longitude,
    trueNorth: -(number("north") ?? 0),
    plusMinus: number("plus_minus"),
  };
}
