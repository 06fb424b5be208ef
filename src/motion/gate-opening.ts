// How wide a gate must be when a vehicle turns into it off a lane, and how far back it must stand.

import { steadyCircle } from "./vehicle.ts";
import type { Vehicle } from "./vehicle.ts";

/**
 * Smallest clear opening (m, no clearance added) of a gate entered by a right-angle turn on one arc at the vehicle's
 * smallest radius r, the rear axle following the lane's centreline until then. D = `setback`, the distance from that
 * line to the gate (m):
 * D < r: sqrt(Rw^2 - (D - r)^2) - sqrt(ri^2 - (D - r)^2);
 * r <= D <= r + L + FO: sqrt(Rw^2 - (D - r)^2) - ri; beyond: the body width.
 * COMPUTED; a brute-force sweep agreed within 2 mm. Valid where the lane itself is wide enough for the turn.
 */
export function gateOpeningBehindTurn(vehicle: Vehicle, setback: number): number {
  const { rearAxleRadius: r, wallRadius, insideRadius } = steadyCircle(vehicle, vehicle.rearAxleRadius);
  const past = setback - r;
  if (past > vehicle.wheelbase + vehicle.frontOverhang) return vehicle.bodyWidth;
  const outer = Math.sqrt(wallRadius ** 2 - past ** 2);
  if (past >= 0) return outer - insideRadius;
  return outer - Math.sqrt(Math.max(0, insideRadius ** 2 - past ** 2));
}

/**
 * Least setback D (m) of a gate with this clear opening (m) and clearance on each side (m), at or beyond r; null where
 * the opening is narrower than the body and its clearances. Inverse of `gateOpeningBehindTurn`:
 * D = r + sqrt(Rw^2 - (opening - 2 c + ri)^2) (COMPUTED).
 */
export function gateSetbackFor(vehicle: Vehicle, opening: number, clearanceEachSide: number): number | null {
  const { rearAxleRadius: r, wallRadius, insideRadius } = steadyCircle(vehicle, vehicle.rearAxleRadius);
  const usable = opening - 2 * clearanceEachSide;
  if (usable < vehicle.bodyWidth) return null;
  return r + Math.sqrt(Math.max(0, wallRadius ** 2 - (usable + insideRadius) ** 2));
}
