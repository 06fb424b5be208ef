// How far the corner of a mouth must be rounded so that the inner wheels stay on it as a vehicle turns in off a road.

import type { Vehicle } from "./vehicle.ts";

/** The two ways that meet, m: widths of the road that is driven in the middle of, and of the track that is turned into. */
export interface MouthWidths {
  readonly road: number;
  readonly track: number;
}

/**
 * Least radius (m) of the rounded corner between road and track, for a turn through `angle` (rad; a right angle where
 * the track stands square to the road) on one arc of radius r from the middle of the one to the middle of the other; 0
 * where the bare corner will do. With W the body's width, c = cos(angle), a = r - road/2, b = r - track/2 and p = r - W/2
 * the corner's arc, whose middle lies a - R and b - R from lines through the middle of the turn, touches the inner side of
 * the body where ((a - R)^2 + (b - R)^2 - 2 c (a - R) (b - R)) / (1 - c^2) = (p - R)^2, so with S = a + b - (1 + c) p
 * R = (S - sqrt(S^2 - a^2 - b^2 + 2 a b c + (1 - c^2) p^2)) / (1 - c). Square, both of one width w, this is
 * r + 1.207 W - 1.707 w (COMPUTED). Valid for rigid vehicles that keep to the middle.
 */
export function mouthCornerRadius(vehicle: Vehicle, { road, track }: MouthWidths, angle = Math.PI / 2): number {
  const r = vehicle.rearAxleRadius;
  const [a, b, p] = [r - road / 2, r - track / 2, r - vehicle.bodyWidth / 2];
  const c = Math.cos(angle);
  // Beyond the ends of the arc the body goes straight on beside the edges, which are farther off than its side.
  if (a <= Math.max(0, b * c) || b <= Math.max(0, a * c)) return 0;
  // How far beyond the body's inner side the bare corner stands, times a figure above 0.
  const beyond = a * a + b * b - 2 * a * b * c - (1 - c * c) * p * p;
  if (beyond <= 0) return 0;
  const sum = a + b - (1 + c) * p;
  return Math.max(0, (sum - Math.sqrt(Math.max(0, sum * sum - beyond))) / (1 - c));
}
