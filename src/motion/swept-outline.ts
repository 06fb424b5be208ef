// The ground that a body covers on a checked path, arc by arc, fine enough to draw; wheel tracks; where it changes gear.

import type { Point } from "../model/reading.ts";
import { asDriven } from "./checked.ts";
import { poseAfter, posesAlong } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import type { VehicleBody } from "./vehicle.ts";

/** What to draw of a path. */
export interface SweptOutline {
  /** One simple closed ring per arc (long arcs in pieces); together they cover what the body covers. */
  readonly rings: readonly (readonly Point[])[];
  /** Middle of each wheel's outer face along the path: front left, front right, rear left, rear right. */
  readonly wheelTracks: readonly (readonly Point[])[];
  /** Outline of the body at the start, at every change of direction, and at the end. */
  readonly stops: readonly { readonly pose: Pose; readonly outline: readonly Point[] }[];
}

/** Largest turn of one ring, rad; beyond it a ring could lap itself. */
const mostTurn = Math.PI / 2;
/** Largest step of bearing of a ring and of wheel tracks, rad, and of straight wheel tracks, m. */
const bearingStep = 0.04;
const trackStep = 0.5;

/** Swept outline of a path, in plan metres. */
export function sweptOutline(vehicle: VehicleBody, start: Pose, arcs: readonly Arc[]): SweptOutline {
  const pieces = arcs.flatMap(inPieces);
  const poses = posesAlong(start, pieces);
  return {
    rings: pieces.map((arc, i) => sweptRing(vehicle, poses[i]!, arc)),
    wheelTracks: wheelTracks(vehicle, start, arcs),
    stops: stopsOf(arcs, posesAlong(start, arcs)).map((pose) => ({ pose, outline: bodyOutline(vehicle, pose) })),
  };
}

/** Corners of the body at a pose: back right, front right, front left, back left. */
export function bodyOutline(vehicle: VehicleBody, pose: Pose): readonly Point[] {
  return bodyCorners(vehicle).map((corner) => placed(corner, pose));
}

function bodyCorners(vehicle: VehicleBody): readonly Point[] {
  const half = vehicle.bodyWidth / 2;
  const front = vehicle.wheelbase + vehicle.frontOverhang;
  return [
    [-vehicle.rearOverhang, -half],
    [front, -half],
    [front, half],
    [-vehicle.rearOverhang, half],
  ];
}

function placed([u, v]: Point, pose: Pose): Point {
  const c = Math.cos(pose.heading);
  const s = Math.sin(pose.heading);
  return [pose.x + c * u - s * v, pose.y + s * u + c * v];
}

function inPieces(given: Arc): readonly Arc[] {
  const arc = asDriven(given);
  const count = Math.max(1, Math.ceil(Math.abs(arc.curvature * arc.length) / mostTurn));
  return Array.from({ length: count }, () => ({ curvature: arc.curvature, length: arc.length / count }));
}

/**
 * Ring of one arc. From the turning centre, which lies outside the body, every ray meets the body in one stretch.
 * While the body turns through an angle, a ray of the plan sees the stretches of a whole range of the body's rays; it
 * is covered from the nearest of their near ends to the farthest of their far ends. Straight: the box of both ends.
 */
function sweptRing(vehicle: VehicleBody, pose: Pose, arc: Arc): readonly Point[] {
  const turned = arc.curvature * arc.length;
  if (Math.abs(turned) < 1e-6) return straightRing(vehicle, pose, arc.length);
  const corners = bodyCorners(vehicle).map(([u, v]): Point => [u, v - 1 / arc.curvature]);
  const bearings = corners.map(([u, v]) => bearingOf(u, v, arc.curvature));
  const first = Math.min(...bearings);
  const last = Math.max(...bearings);
  const from = Math.min(0, turned);
  const to = Math.max(0, turned);
  const stops = [...bearings, 0].flatMap((bearing) => [bearing + from, bearing + to]);
  // Evenly, so that an arc to the left is drawn as one to the right.
  const [begin, range] = [first + from, last + to - (first + from)];
  const count = Math.ceil(range / bearingStep);
  for (let i = 0; i < count; i++) stops.push(begin + (range * i) / count);
  const near: Point[] = [];
  const far: Point[] = [];
  const place = {
    x: pose.x - Math.sin(pose.heading) / arc.curvature,
    y: pose.y + Math.cos(pose.heading) / arc.curvature,
  };
  for (const bearing of stops.sort((a, b) => a - b)) {
    const seen = { low: Math.max(first, bearing - to), high: Math.min(last, bearing - from) };
    if (seen.low > seen.high + 1e-12) continue;
    const [inner, outer] = coveredRange(corners, bearings, seen, arc.curvature);
    const direction = pose.heading + bearing - (Math.PI / 2) * Math.sign(arc.curvature);
    near.push([place.x + inner * Math.cos(direction), place.y + inner * Math.sin(direction)]);
    far.push([place.x + outer * Math.cos(direction), place.y + outer * Math.sin(direction)]);
  }
  return [...far, ...near.reverse()];
}

