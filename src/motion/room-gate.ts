// A gate off a lane of some width: how wide it must open, by how far back from the lane it stands.

import { gateOpeningBehindTurn } from "./gate-opening.ts";
import type { Arc, Pose } from "./pose.ts";
import { overallLength, steadyCircle, type Vehicle } from "./vehicle.ts";

/** A lane and what is wanted beside the vehicle, m. */
export interface Lane {
  readonly width: number;
  readonly clearance: number;
}

/** Openings for a gate this far back from the lane's near edge, m; null where the lane is too narrow to drive so. */
export interface GateRow {
  readonly setback: number;
  /** Rear axle along the middle of the lane. */
  readonly fromMiddle: number | null;
  /** Keeping to the lane's far side as closely as the clearance and the tail that swings out allow. */
  readonly fromFarSide: number | null;
}

/**
 * Distance of the rear axle's line from the lane's far edge, m, at which the tail still clears it when full lock goes
 * on: c + W/2 + tail swing (COMPUTED). Null where that leaves the near side no clearance.
 */
function closestToFarSide(vehicle: Vehicle, { width, clearance }: Lane): number | null {
  const half = vehicle.bodyWidth / 2;
  const line = clearance + half + steadyCircle(vehicle, vehicle.rearAxleRadius).tailSwing;
  return line + half + clearance <= width ? line : null;
}

/**
 * Clear openings for set-backs from the lane's near edge, m: the formula of `gateOpeningBehindTurn` with D = setback +
 * width / 2 in the middle of the lane, D = setback + width - (c + W/2 + tail swing) at its far side, and the clearance
 * added on both sides (COMPUTED). Valid where the ground between lane and gate is open for as wide as the row of a
 * set-back of nothing says.
 */
export function gateRows(vehicle: Vehicle, lane: Lane, setbacks: readonly number[]): readonly GateRow[] {
  const line = closestToFarSide(vehicle, lane);
  const opening = (distance: number) => gateOpeningBehindTurn(vehicle, distance) + 2 * lane.clearance;
  return setbacks.map((setback) => ({
    setback,
    fromMiddle: line !== null && line <= lane.width / 2 ? opening(setback + lane.width / 2) : null,
    fromFarSide: line === null ? null : opening(setback + lane.width - line),
  }));
}

/**
 * Set-back from the lane's near edge, m, beyond which a gate need only be as wide as the body and its clearances,
 * for a driver in the middle of the lane: r + L + FO - width / 2 (COMPUTED).
 */
export function straightFrom(vehicle: Vehicle, lane: Lane): number {
  return Math.max(0, vehicle.rearAxleRadius + vehicle.wheelbase + vehicle.frontOverhang - lane.width / 2);
}

/** A gate drawn where it stands, m: the rear axle comes along y = 0 in the middle of the lane, and turns left from x = 0. */
export interface GatePlaced {
  readonly lane: Lane;
  readonly setback: number;
  /** The gate's line, and its posts along x: inside and outside of the bend. */
  readonly line: number;
  readonly posts: readonly [number, number];
  /** How far the body, with its clearance, reaches beyond the outer post between lane and gate. */
  readonly beyondPost: number;
  readonly start: Pose;
  readonly path: readonly Arc[];
}

/** How far the vehicle is drawn before it turns and beyond the gate, in lengths of the vehicle (method constant). */
const runUp = 1.2;

/** A gate at a set-back, with the turn from the middle of the lane that it is just wide enough for; null where there is none. */
export function placedGate(vehicle: Vehicle, lane: Lane, setback: number): GatePlaced | null {
  const opening = gateRows(vehicle, lane, [setback])[0]?.fromMiddle ?? null;
  if (opening === null) return null;
  const { rearAxleRadius: r, insideRadius, wallRadius } = steadyCircle(vehicle, vehicle.rearAxleRadius);
  const line = setback + lane.width / 2;
  const inner = Math.sqrt(insideRadius ** 2 - Math.min(0, line - r) ** 2) - lane.clearance;
  const widest = line >= r ? wallRadius + lane.clearance : inner + opening;
  const run = runUp * overallLength(vehicle);
  return {
    lane,
    setback,
    line,
    posts: [inner, inner + opening],
    beyondPost: Math.max(0, widest - inner - opening),
    start: { x: -run, y: 0, heading: 0 },
    path: [
      { curvature: 0, length: run },
      { curvature: 1 / r, length: (r * Math.PI) / 2 },
      { curvature: 0, length: Math.max(0, line - r) + run },
    ],
  };
}
