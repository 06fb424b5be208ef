// Room that single full-lock arcs take: a turning head, a half turn without reversing, a rounded corner.

import { overallLength, steadyCircle } from "./vehicle.ts";
import type { Vehicle } from "./vehicle.ts";

/** Lengths of a piece of ground, m. */
export interface Room {
  /** Along the direction in which the vehicle arrives. */
  readonly length: number;
  /** Across it. */
  readonly width: number;
}

/**
 * T head by single arcs: in by a right angle, straight back through, out by a right angle. Length of the bar
 * 2 r + length over all, depth Rw - ri (m, no clearance). Enough, not needed: shunts with less than a right angle do
 * with less (COMPUTED).
 */
export function teeHeadByArcs(vehicle: Vehicle): { readonly barLength: number; readonly barDepth: number } {
  const { rearAxleRadius, sweptWidth } = steadyCircle(vehicle, vehicle.rearAxleRadius);
  return { barLength: 2 * rearAxleRadius + overallLength(vehicle), barDepth: sweptWidth };
}

/**
 * Half turn on one full-lock arc, no reversing: Rw + sqrt((r + W/2)^2 + RO^2) across, Rw + L + FO along (m, no
 * clearance): the second term across is the tail that swings out at the start (COMPUTED).
 */
export function halfTurnRoom(vehicle: Vehicle): Room {
  const { rearAxleRadius, wallRadius } = steadyCircle(vehicle, vehicle.rearAxleRadius);
  const tail = Math.hypot(rearAxleRadius + vehicle.bodyWidth / 2, vehicle.rearOverhang);
  return { width: wallRadius + tail, length: wallRadius + vehicle.wheelbase + vehicle.frontOverhang };
}

/**
 * Rule of thumb for a yard in which a vehicle turns without reversing: outer diameter across, outer diameter and one
 * vehicle length along (m). Source: farmstead access advice of the FAO (READ); roomier than `halfTurnRoom`.
 */
export function halfTurnRoomByRule(vehicle: Vehicle): Room {
  const across = 2 * steadyCircle(vehicle, vehicle.rearAxleRadius).wallRadius;
  return { width: across, length: across + overallLength(vehicle) };
}

/**
 * Least radius (m) of the rounded inside corner where both centrelines of a right-angled bend of `laneWidth` (m) are
 * followed by the rear axle: r + 1.207 W - 1.707 w, none where that is negative (COMPUTED; 1.207 = (1 + sqrt 2)/2,
 * 1.707 = (2 + sqrt 2)/2).
 */
export function insideCornerRadius(vehicle: Vehicle, laneWidth: number): number {
  const { rearAxleRadius: r, bodyWidth: W } = vehicle;
  return Math.max(0, r + ((1 + Math.SQRT2) / 2) * W - ((2 + Math.SQRT2) / 2) * laneWidth);
}