/** Bearing of a point (from the turning centre, vehicle's frame) counted from the ray through the rear axle. */
function bearingOf(u: number, v: number, curvature: number): number {
  return curvature > 0 ? Math.atan2(u, -v) : -Math.atan2(u, v);
}

/** Nearest and farthest point of the body on its rays low..high. */
function coveredRange(
  corners: readonly Point[],
  bearings: readonly number[],
  seen: { readonly low: number; readonly high: number },
  curvature: number,
): readonly [number, number] {
  const distances: number[] = [];
  const rays = [seen.low, seen.high];
  if (seen.low < 0 && seen.high > 0) rays.push(0);
  for (const ray of rays) distances.push(...alongRay(corners, ray, curvature));
  for (const [i, [u, v]] of corners.entries()) {
    if (bearings[i]! >= seen.low && bearings[i]! <= seen.high) distances.push(Math.hypot(u, v));
  }
  return [Math.min(...distances), Math.max(...distances)];
}

/** Distances from the turning centre at which a ray of the body meets its sides. */
function alongRay(corners: readonly Point[], ray: number, curvature: number): number[] {
  const sign = Math.sign(curvature);
  const dx = sign * Math.sin(ray);
  const dy = -sign * Math.cos(ray);
  const found: number[] = [];
  for (const [i, a] of corners.entries()) {
    const b = corners[(i + 1) % 4]!;
    const [sideA, sideB] = [dx * a[1] - dy * a[0], dx * b[1] - dy * b[0]];
    if (sideA === sideB || sideA * sideB > 1e-12) continue;
    const t = Math.max(0, Math.min(1, sideA / (sideA - sideB)));
    found.push(dx * (a[0] + t * (b[0] - a[0])) + dy * (a[1] + t * (b[1] - a[1])));
  }
  return found;
}

function straightRing(vehicle: VehicleBody, pose: Pose, length: number): readonly Point[] {
  const half = vehicle.bodyWidth / 2;
  const back = Math.min(0, length) - vehicle.rearOverhang;
  const front = Math.max(0, length) + vehicle.wheelbase + vehicle.frontOverhang;
  const corners: readonly Point[] = [
    [back, -half],
    [front, -half],
    [front, half],
    [back, half],
  ];
  return corners.map((corner) => placed(corner, pose));
}

function wheelTracks(vehicle: VehicleBody, start: Pose, arcs: readonly Arc[]): readonly (readonly Point[])[] {
  const half = vehicle.widthOverTyres / 2;
  const poses = finePoses(start, arcs);
  const wheels: readonly Point[] = [
    [vehicle.wheelbase, half],
    [vehicle.wheelbase, -half],
    [0, half],
    [0, -half],
  ];
  return wheels.map((wheel) => poses.map((pose) => placed(wheel, pose)));
}

function finePoses(start: Pose, arcs: readonly Arc[]): readonly Pose[] {
  const poses: Pose[] = [start];
  let at = start;
  for (const arc of arcs) {
    const turned = Math.abs(arc.curvature * arc.length);
    const count = Math.max(1, Math.ceil(turned / bearingStep), Math.ceil(Math.abs(arc.length) / trackStep));
    for (let i = 1; i <= count; i++) {
      poses.push(poseAfter(at, { curvature: arc.curvature, length: (arc.length * i) / count }));
    }
    at = poseAfter(at, arc);
  }
  return poses;
}

function stopsOf(arcs: readonly Arc[], poses: readonly Pose[]): readonly Pose[] {
  const stops = [poses[0]!];
  for (let i = 1; i < arcs.length; i++) {
    if (Math.sign(arcs[i]!.length) !== Math.sign(arcs[i - 1]!.length)) stops.push(poses[i]!);
  }
  stops.push(poses.at(-1)!);
  return stops;
}
