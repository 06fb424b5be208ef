// The room of a vehicle with its trailer where no search is needed: round a circle, through a bend, in at a gate.

import type { Lane } from "./room-gate.ts";
import { gateRows } from "./room-gate.ts";
import { bodyOutline } from "./swept-outline.ts";
import { steadyTrain, traceBend } from "./trailer.ts";
import { type Trailer, trailerPose, trainAfter, type TrainPose } from "./trailer-pose.ts";
import { overallLength, steadyCircle, type Vehicle } from "./vehicle.ts";
import type { Point } from "../model/reading.ts";

/** A vehicle with the trailer that it tows. */
export interface Towing {
  readonly vehicle: Vehicle;
  readonly trailer: Trailer;
}

/** Going round and round, m (angle rad). */
export interface TrainRing {
  readonly rearAxleRadius: number;
  readonly trailerRadius: number;
  /** Farthest and nearest that any of the two bodies comes to the middle. */
  readonly outer: number;
  readonly inner: number;
  /** Angle between the two. */
  readonly hitchAngle: number;
  /** False where full lock would bring the two closer together than they may come, so that a wider circle is taken. */
  readonly fullLock: boolean;
}

/** Widest circle that is looked at, m, and how closely a radius is found (method constants). */
const widest = 500;
const closely = 1e-4;

/**
 * The tightest circle that a train can go round for as long as it likes with an angle between the two of at most
 * `mostAngle` (rad). r' = sqrt(r^2 + S^2 - T^2); outer = the farthest corner, sqrt((r + W/2)^2 + (L + FO)^2),
 * sqrt((r' + W'/2)^2 + (T - front)^2) or with the rear overhangs; inner = the nearer of r - W/2 and r' - W'/2 (COMPUTED from the
 * steady circle of `steadyTrain`).
 */
export function trainRing(towing: Towing, mostAngle: number): TrainRing {
  const { vehicle } = towing;
  const holds = (r: number) => (steadyAt(towing, r)?.angle ?? Infinity) <= mostAngle;
  const r = leastRadius(vehicle.rearAxleRadius, holds);
  const { angle = 0, radius = r } = steadyAt(towing, r) ?? {};
  const reach = (axleRadius: number, width: number, ends: readonly number[]) =>
    Math.max(...ends.map((end) => Math.hypot(axleRadius + width / 2, end)));
  const { trailer } = towing;
  return {
    rearAxleRadius: r,
    trailerRadius: radius,
    outer: Math.max(
      reach(r, vehicle.bodyWidth, [vehicle.wheelbase + vehicle.frontOverhang, vehicle.rearOverhang]),
      reach(radius, trailer.bodyWidth, [trailer.hitchToAxle - trailer.hitchToFront, trailer.rearOverhang]),
    ),
    inner: Math.max(0, Math.min(r - vehicle.bodyWidth / 2, radius - trailer.bodyWidth / 2)),
    hitchAngle: angle,
    fullLock: r === vehicle.rearAxleRadius,
  };
}

function steadyAt({ vehicle, trailer }: Towing, r: number) {
  const steady = steadyTrain({ wheelbase: vehicle.wheelbase, trailers: [trailer] }, r);
  return steady && { radius: steady.axleRadii[1] ?? 0, angle: steady.hitchAngles[0] ?? 0 };
}

