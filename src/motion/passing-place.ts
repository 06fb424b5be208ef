// Two vehicles that meet on a narrow way: what a passing place must be like, in closed form.

import { overallLength } from "./vehicle.ts";
import type { Vehicle } from "./vehicle.ts";

/**
 * Least length of way in which a vehicle moves sideways by y and is straight again, m: two arcs of radius r that turn
 * against each other, sqrt(y (4 r - y)) up to y = 2 r. COMPUTED (each arc turns a = acos(1 - y / (2 r)), and the way is
 * 2 r sin a); wheels turned on the spot.
 */
export function sidestepLength(sideways: number, radius: number): number {
  const y = Math.min(Math.max(0, sideways), 2 * radius);
  return Math.sqrt(y * (4 * radius - y));
}

/**
 * Least length of a widening with square ends in which a vehicle can draw aside by y, stand clear, and drive on, m:
 * its own length and a sidestep at each end. COMPUTED; corners that swing out are not counted, tapers outside the
 * stated length make it easier.
 */
export function passingPlaceLength(vehicle: Vehicle, sideways: number): number {
  return overallLength(vehicle) + 2 * sidestepLength(sideways, vehicle.rearAxleRadius);
}
