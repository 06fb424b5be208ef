// What follows a vehicle round a bend: trailers behind or on the rear axle, steady and on the way there.

/** One towed unit, in metres. */
export interface TowedUnit {
  /** Hitch behind the axle of the unit in front (0 for a fifth wheel above the axle, negative ahead of it). */
  readonly hitchBehindAxle: number;
  /** Hitch to the axle of this unit; for a tandem, to the middle of the group. */
  readonly hitchToAxle: number;
}

/** A towing vehicle and its trailers, for off-tracking, in metres. */
export interface Train {
  readonly wheelbase: number;
  readonly trailers: readonly TowedUnit[];
}

/** The steady circle of a train: radius of every axle's midpoint (m, front to back) and hitch angles (rad). */
export interface SteadyTrain {
  readonly axleRadii: readonly number[];
  readonly hitchAngles: readonly number[];
}

/**
 * Steady circle of a train whose towing vehicle's rear axle follows `rearAxleRadius` (m); null where there is none
 * (a trailer folds up: T^2 >= r^2 + S^2).
 *
 * rh^2 = r^2 + S^2, r'^2 = rh^2 - T^2, hitch angle = atan(S / r) + atan(T / r') for each trailer in turn. This is the
 * sum-of-squares rule of off-tracking practice (SAE J695; Western Highway Institute 1970: both MEMORY).
 */
export function steadyTrain(train: Train, rearAxleRadius: number): SteadyTrain | null {
  const axleRadii = [rearAxleRadius];
  const hitchAngles: number[] = [];
  let r = rearAxleRadius;
  for (const { hitchBehindAxle: S, hitchToAxle: T } of train.trailers) {
    const squared = r * r + S * S - T * T;
    if (squared <= 0) return null;
    const next = Math.sqrt(squared);
    hitchAngles.push(Math.atan2(S, r) + Math.atan2(T, next));
    axleRadii.push(next);
    r = next;
  }
  return { axleRadii, hitchAngles };
}

/** Smallest rear-axle radius of the towing vehicle at which one trailer still has a steady circle: sqrt(T^2 - S^2). */
export function foldingRadius(trailer: TowedUnit): number {
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  return Math.sqrt(Math.max(0, T * T - S * S));
}

/** A bend: the front-axle midpoint comes in straight, follows a circle through `angle`, and runs out straight. */
export interface Bend {
  /** Radius of the front-axle midpoint (CTR), m. */
  readonly frontAxleRadius: number;
  /** Angle turned through, rad. */
  readonly angle: number;
}

/** What path-following gives for one bend. */
export interface BendTrace {
  /** Smallest distance of the last axle's midpoint from the centre of the bend, run-out included, m. */
  readonly insideAxleRadius: number;
  /** Largest angle at any hitch, rad. */
  readonly largestHitchAngle: number;
  /** True where a hitch angle passes a right angle: the train has jack-knifed and the radius means nothing. */
  readonly folded: boolean;
}

/** Steps per length of the shortest unit. With midpoint integration the radius is then good to about 0.1 mm. */
const stepsPerUnit = 200;

/**
 * Path-following through a bend: the front axle runs along the circle, every other axle is drawn towards what pulls
 * it. Heading of a unit drawn at its hitch with velocity v: theta' = (u x v) / T, u its own direction. The smallest
 * radius comes just after the bend ends, so the run-out is part of the trace.
 *
 * The published smallest inside radii of long vehicles are such values for a half turn, less half the width (COMPUTED;
 * reproduced within 20 mm in the tests). Start: everything in line. Valid at walking pace without tyre slip.
 */
export function traceBend(train: Train, bend: Bend): BendTrace {
  const lengths = [train.wheelbase, ...train.trailers.map((unit) => unit.hitchToAxle)];
  const longest = lengths.reduce((sum, length) => sum + length, 0);
  const step = Math.min(...lengths) / stepsPerUnit;
  const arc = bend.frontAxleRadius * bend.angle;
  const headings = lengths.map(() => 0);
  let inside = Infinity;
  let largest = 0;
  for (let s = 0; s < arc + 2 * longest; s += step) {
    advanceHeadings(train, headings, { direction: directionAt(bend, s + step / 2), step });
    const direction = directionAt(bend, s + step);
    const [x, y] = lastAxle(train, headings, frontAt(bend, s + step));
    inside = Math.min(inside, Math.hypot(x, y - bend.frontAxleRadius));
    largest = Math.max(largest, largestFold(headings, direction));
  }
  return { insideAxleRadius: inside, largestHitchAngle: largest, folded: largest > Math.PI / 2 };
}

function directionAt(bend: Bend, s: number): number {
  return Math.min(s / bend.frontAxleRadius, bend.angle);
}

function frontAt(bend: Bend, s: number): readonly [number, number] {
  const R = bend.frontAxleRadius;
  const turned = directionAt(bend, s);
  const out = Math.max(0, s - R * bend.angle);
  return [R * Math.sin(turned) + out * Math.cos(turned), R * (1 - Math.cos(turned)) + out * Math.sin(turned)];
}

/** One midpoint step of all headings. The direction of the front axle is that of the middle of the step. */
function advanceHeadings(train: Train, headings: number[], move: { direction: number; step: number }): void {
  const before = [...headings];
  const slope = headingSlopes(train, before, move.direction);
  const middle = before.map((heading, i) => heading + ((slope[i] ?? 0) * move.step) / 2);
  const middleSlope = headingSlopes(train, middle, move.direction);
  for (const [i, heading] of before.entries()) headings[i] = heading + (middleSlope[i] ?? 0) * move.step;
}

/** Change of each heading per metre of the front axle. */
function headingSlopes(train: Train, headings: readonly number[], direction: number): number[] {
  let vx = Math.cos(direction);
  let vy = Math.sin(direction);
  const slopes: number[] = [];
  for (const [i, heading] of headings.entries()) {
    const pulled = i === 0 ? train.wheelbase : (train.trailers[i - 1]?.hitchToAxle ?? 0);
    const ux = Math.cos(heading);
    const uy = Math.sin(heading);
    const slope = (ux * vy - uy * vx) / pulled;
    slopes.push(slope);
    const along = ux * vx + uy * vy;
    const behind = train.trailers[i]?.hitchBehindAxle ?? 0;
    vx = along * ux + behind * slope * uy;
    vy = along * uy - behind * slope * ux;
  }
  return slopes;
}

function lastAxle(
  train: Train,
  headings: readonly number[],
  front: readonly [number, number],
): readonly [number, number] {
  let [x, y] = front;
  for (const [i, heading] of headings.entries()) {
    const pulled = i === 0 ? train.wheelbase : (train.trailers[i - 1]?.hitchToAxle ?? 0);
    const back = pulled + (train.trailers[i]?.hitchBehindAxle ?? 0);
    x -= back * Math.cos(heading);
    y -= back * Math.sin(heading);
  }
  return [x, y];
}

function largestFold(headings: readonly number[], direction: number): number {
  let largest = Math.abs(direction - (headings[0] ?? 0)) > Math.PI / 2 ? Math.PI : 0;
  for (let i = 1; i < headings.length; i++) {
    largest = Math.max(largest, Math.abs((headings[i] ?? 0) - (headings[i - 1] ?? 0)));
  }
  return largest;
}
