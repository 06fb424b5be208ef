// Ground on which a train turns round: the path that was found, driven in steps of a centimetre by its equation of motion.

import { describe, expect, it } from "vitest";
import type { RoomLayout } from "../../src/motion/room-layout.ts";
import { smallestTrainTurn, trainTurnOn, type TrainTurn } from "../../src/motion/room-train-turn.ts";
import type { Trailer } from "../../src/motion/trailer-pose.ts";
import { pickup } from "./train-scenes.ts";

type Point = readonly [number, number];

/** Invented, near to a plant trailer. */
const trailer: Trailer = {
  hitchBehindAxle: 1.2,
  hitchToAxle: 3.6,
  hitchToFront: 1.2,
  rearOverhang: 1.2,
  bodyWidth: 2.1,
  widthOverTyres: 2.1,
  greatestAngle: 1.05,
};
const clearance = 0.3;
const turner = { vehicle: pickup, trailer, clearance, changes: 2 };
const layout: RoomLayout = { form: "rectangle", entry: "middle", track: 3.6, splay: 0 };

function toSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

function lies([x, y]: Point, ring: readonly Point[]): boolean {
  let inside = false;
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length] ?? [ax, ay];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

/** Outline of a body, a point every 20 cm or so. */
function outline(at: { x: number; y: number; heading: number }, back: number, front: number, half: number): Point[] {
  const [c, s] = [Math.cos(at.heading), Math.sin(at.heading)];
  const points: Point[] = [];
  for (let i = 0; i <= 30; i++) {
    const u = back + ((front - back) * i) / 30;
    for (const v of [half, -half]) points.push([at.x + c * u - s * v, at.y + s * u + c * v]);
  }
  return points;
}

/** Least distance to the edge, below 0 off the ground, and the largest angle between the two; by Euler's steps of 2 mm. */
function driven({ question, path }: TrainTurn) {
  const ring = question.clear.rings[0] ?? [];
  let [least, largest, run] = [Infinity, 0, 0];
  let { x, y, heading } = question.start;
  let towed = heading;
  const step = 0.002;
  for (const arc of path) {
    const count = Math.ceil(Math.abs(arc.length) / step);
    const ds = arc.length / count;
    for (let i = 0; i < count; i++) {
      const middle = heading + (arc.curvature * ds) / 2;
      x += ds * Math.cos(middle);
      y += ds * Math.sin(middle);
      heading += arc.curvature * ds;
      const fold = heading - towed;
      towed += (ds * (Math.sin(fold) - trailer.hitchBehindAxle * arc.curvature * Math.cos(fold))) / trailer.hitchToAxle;
      largest = Math.max(largest, Math.abs(heading - towed));
      if (run++ % 25 !== 0) continue;
      const hitch: Point = [
        x - trailer.hitchBehindAxle * Math.cos(heading),
        y - trailer.hitchBehindAxle * Math.sin(heading),
      ];
      const axle = {
        x: hitch[0] - trailer.hitchToAxle * Math.cos(towed),
        y: hitch[1] - trailer.hitchToAxle * Math.sin(towed),
        heading: towed,
      };
      const points = [
        ...outline(
          { x, y, heading },
          -pickup.rearOverhang,
          pickup.wheelbase + pickup.frontOverhang,
          pickup.bodyWidth / 2,
        ),
        ...outline(axle, -trailer.rearOverhang, trailer.hitchToAxle - trailer.hitchToFront, trailer.bodyWidth / 2),
      ];
      for (const point of points) {
        const sign = lies(point, ring) ? 1 : -1;
        for (const [k, from] of ring.entries())
          least = Math.min(least, sign * toSegment(point, from, ring[(k + 1) % ring.length] ?? from));
      }
    }
  }
  return { least, largest, end: { x, y, heading }, fold: Math.abs(heading - towed) };
}

describe("a train that turns round on a rectangle", () => {
  const turn = smallestTrainTurn(layout, turner, { unknown: "deep", kept: 24, from: 3, to: 24 });
  it("finds one, no deeper than the half circle without reversing wants", () => {
    // The steady circle of both bodies, twice its outer radius of 7.2 m, and the clearances: some 15 m (COMPUTED).
    expect(turn?.size.deep ?? Infinity).toBeLessThan(15.1);
  });
  it("keeps the clearance with both bodies and the angle, by another way of reckoning (1 cm for its steps)", () => {
    if (!turn) throw new Error("no turn");
    const { least, largest, end, fold } = driven(turn);
    expect(least).toBeGreaterThan(clearance - 0.01);
    expect(largest).toBeLessThan(trailer.greatestAngle + 0.01);
    expect(Math.hypot(end.x - turn.question.goal.x, end.y - turn.question.goal.y)).toBeLessThan(0.05);
    expect(fold).toBeLessThan(0.1);
  });
  it("is still found on the ground it was found on, and on none that is narrower than the two", () => {
    if (!turn) throw new Error("no turn");
    expect(trainTurnOn(layout, turn.size, turner)).not.toBeNull();
    expect(trainTurnOn(layout, { long: 24, deep: 2 }, turner)).toBeNull();
  });
});
