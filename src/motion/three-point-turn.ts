// The narrowest road on which a vehicle turns round in three full-lock arcs.

import { poseAfter } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import { tyrePatchLength } from "./vehicle.ts";
import type { Vehicle } from "./vehicle.ts";

/** A three-point turn on a road between two parallel walls. */
export interface ThreePointTurn {
  /** Between the walls, m, no clearance. */
  readonly width: number;
  /** Along the road, m: what the body covers from full lock on to full lock off. */
  readonly length: number;
  /** Headings at the two changes of direction, rad. */
  readonly splits: readonly [number, number];
}

/** Grid of split headings, rad. The width changes by less than 3 mm when it is halved. */
const headingStep = 0.01;

/**
 * Narrowest road (m, between walls) for a turn in three moves: forward at full lock one way, back at full lock the
 * other way, forward again, starting and ending parallel to the road. Best pair of split headings on a grid; the
 * extent of every arc is exact (end poses and the points where a corner runs parallel to the walls). COMPUTED. A first
 * swing the other way gains no more than 2 cm. `tyres` confines only the tyres' patches on the ground.
 */
export function threePointTurn(vehicle: Vehicle, confined: "body" | "tyres" = "body"): ThreePointTurn {
  const corners = confined === "body" ? bodyCorners(vehicle) : tyreCorners(vehicle);
  let best: ThreePointTurn = { width: Infinity, length: Infinity, splits: [0, 0] };
  for (let a = headingStep; a < Math.PI; a += headingStep) {
    for (let b = a; b < Math.PI; b += headingStep) {
      const [length, width] = extentOf(corners, turnArcs(vehicle.rearAxleRadius, a, b));
      if (width < best.width) best = { width, length, splits: [a, b] };
    }
  }
  return best;
}

function turnArcs(r: number, a: number, b: number): readonly Arc[] {
  return [
    { curvature: 1 / r, length: r * a },
    { curvature: -1 / r, length: -r * (b - a) },
    { curvature: 1 / r, length: r * (Math.PI - b) },
  ];
}

type Corner = readonly [number, number];

function bodyCorners(vehicle: Vehicle): readonly Corner[] {
  const front = vehicle.wheelbase + vehicle.frontOverhang;
  return cornersOf(front, -vehicle.rearOverhang, vehicle.bodyWidth / 2);
}

function tyreCorners(vehicle: Vehicle): readonly Corner[] {
  const half = tyrePatchLength / 2;
  return cornersOf(vehicle.wheelbase + half, -half, vehicle.widthOverTyres / 2);
}

function cornersOf(front: number, back: number, half: number): readonly Corner[] {
  return [
    [front, half],
    [front, -half],
    [back, half],
    [back, -half],
  ];
}

/** Extent of all corners over a path from the origin along x: [along, across]. */
function extentOf(corners: readonly Corner[], arcs: readonly Arc[]): readonly [number, number] {
  const box = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity };
  for (const corner of corners) {
    let pose: Pose = { x: 0, y: 0, heading: 0 };
    for (const arc of arcs) {
      const end = poseAfter(pose, arc);
      for (const heading of criticalHeadings(corner, arc.curvature, pose.heading, end.heading)) {
        const at = poseAfter(pose, { curvature: arc.curvature, length: (heading - pose.heading) / arc.curvature });
        const x = at.x + corner[0] * Math.cos(heading) - corner[1] * Math.sin(heading);
        const y = at.y + corner[0] * Math.sin(heading) + corner[1] * Math.cos(heading);
        box.left = Math.min(box.left, x);
        box.right = Math.max(box.right, x);
        box.low = Math.min(box.low, y);
        box.high = Math.max(box.high, y);
      }
      pose = end;
    }
  }
  return [box.right - box.left, box.high - box.low];
}

/** Headings at which a corner's circle about the turning centre has an extreme in x or y, with both ends. */
function criticalHeadings(corner: Corner, curvature: number, from: number, to: number): number[] {
  const headings = [from, to];
  const bearing = Math.atan2(corner[1] - 1 / curvature, corner[0]);
  const first = Math.ceil((from + bearing) / (Math.PI / 2));
  for (let quarter = first; quarter * (Math.PI / 2) <= to + bearing; quarter++) {
    headings.push(quarter * (Math.PI / 2) - bearing);
  }
  return headings;
}
