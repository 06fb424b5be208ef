// The question whether a manoeuvre can be done, and what can be answered.

import type { Surroundings } from "./envelope.ts";
import type { Arc, Gear, Pose } from "./pose.ts";
import type { Tightest } from "./tightest.ts";
import type { Vehicle } from "./vehicle.ts";

/** One question. Lengths in metres, angles in radians, poses and grounds in the plan. */
export interface ManoeuvreQuestion extends Surroundings {
  readonly vehicle: Vehicle;
  readonly start: Pose;
  readonly goal: Pose;
  /** Clearance wanted all round the body. */
  readonly margin: number;
  /** Changes of direction allowed: moves less one. */
  readonly mostChanges: number;
  /** Gear of the first and of the last move; forward where not given. They fix whether changes are even or odd. */
  readonly firstGear?: Gear;
  readonly lastGear?: Gear;
}

export type ManoeuvreAnswer =
  | {
      readonly answer: "possible";
      readonly changes: number;
      /** Fewer changes than this were not found even for a slightly smaller vehicle. */
      readonly lowerBound: number;
      /** Exact arcs from the start, checked at the wanted clearance. */
      readonly path: readonly Arc[];
      /** Where the bare vehicle comes nearest to a boundary. */
      readonly tightest: Tightest;
    }
  /** Not found with so many changes, even for a slightly smaller vehicle. */
  | { readonly answer: "not-within"; readonly changes: number }
  | { readonly answer: "not-however-many"; readonly why: "start" | "goal" | "cut off" }
  | { readonly answer: "cannot-tell"; readonly why: "too close" | "too large" };
