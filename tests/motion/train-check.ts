// A train driven in small steps by a second way: midpoint rule for every heading, no closed form, corners tested one by
// one. Another path of thought than the code that it checks.

import type { Arc } from "../../src/motion/pose.ts";
import type { TrainQuestion } from "../../src/motion/trailer-manoeuvre.ts";

type Place = readonly [number, number];
type Ring = readonly Place[];

export interface TrainDriven {
  /** How far a corner lies outside the ground at worst, or a vertex of the ground within a body, m. */
  readonly worst: number;
  /** Largest hitch angle, and the largest while reversing, rad. */
  readonly largest: number;
  readonly largestReverse: number;
  readonly end: { readonly x: number; readonly y: number; readonly heading: number; readonly hitch: number };
}

/** Longest step between two looks, m. */
const step = 0.005;

/** Drives arcs over a ground of one ring, with both bodies grown by the margin. */
export function trainDriven(question: TrainQuestion, path: readonly Arc[]): TrainDriven {
  const { vehicle, trailer, margin } = question;
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const ring = question.clear.rings[0] as Ring;
  const ahead = [-vehicle.rearOverhang, vehicle.wheelbase + vehicle.frontOverhang, vehicle.bodyWidth / 2] as const;
  const behind = [-trailer.rearOverhang, T - trailer.hitchToFront, trailer.bodyWidth / 2] as const;
  let [x, y, heading] = [question.start.x, question.start.y, question.start.heading];
  let towed = heading;
  const seen = { worst: 0, largest: 0, largestReverse: 0 };
  for (const arc of path) {
    const count = Math.ceil(Math.abs(arc.length) / step);
    const h = arc.length / count;
    for (let i = 0; i < count; i++) {
      const slope = (own: number, other: number) =>
        (Math.sin(own - other) - S * arc.curvature * Math.cos(own - other)) / T;
      const middle = heading + (arc.curvature * h) / 2;
      towed += h * slope(middle, towed + (h / 2) * slope(heading, towed));
      x += h * Math.cos(middle);
      y += h * Math.sin(middle);
      heading += arc.curvature * h;
      const angle = Math.abs(heading - towed);
      seen.largest = Math.max(seen.largest, angle);
      if (h < 0) seen.largestReverse = Math.max(seen.largestReverse, angle);
      const hitch: Place = [x - S * Math.cos(heading), y - S * Math.sin(heading)];
      const axle: Place = [hitch[0] - T * Math.cos(towed), hitch[1] - T * Math.sin(towed)];
      const outside = Math.max(
        outsideBy(ring, box([x, y], heading, grown(ahead, margin))),
        outsideBy(ring, box(axle, towed, grown(behind, margin))),
      );
      seen.worst = Math.max(seen.worst, outside);
    }
  }
  return { ...seen, end: { x, y, heading, hitch: heading - towed } };
}

type Extent = readonly [back: number, front: number, half: number];

const grown = ([back, front, half]: Extent, by: number): Extent => [back - by, front + by, half + by];

function box([x, y]: Place, heading: number, [back, front, half]: Extent): Ring {
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const at = (u: number, v: number): Place => [x + c * u - s * v, y + s * u + c * v];
  return [at(back, -half), at(front, -half), at(front, half), at(back, half)];
}

function outsideBy(ring: Ring, body: Ring): number {
  const corners = body.filter((corner) => !inside(ring, corner)).map((corner) => edgeDistance(ring, corner));
  const vertices = ring.filter((vertex) => inside(body, vertex)).map((vertex) => edgeDistance(body, vertex));
  return Math.max(0, ...corners, ...vertices);
}

function inside(ring: Ring, [x, y]: Place): boolean {
  let odd = false;
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  }
  return odd;
}

function edgeDistance(ring: Ring, [x, y]: Place): number {
  return ring.reduce((least, [ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    return Math.min(least, Math.hypot(ax + t * dx - x, ay + t * dy - y));
  }, Infinity);
}
