// Envelopes made ready for exact tests, and the paths of their corners and of the ground's vertices on one arc.

import type { Point } from "../model/reading.ts";
import type { PointPath } from "./arc-segment.ts";
import { grown } from "./envelope.ts";
import type { Envelope } from "./envelope.ts";
import { boundaryOf } from "./ground.ts";
import type { Boundary } from "./ground.ts";
import { poseAfter, straightCurvature } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";

/** Overlap below this (m) is contact, not a violation: rounding of coordinates must not fail a vehicle that just fits. */
export const contactTolerance = 1e-6;

/** An envelope with its boundary, ready for many tests. */
export interface Checked {
  readonly envelope: Envelope;
  readonly boundary: Boundary;
  /** Sides of the envelope less the contact tolerance: back, front, right, left. */
  readonly rectangle: Float64Array;
  readonly corners: readonly Point[];
  /** Farthest corner from the rear-axle midpoint. */
  readonly reach: number;
}

/** Prepares envelopes; those on the same ground share its boundary. */
export function prepareEnvelopes(envelopes: readonly Envelope[]): readonly Checked[] {
  const boundaries = new Map<Envelope["ground"], Boundary>();
  return envelopes.map((envelope) => {
    const boundary = boundaries.get(envelope.ground) ?? boundaryOf(envelope.ground);
    boundaries.set(envelope.ground, boundary);
    const { back, front, right, left } = grown(envelope, -contactTolerance);
    const reach = Math.hypot(Math.max(Math.abs(back), Math.abs(front)), Math.max(Math.abs(right), Math.abs(left)));
    const rectangle = Float64Array.of(back, front, right, left);
    return { envelope, boundary, rectangle, corners: cornersOf(rectangle), reach };
  });
}

/** An arc as it is driven: straight where it is flatter than can be told apart. */
export function asDriven(arc: Arc): Arc {
  return Math.abs(arc.curvature) < straightCurvature ? { curvature: 0, length: arc.length } : arc;
}

export type Four = [number, number, number, number];

/** Edges that the envelope could reach on an arc: those near the circle round the arc's middle. */
export function nearEdges(checked: Checked, pose: Pose, arc: Arc, within = 0): readonly number[] {
  const middle = poseAfter(pose, { curvature: arc.curvature, length: arc.length / 2 });
  return edgesAbout(checked, middle, Math.abs(arc.length) / 2 + within);
}

/** Edges that come within `within` (m) of the envelope, whatever its heading, at a place. */
export function edgesAbout({ boundary, reach }: Checked, middle: Pose, within: number): readonly number[] {
  const radius = reach + within + 1e-3;
  const near: number[] = [];
  for (let i = 0; i < boundary.count; i++) {
    const ax = boundary.ax[i]! - middle.x;
    const ay = boundary.ay[i]! - middle.y;
    const dx = boundary.bx[i]! - boundary.ax[i]!;
    const dy = boundary.by[i]! - boundary.ay[i]!;
    const t = Math.max(0, Math.min(1, -(ax * dx + ay * dy) / (dx * dx + dy * dy)));
    if ((ax + t * dx) ** 2 + (ay + t * dy) ** 2 <= radius * radius) near.push(i);
  }
  return near;
}

/** Corners of a rectangle (back, front, right, left), counter-clockwise from back right. */
export function cornersOf(rectangle: Float64Array): readonly Point[] {
  const { 0: back, 1: front, 2: right, 3: left } = rectangle as unknown as Four;
  return [
    [back, right],
    [front, right],
    [front, left],
    [back, left],
  ];
}

/** Middle of an envelope, in the vehicle's frame. */
export function middleOf({ rectangle }: Checked): Point {
  const { 0: back, 1: front, 2: right, 3: left } = rectangle as unknown as Four;
  return [(back + front) / 2, (right + left) / 2];
}

/** Fills `path` with that of a corner (vehicle's frame) over an arc, in the plan. */
export function cornerPath(path: PointPath, corner: Point, pose: Pose, arc: Arc): void {
  const c = Math.cos(pose.heading);
  const s = Math.sin(pose.heading);
  path.x = pose.x + c * corner[0] - s * corner[1];
  path.y = pose.y + s * corner[0] + c * corner[1];
  path.turn = arc.curvature * arc.length;
  const straight = path.turn === 0;
  path.centreX = straight ? arc.length * c : pose.x - s / arc.curvature;
  path.centreY = straight ? arc.length * s : pose.y + c / arc.curvature;
}

/** Fills `path` with that of a vertex of the ground over an arc, as seen from the vehicle. */
export function vertexPath(path: PointPath, vertex: Point, pose: Pose, arc: Arc): void {
  const c = Math.cos(pose.heading);
  const s = Math.sin(pose.heading);
  path.x = c * (vertex[0] - pose.x) + s * (vertex[1] - pose.y);
  path.y = c * (vertex[1] - pose.y) - s * (vertex[0] - pose.x);
  path.turn = -arc.curvature * arc.length;
  const straight = path.turn === 0;
  path.centreX = straight ? -arc.length : 0;
  path.centreY = straight ? 0 : 1 / arc.curvature;
}
