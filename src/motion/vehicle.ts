// A vehicle on the plan: five lengths and the smallest radius that its rear axle can follow.

/** Lengths of a rigid vehicle, in metres. Mirrors are not part of the body. */
export interface VehicleBody {
  /** Front axle to rear axle; for a tandem, to the middle of the group. */
  readonly wheelbase: number;
  readonly frontOverhang: number;
  readonly rearOverhang: number;
  readonly bodyWidth: number;
  /** Outer face to outer face of the tyres of one axle. */
  readonly widthOverTyres: number;
}

/** A vehicle that can be driven: its body and the smallest radius of its rear-axle midpoint, in metres. */
export interface Vehicle extends VehicleBody {
  readonly rearAxleRadius: number;
}

/**
 * A turning radius and what it is the radius of. Four different things are called "turning radius"; a published
 * number means nothing until it is known which one it is. Many tables give the diameter: halve it first.
 */
export interface TurningRadius {
  /**
   * `front axle centre`: midpoint of the front axle (centreline turning radius, CTR).
   * `outer front tyre`: kerb to kerb. `outer front corner`: wall to wall, body. `inner rear side`: inside of the body
   * at the rear axle.
   */
  readonly of: "front axle centre" | "outer front tyre" | "outer front corner" | "inner rear side";
  readonly radius: number;
}

/** Length on the ground, and width, of the patch by which a tyre is represented, m (method constant, PRACTICE). */
export const tyrePatchLength = 0.2;
export const tyrePatchWidth = 0.2;

/** Length over all of a body, m. */
export function overallLength(body: VehicleBody): number {
  return body.frontOverhang + body.wheelbase + body.rearOverhang;
}

/**
 * Radius r of the rear-axle midpoint from a published radius; null where the lengths contradict the radius.
 *
 * With wheelbase L, body width W, width over tyres t, front overhang FO (steady circle, low speed, no tyre slip):
 * CTR = sqrt(r^2 + L^2); Rk = sqrt((r + t/2)^2 + L^2); Rw = sqrt((r + W/2)^2 + (L + FO)^2); ri = r - W/2.
 * Source: plane kinematics of a vehicle whose rear wheels do not steer (COMPUTED).
 */
export function rearAxleRadiusFrom(given: TurningRadius, body: VehicleBody): number | null {
  const r = solveRearAxleRadius(given, body);
  return Number.isFinite(r) && r > 0 ? r : null;
}

function solveRearAxleRadius(given: TurningRadius, body: VehicleBody): number {
  const reach = body.wheelbase + body.frontOverhang;
  if (given.of === "front axle centre") return leg(given.radius, body.wheelbase);
  if (given.of === "outer front tyre") return leg(given.radius, body.wheelbase) - body.widthOverTyres / 2;
  if (given.of === "outer front corner") return leg(given.radius, reach) - body.bodyWidth / 2;
  return given.radius + body.bodyWidth / 2;
}

/** What a vehicle takes up on a steady circle, m (angles rad). Symbols as in `rearAxleRadiusFrom`. */
export interface SteadyCircle {
  readonly rearAxleRadius: number;
  readonly frontAxleRadius: number;
  readonly kerbRadius: number;
  readonly wallRadius: number;
  readonly insideRadius: number;
  /** Rw - ri. */
  readonly sweptWidth: number;
  /** Angle of a wheel in the middle of the front axle: atan(L / r). */
  readonly steeringAngle: number;
  /** How far the tail swings out when full lock goes on: sqrt((r + W/2)^2 + RO^2) - (r + W/2). */
  readonly tailSwing: number;
}

/** The steady circle of a body whose rear-axle midpoint follows radius `rearAxleRadius` (m). Formulas: COMPUTED. */
export function steadyCircle(body: VehicleBody, rearAxleRadius: number): SteadyCircle {
  const { wheelbase, bodyWidth, widthOverTyres, frontOverhang, rearOverhang } = body;
  const outerSide = rearAxleRadius + bodyWidth / 2;
  const wallRadius = Math.hypot(outerSide, wheelbase + frontOverhang);
  const insideRadius = rearAxleRadius - bodyWidth / 2;
  return {
    rearAxleRadius,
    frontAxleRadius: Math.hypot(rearAxleRadius, wheelbase),
    kerbRadius: Math.hypot(rearAxleRadius + widthOverTyres / 2, wheelbase),
    wallRadius,
    insideRadius,
    sweptWidth: wallRadius - insideRadius,
    steeringAngle: Math.atan2(wheelbase, rearAxleRadius),
    tailSwing: Math.hypot(outerSide, rearOverhang) - outerSide,
  };
}

/**
 * Rear-axle radius from the largest angle of the inner front wheel (rad): r = L cot(inner) + k/2, with the
 * distance k between the kingpins (m). From cot(outer) - cot(inner) = k / L (COMPUTED).
 */
export function rearAxleRadiusFromInnerWheel(wheelbase: number, innerAngle: number, kingpinDistance: number): number {
  return wheelbase / Math.tan(innerAngle) + kingpinDistance / 2;
}

/**
 * Longest distance from rear axle to front end (L + FO, m) with which a body of `width` can go round between an outer
 * and an inner circle (m): sqrt(outer^2 - (inner + width)^2); null where it is wider than the gap (COMPUTED).
 */
export function longestReachInAnnulus(outer: number, inner: number, width: number): number | null {
  const reach = leg(outer, inner + width);
  return Number.isFinite(reach) ? reach : null;
}

/**
 * Whether a vehicle can drive round and round between two circles (m) without its body crossing either. It is taken
 * as close to the inner circle as it can go, for there it reaches out least (Rw grows with r).
 */
export function goesRoundInAnnulus(vehicle: Vehicle, outer: number, inner: number): boolean {
  const r = Math.max(vehicle.rearAxleRadius, inner + vehicle.bodyWidth / 2);
  return steadyCircle(vehicle, r).wallRadius <= outer;
}

/** Shorter side of a right triangle; NaN where the other side is longer than the hypotenuse. */
function leg(hypotenuse: number, other: number): number {
  return Math.sqrt(hypotenuse * hypotenuse - other * other);
}
