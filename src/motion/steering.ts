// Steering only while rolling: the curvature of a path changes by no more than full lock in a certain length of rolling.
// A path is laid as short arcs whose curvature follows that rate, so everything that checks arcs checks it too.

import type { Arc } from "./pose.ts";

/** A vehicle's steering: how far it rolls from wheels straight ahead to full lock, and the radius of full lock, m. */
export interface Steering {
  readonly rollToLock: number;
  readonly radius: number;
}

/** Longest arc of a ramp, m. Within it the path departs from the clothoid by less than k' h^3 / 24, under 0.1 mm. */
const rampStep = 0.1;

/** Legs shorter than this are of no use to a driver, m (PRACTICE). */
export const shortestLeg = 0.5;

/**
 * How far a circle of radius R shifts inwards when it is reached by a ramp of length s: the offset of the clothoid,
 * s^2 / (24 R) to the first order (COMPUTED; transition curves of road and rail, MEMORY). Valid for s well below R.
 */
export function rampOffset({ rollToLock, radius }: Steering): number {
  return (rollToLock * rollToLock) / (24 * radius);
}

/**
 * Arcs driven with a steering rate. Each given arc keeps its length and gear; its curvature is steered for at the rate
 * (1 / R per `rollToLock`) from whatever stood before, also across a change of direction, and held once it is reached.
 * The wheels stand straight at the start.
 */
export function rolled(arcs: readonly Arc[], steering: Steering): readonly Arc[] {
  const { rollToLock, radius } = steering;
  const rate = 1 / (radius * rollToLock);
  const laid: Arc[] = [];
  let curvature = 0;
  for (const arc of arcs) {
    const gear = Math.sign(arc.length);
    const whole = Math.abs(arc.length);
    const change = arc.curvature - curvature;
    const ramp = Math.min(whole, Math.abs(change) / rate);
    const reached = curvature + Math.sign(change) * rate * ramp;
    const count = Math.ceil(ramp / rampStep);
    for (let i = 0; i < count; i++) {
      const middle = curvature + ((reached - curvature) * (i + 0.5)) / count;
      laid.push({ curvature: middle, length: (gear * ramp) / count });
    }
    if (whole > ramp) laid.push({ curvature: reached, length: gear * (whole - ramp) });
    curvature = reached;
  }
  return laid;
}
