// How far the corner of a mouth must be rounded so that the inner wheels stay on it as a vehicle turns in off a road.

import type { Vehicle } from "./vehicle.ts";

/** The two ways that meet, m: widths of the road that is driven in the middle of, and of the track that is turned into. */
export interface MouthWidths {
  readonly road: number;
  readonly track: number;
}

/**
 * Least radius (m) of the rounded corner between road and track, for a right-angle turn on one arc of radius r from the
 * middle of the one to the middle of the other; 0 where a square corner will do. With W the body's width,
 * a = r - road/2, b = r - track/2 and p = r - W/2, the corner's arc touches the inner side of the body where
 * sqrt((a - R)^2 + (b - R)^2) + R = p, so R = (a + b - p) - sqrt((a + b - p)^2 - (a^2 + b^2 - p^2)).
 * With both of one width w this is r + 1.207 W - 1.707 w (COMPUTED). Valid for rigid vehicles that keep to the middle.
 */
export function mouthCornerRadius(vehicle: Vehicle, { road, track }: MouthWidths): number {
  const r = vehicle.rearAxleRadius;
  const [a, b, p] = [r - road / 2, r - track / 2, r - vehicle.bodyWidth / 2];
  // Where the body's inner side passes outside the square corner, nothing need be rounded.
  if (a <= 0 || b <= 0 || a * a + b * b <= p * p) return 0;
  const sum = a + b - p;
  return Math.max(0, sum - Math.sqrt(Math.max(0, sum * sum - (a * a + b * b - p * p))));
}
