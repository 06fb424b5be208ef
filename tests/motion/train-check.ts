// A train driven in small steps by a second way: Runge and Kutta's rule for the trailer, no closed form, corners tested one by
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

/** Drives arcs over a ground of one ring and its obstacles, with both bodies grown by the margin, and every tyre as it is. */
export function trainDriven(question: TrainQuestion, path: readonly Arc[]): TrainDriven {
  const { vehicle, trailer, margin } = question;
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const { clear, running } = question;
  const tyres = running === clear ? [] : wheelsOf(question);
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
      // Fourth order: in reverse an error grows by e for every length of the drawbar, a millionfold on a long way.
      const a = slope(heading, towed);
      const b = slope(middle, towed + (h / 2) * a);
      const c = slope(middle, towed + (h / 2) * b);
      const d = slope(heading + arc.curvature * h, towed + h * c);
      towed += (h / 6) * (a + 2 * b + 2 * c + d);
      x += h * Math.cos(middle);
      y += h * Math.sin(middle);
      heading += arc.curvature * h;
      const angle = Math.abs(heading - towed);
      seen.largest = Math.max(seen.largest, angle);
      if (h < 0) seen.largestReverse = Math.max(seen.largestReverse, angle);
      const hitch: Place = [x - S * Math.cos(heading), y - S * Math.sin(heading)];
      const axle: Place = [hitch[0] - T * Math.cos(towed), hitch[1] - T * Math.sin(towed)];
      const bodies = [box([x, y], heading, grown(ahead, margin)), box(axle, towed, grown(behind, margin))];
      const wheels = tyres.map(({ on, patch }) =>
        on === "towing" ? box([x, y], heading, patch) : box(axle, towed, patch),
      );
      const outside = Math.max(
        ...bodies.map((body) => outsideGround(clear, body)),
        ...wheels.map((wheel) => outsideGround(running, wheel)),
      );
      seen.worst = Math.max(seen.worst, outside);
    }
  }
  return { ...seen, end: { x, y, heading, hitch: heading - towed } };
}

type Extent = readonly [back: number, front: number, half: number];

/** Strips across the axles, out to the tyres' outer faces: both tyres of an axle and what is between them. */
function wheelsOf({ vehicle, trailer }: TrainQuestion): readonly { on: "towing" | "towed"; patch: Extent }[] {
  const across = (at: number, width: number): Extent => [at - 0.1, at + 0.1, width / 2];
  return [
    { on: "towing", patch: across(0, vehicle.widthOverTyres) },
    { on: "towing", patch: across(vehicle.wheelbase, vehicle.widthOverTyres) },
    { on: "towed", patch: across(0, trailer.widthOverTyres) },
  ];
}

const grown = ([back, front, half]: Extent, by: number): Extent => [back - by, front + by, half + by];

function box([x, y]: Place, heading: number, [back, front, half]: Extent): Ring {
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const at = (u: number, v: number): Place => [x + c * u - s * v, y + s * u + c * v];
  return [at(back, -half), at(front, -half), at(front, half), at(back, half)];
}

function outsideGround({ rings, obstacles = [] }: TrainQuestion["clear"], body: Ring): number {
  const beyond = outsideBy(rings[0] as Ring, body);
  return Math.max(beyond, ...obstacles.map((one) => overlapWith(one as Ring, body)));
}

/** How far a corner of one lies within the other, m: 0 where they keep apart. */
function overlapWith(obstacle: Ring, body: Ring): number {
  const within = (one: Ring, other: Ring): readonly number[] =>
    one.filter((corner) => inside(other, corner)).map((corner) => edgeDistance(other, corner));
  return Math.max(0, ...within(body, obstacle), ...within(obstacle, body));
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
