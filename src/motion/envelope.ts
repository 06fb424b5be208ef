// Rectangles fixed to a vehicle, each with the ground it must stay on.

import type { Ground } from "./ground.ts";
import { tyrePatchLength, tyrePatchWidth } from "./vehicle.ts";
import type { VehicleBody } from "./vehicle.ts";

/** A rectangle in the vehicle's frame (m; x ahead of the rear axle, y to the left) and its ground. */
export interface Envelope {
  readonly part: "body" | "tyre" | "mirrors";
  readonly back: number;
  readonly front: number;
  readonly right: number;
  readonly left: number;
  readonly ground: Ground;
}

/** Mirrors or another broad part at a height of its own: which strip of the vehicle, and what it must not meet. */
export interface MirrorStrip {
  /** Over both mirrors, m. */
  readonly width: number;
  /** Ahead of the rear axle, m. */
  readonly back: number;
  readonly front: number;
  readonly ground: Ground;
}

/** What a vehicle is checked against. */
export interface Surroundings {
  /** The body, grown by the margin all round, stays on this. */
  readonly clear: Ground;
  /** Every tyre's patch stays on this. Where it is the same object as `clear`, only the body is tested. */
  readonly running: Ground;
  readonly mirrors?: MirrorStrip;
}

/** The rectangles of a vehicle in its surroundings; body and mirrors grown by `margin` (m, may be negative). */
export function envelopesOf(vehicle: VehicleBody, around: Surroundings, margin: number): readonly Envelope[] {
  const half = vehicle.bodyWidth / 2;
  const body: Envelope = {
    part: "body",
    back: -vehicle.rearOverhang,
    front: vehicle.wheelbase + vehicle.frontOverhang,
    right: -half,
    left: half,
    ground: around.clear,
  };
  const envelopes = [grown(body, margin)];
  if (around.mirrors !== undefined) {
    const { width, back, front, ground } = around.mirrors;
    envelopes.push(grown({ part: "mirrors", back, front, right: -width / 2, left: width / 2, ground }, margin));
  }
  if (around.running !== around.clear) envelopes.push(...tyrePatches(vehicle, around.running));
  return envelopes;
}

/** An envelope grown on all four sides by `by` (m). */
export function grown(envelope: Envelope, by: number): Envelope {
  const { back, front, right, left } = envelope;
  return { ...envelope, back: back - by, front: front + by, right: right - by, left: left + by };
}

function tyrePatches(vehicle: VehicleBody, ground: Ground): readonly Envelope[] {
  const long = tyrePatchLength / 2;
  const outer = vehicle.widthOverTyres / 2;
  const inner = outer - tyrePatchWidth;
  const patches: Envelope[] = [];
  for (const axle of [0, vehicle.wheelbase]) {
    const [back, front] = [axle - long, axle + long];
    patches.push({ part: "tyre", back, front, right: inner, left: outer, ground });
    patches.push({ part: "tyre", back, front, right: -outer, left: -inner, ground });
  }
  return patches;
}