/** The least radius from `from` on at which something holds that holds at every wider one. */
function leastRadius(from: number, holds: (radius: number) => boolean): number {
  if (holds(from)) return from;
  let [low, high] = [from, widest];
  while (high - low > closely) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** A bend: how far from its middle the bodies come, m, and the largest angle between the two on the way, rad. */
export interface TrainBend {
  readonly angle: number;
  readonly outer: number;
  readonly inner: number;
  readonly hitchAngle: number;
  readonly fullLock: boolean;
}

/**
 * A bend of some angle (rad), in and out straight, the middle of the front axle on the circle of sqrt(r^2 + L^2): the
 * inside is the path-following minimum of `traceBend` less half the trailer's width, the outside the front corner. So
 * the published smallest inside radii of design vehicles are made, for half a turn (COMPUTED; reproduced in the tests).
 */
export function trainBend(towing: Towing, angle: number, mostAngle: number): TrainBend {
  const { vehicle, trailer } = towing;
  const trace = (r: number) =>
    traceBend(
      { wheelbase: vehicle.wheelbase, trailers: [trailer] },
      { frontAxleRadius: Math.hypot(r, vehicle.wheelbase), angle },
    );
  const r = leastRadius(vehicle.rearAxleRadius, (radius) => trace(radius).largestHitchAngle <= mostAngle);
  const { insideAxleRadius, largestHitchAngle } = trace(r);
  const { wallRadius, frontAxleRadius } = steadyCircle(vehicle, r);
  return {
    angle,
    // Before the rear wheels have come round, the corner can stand out a little farther than on the steady circle.
    outer: Math.max(wallRadius, Math.hypot(frontAxleRadius + vehicle.bodyWidth / 2, vehicle.frontOverhang)),
    inner: Math.max(0, insideAxleRadius - trailer.bodyWidth / 2),
    hitchAngle: largestHitchAngle,
    fullLock: r === vehicle.rearAxleRadius,
  };
}

/** Opening of a gate this far back from the near edge of the lane, m; null where the lane is too narrow to drive so. */
export interface TrainGateRow {
  readonly setback: number;
  readonly fromMiddle: number | null;
}

/** Step of the poses that are looked at along the turn, m: a corner that crosses a line between two of them is missed by at most 3 mm. */
const step = 0.005;

/**
 * Clear openings for a train that turns in by a right angle on one arc, its rear axle along the middle of the lane
 * before: on the gate's line, from the innermost that either body comes over to the outermost, with the clearance on both
 * sides. The train's poses are exact (closed form), sampled along the way (COMPUTED).
 */
export function trainGateRows(
  towing: Towing,
  lane: Lane,
  { setbacks, mostAngle }: { readonly setbacks: readonly number[]; readonly mostAngle: number },
): readonly TrainGateRow[] {
  const outlines = turnIn(towing, mostAngle);
  const alone = gateRows(towing.vehicle, lane, setbacks);
  return setbacks.map((setback, i) => {
    if ((alone[i]?.fromMiddle ?? null) === null) return { setback, fromMiddle: null };
    const crossed = outlines.flatMap((outline) => crossings(outline, setback + lane.width / 2));
    const opening =
      crossed.reduce((most, x) => Math.max(most, x), -Infinity) -
      crossed.reduce((least, x) => Math.min(least, x), Infinity);
    return { setback, fromMiddle: opening + 2 * lane.clearance };
  });
}

/** Outlines of both bodies along a right-angled turn to the left from y = 0, m. */
export function turnIn(towing: Towing, mostAngle: number): readonly (readonly Point[])[] {
  const { vehicle, trailer } = towing;
  const quarter = (r: number) => ({ curvature: 1 / r, length: (r * Math.PI) / 2 });
  const straight: TrainPose = { x: 0, y: 0, heading: 0, hitchAngle: 0 };
  // The angle only grows on the arc, and only falls on the straight after it.
  const r = leastRadius(
    vehicle.rearAxleRadius,
    (radius) => Math.abs(trainAfter(trailer, straight, quarter(radius)).hitchAngle) <= mostAngle,
  );
  const long = overallLength(vehicle) + trailer.hitchBehindAxle + trailer.hitchToAxle + trailer.rearOverhang;
  const outlines: (readonly Point[])[] = [];
  let at: TrainPose = { ...straight, x: -step };
  for (const arc of [{ curvature: 0, length: step }, quarter(r), { curvature: 0, length: r + 6 * long }]) {
    const count = Math.ceil(arc.length / step);
    for (let k = 0; k < count; k++) {
      at = trainAfter(trailer, at, { curvature: arc.curvature, length: arc.length / count });
      outlines.push(bodyOutline(vehicle, at), trailerOutline(trailer, at));
    }
  }
  return outlines;
}

/** Corners of the trailer's body: back right, front right, front left, back left. */
export function trailerOutline(trailer: Trailer, at: TrainPose): readonly Point[] {
  const body = {
    wheelbase: trailer.hitchToAxle,
    frontOverhang: -trailer.hitchToFront,
    rearOverhang: trailer.rearOverhang,
    bodyWidth: trailer.bodyWidth,
    widthOverTyres: trailer.widthOverTyres,
  };
  return bodyOutline(body, trailerPose(trailer, at, at.hitchAngle));
}

/** Where the sides of an outline cross a line y = `line`. */
function crossings(outline: readonly Point[], line: number): readonly number[] {
  return outline.flatMap(([x, y], i) => {
    const [u, v] = outline[(i + 1) % outline.length] ?? [x, y];
    return y <= line === v <= line ? [] : [x + ((line - y) / (v - y)) * (u - x)];
  });
}
