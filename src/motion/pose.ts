// Where a vehicle stands and how it moves: poses and arcs.

/** Rear-axle midpoint in plan metres and heading in radians, counter-clockwise from the x axis. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** A piece of path of constant curvature: curvature in 1/m, left positive; length in m, negative when reversing. */
export interface Arc {
  readonly curvature: number;
  readonly length: number;
}

export type Gear = "forward" | "reverse";

/**
 * Arcs flatter than this (1/m) are driven straight. Circles of more than 10 000 km would lose the ninth digit of a
 * position; over 20 m the difference is 5 micrometres.
 */
export const straightCurvature = 1e-7;

/**
 * Pose after an arc of signed length s and curvature k: with a = k s,
 * dx = s sinc(a/2) cos(heading + a/2), dy the same with sin; the chord of a circle, exact also for k -> 0.
 */
export function poseAfter(pose: Pose, arc: Arc): Pose {
  const turned = arc.curvature * arc.length;
  const half = turned / 2;
  const chord = arc.length * (Math.abs(half) < 1e-8 ? 1 - (half * half) / 6 : Math.sin(half) / half);
  return {
    x: pose.x + chord * Math.cos(pose.heading + half),
    y: pose.y + chord * Math.sin(pose.heading + half),
    heading: pose.heading + turned,
  };
}

/** Poses at the start of a path and after each of its arcs. */
export function posesAlong(start: Pose, arcs: readonly Arc[]): Pose[] {
  const poses = [start];
  let at = start;
  for (const arc of arcs) {
    at = poseAfter(at, arc);
    poses.push(at);
  }
  return poses;
}

/** A move: what is driven in one gear between two changes of direction. */
export interface Move {
  readonly gear: Gear;
  /** Metres of the rear-axle midpoint. */
  readonly length: number;
}

/** Moves of a path in order; arcs of no length do not count. */
export function movesOf(arcs: readonly Arc[]): readonly Move[] {
  const moves: { gear: Gear; length: number }[] = [];
  for (const { length } of arcs) {
    if (length === 0) continue;
    const gear = length > 0 ? "forward" : "reverse";
    const last = moves.at(-1);
    if (last?.gear === gear) last.length += Math.abs(length);
    else moves.push({ gear, length: Math.abs(length) });
  }
  return moves;
}

/** Number of changes of direction of a path. */
export function directionChanges(arcs: readonly Arc[]): number {
  return Math.max(0, movesOf(arcs).length - 1);
}

/** An angle brought between -pi and pi. */
export function wrapAngle(angle: number): number {
  const turn = 2 * Math.PI;
  return angle - turn * Math.round(angle / turn);
}
