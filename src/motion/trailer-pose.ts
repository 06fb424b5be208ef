// Where a trailer stands while its towing vehicle drives arcs: the hitch angle in closed form, forwards and in reverse.

import { poseAfter } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import type { TowedUnit } from "./trailer.ts";

/** A towed unit with a body, in metres. */
export interface Trailer extends TowedUnit {
  /** Hitch back to the front of its body; negative where it reaches ahead of the hitch. */
  readonly hitchToFront: number;
  /** Axle (or middle of the axles) to the rear end. */
  readonly rearOverhang: number;
  readonly bodyWidth: number;
  /** Outer face to outer face of the tyres. */
  readonly widthOverTyres: number;
  /** Largest angle between the two, rad, before something touches. */
  readonly greatestAngle: number;
}

/** Hitch to rear end plus the hitch's place behind the towing axle, m: how far a straight train reaches back. */
export function reachBehindAxle(trailer: Trailer): number {
  return trailer.hitchBehindAxle + trailer.hitchToAxle + trailer.rearOverhang;
}

/**
 * Hitch angle phi (rad, heading of the towing vehicle less heading of the trailer) after an arc of signed length s and
 * curvature k, from `angle` at its start.
 *
 * phi' = k - (sin phi - S k cos phi) / T per metre of the rear axle; with u = tan(phi / 2) this is
 * u' = a - b u + c u^2, a = k (1 + S/T) / 2, b = 1/T, c = k (1 - S/T) / 2, and with u = p / q a linear pair
 * p' = a q - b p / 2, q' = b q / 2 - c p, whose matrix M has M^2 = w^2, w^2 = b^2/4 - a c. So
 * (p, q) = (C + D M) (p0, q0), C = cosh(w s), D = sinh(w s) / w (circular where w^2 < 0). COMPUTED (plane
 * kinematics, wheels that do not slip); S = 0 and k = 0 give the tractrix. Exact for any s; the trailer folds right over
 * where w^2 < 0, that is for 1/k^2 < T^2 - S^2.
 */
export function hitchAngleAfter(trailer: TowedUnit, angle: number, arc: Arc): number {
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const { curvature: k, length: s } = arc;
  const a = (k * (1 + S / T)) / 2;
  const b = 1 / T;
  const c = (k * (1 - S / T)) / 2;
  const squared = (b * b) / 4 - a * c;
  const w = Math.sqrt(Math.abs(squared));
  const [p0, q0] = [Math.sin(angle / 2), Math.cos(angle / 2)];
  const grows = squared >= 0;
  const C = grows ? Math.cosh(w * s) : Math.cos(w * s);
  const D = Math.abs(w * s) < 1e-6 ? s : (grows ? Math.sinh(w * s) : Math.sin(w * s)) / w;
  const p = (C - (D * b) / 2) * p0 + D * a * q0;
  const q = (C + (D * b) / 2) * q0 - D * c * p0;
  return 2 * Math.atan2(p, q);
}

/** Pose of a trailer (axle midpoint and heading) behind a towing vehicle's pose at a hitch angle (rad). */
export function trailerPose(trailer: TowedUnit, towing: Pose, angle: number): Pose {
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const heading = towing.heading - angle;
  return {
    x: towing.x - S * Math.cos(towing.heading) - T * Math.cos(heading),
    y: towing.y - S * Math.sin(towing.heading) - T * Math.sin(heading),
    heading,
  };
}

/** Both poses of a train: of the towing vehicle, and the hitch angle (rad). */
export interface TrainPose extends Pose {
  readonly hitchAngle: number;
}

/** A train after an arc of its towing vehicle. */
export function trainAfter(trailer: TowedUnit, train: TrainPose, arc: Arc): TrainPose {
  return { ...poseAfter(train, arc), hitchAngle: hitchAngleAfter(trailer, train.hitchAngle, arc) };
}

/**
 * Largest hitch angle (rad) from which reversing at full lock still straightens the train: the angle of the steady
 * circle of the smallest radius R, atan(S / R) + asin(T / sqrt(R^2 + S^2)); on the axle |sin phi| < T / R. Null where
 * T^2 >= R^2 + S^2: the towing vehicle turns tighter than the trailer can follow, and recovers it from any angle that
 * the hitch itself allows. COMPUTED from the same equation, phi' = 0.
 */
export function jackKnifeAngle(trailer: TowedUnit, smallestRadius: number): number | null {
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const hitchRadius = Math.hypot(smallestRadius, S);
  return T >= hitchRadius ? null : Math.atan2(S, smallestRadius) + Math.asin(T / hitchRadius);
}

/** Hitch angle that a train may not pass in reverse, rad: the jack-knife angle or what the hitch allows, if that is less. */
export function largestAngleInReverse(trailer: Trailer, smallestRadius: number): number {
  return Math.min(trailer.greatestAngle, jackKnifeAngle(trailer, smallestRadius) ?? Infinity);
}
