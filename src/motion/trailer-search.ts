// The search for a way for a vehicle with its trailer: best first over poses and hitch angles. Every edge is an exact
// arc that has passed the sweep, so what is found needs only to be joined to its end.

import type { Checked } from "./checked.ts";
import type { Boundary } from "./ground.ts";
import type { Box } from "./lattice.ts";
import { newOpenList, pop, push } from "./open-list.ts";
import type { OpenList } from "./open-list.ts";
import { wrapAngle } from "./pose.ts";
import type { Arc, Gear, Pose } from "./pose.ts";
import { poseToGo } from "./pose-to-go.ts";
import type { PoseToGo } from "./pose-to-go.ts";
import { fieldError, probesOf, roomOfProbe } from "./room-field.ts";
import type { Probe, RoomField } from "./room-field.ts";
import { jackKnifeAngle, trailerPose, trainAfter } from "./trailer-pose.ts";
import type { Trailer, TrainPose } from "./trailer-pose.ts";
import { joinToEnd } from "./trailer-join.ts";
import { largestAngleOn, towedAlong, trainDrives, trainDrivesAll } from "./trailer-sweep.ts";
import type { AngleLimits, CheckedTrain } from "./trailer-sweep.ts";

/** A search in the frame of its start. */
export interface TrainProblem {
  readonly train: CheckedTrain;
  readonly start: TrainPose;
  readonly end: Pose;
  readonly firstGear: Gear;
  readonly lastGear: Gear;
  readonly mostChanges: number;
  /** Smallest radius of the towing vehicle's rear axle, m. */
  readonly radius: number;
  readonly limits: AngleLimits;
  readonly box: Box;
  /** Poses that are looked at before it gives up. */
  readonly mostLooks: number;
}

/** How finely a search steps, and which poses are alike to it: m, m, rad, rad of hitch angle. */
export interface Grain {
  readonly step: number;
  readonly place: number;
  readonly heading: number;
  readonly hitch: number;
  /** How many times over the way still to go counts against the way come. */
  readonly greed: number;
}

const wide = { step: 0.9, place: 0.7, heading: Math.PI / 20, hitch: Math.PI / 16 };

/** Tries that go far, and one that goes into narrow places. */
export const grains: readonly Grain[] = [
  { ...wide, greed: 2 },
  { step: 0.6, place: 0.3, heading: Math.PI / 36, hitch: Math.PI / 30, greed: 2 },
  { ...wide, greed: 5 },
];

/** Curvatures that are tried, as parts of full lock. */
const locks = [0, 1, -1, 0.67, -0.67, 0.33, -0.33] as const;
/** A change of direction counts as so many metres. */
const changeCost = 8;
/** How much room beside the trailer the search keeps, m; the last word is the sweep's. */
const gap = 0.01;
/** Hitch angle that guides how sharply a trailer is led, rad. */
const usualAngle = 0.7;
const usualShare = 1;
/** Shots at the end: how far off it may lie, m and rad; how many arcs they have; and how often far ones are tried. */
const shots = { least: 1, close: 6, most: 25, turn: 1, arcs: 5, every: 2 };

interface Nodes {
  readonly poses: TrainPose[];
  readonly arcs: (Arc | null)[];
  readonly parents: number[];
  readonly costs: number[];
  readonly changes: number[];
}

interface Work {
  readonly problem: TrainProblem;
  readonly nodes: Nodes;
  readonly open: OpenList;
  readonly best: Map<number, number>;
  readonly towing: Body;
  readonly towed: Body;
  readonly grain: Grain;
}

/** One of the two bodies: its quick looks, and how far it has to go. */
interface Body {
  readonly probes: readonly Probe[];
  readonly toGo: PoseToGo;
}

/** The first way that is found, or null. */
export function searchTrain(problem: TrainProblem, grain: Grain): readonly Arc[] | null {
  const work = begun(problem, grain);
  for (let looks = 0; looks < problem.mostLooks; looks++) {
    const at = pop(work.open);
    if (at === undefined) return null;
    const shot = shotFrom(work, at, looks);
    if (shot) return [...arcsTo(work.nodes, at), ...shot];
    expand(work, at);
  }
  return null;
}

/** From a pose straight for the end in the last gear, where that is ahead and the changes allow it. */
function shotFrom({ problem, nodes }: Work, at: number, looks: number): readonly Arc[] | null {
  const { train, end, lastGear, limits, radius } = problem;
  const gear = lastGear === "forward" ? 1 : -1;
  const arrived = nodes.arcs[at];
  const turns = arrived ? Math.sign(arrived.length) !== gear : problem.firstGear !== lastGear;
  if (turns && (!arrived || nodes.changes[at]! >= problem.mostChanges)) return null;
  const from = nodes.poses[at]!;
  const [dx, dy] = [end.x - from.x, end.y - from.y];
  const ahead = gear * (dx * Math.cos(from.heading) + dy * Math.sin(from.heading));
  const length = Math.hypot(dx, dy);
  if (ahead < shots.least || length > shots.most || Math.abs(wrapAngle(from.heading - end.heading)) > shots.turn)
    return null;
  if (length > shots.close && looks % shots.every !== 0) return null;
  const straight = { curvature: 0, length: (gear * length) / shots.arcs };
  const arcs = Array.from({ length: shots.arcs }, () => straight);
  const joined = joinToEnd({ trailer: train.trailer, start: from, end, arcs, largestCurvature: 1 / radius });
  return joined && trainDrivesAll(train, from, joined, limits) ? joined : null;
}

function begun(problem: TrainProblem, grain: Grain): Work {
  const { train, box, radius, end } = problem;
  const nodes: Nodes = { poses: [problem.start], arcs: [null], parents: [-1], costs: [0], changes: [0] };
  const open = newOpenList();
  push(open, 0, 0);
  const fields = new Map<Boundary, RoomField>();
  const body = (parts: readonly Checked[], at: Pose, turns: number): Body => {
    const probes = probesOf(parts, box, fields);
    return { probes, toGo: poseToGo({ probes, box, radius: turns, end: at }) };
  };
  const { trailer } = train;
  const turns = trailer.hitchToAxle / Math.tan(Math.min(usualAngle, problem.limits.reverse));
  return {
    problem,
    nodes,
    open,
    grain,
    best: new Map(),
    towing: body(train.towing, end, steadyRadius(trailer, radius, usualShare * problem.limits.forward)),
    towed: body(train.towed, trailerPose(trailer, end, 0), turns),
  };
}

/** Radius from the vehicle's own upwards at which the steady hitch angle stays within a limit (rad), m: roughly. */
function steadyRadius(trailer: Trailer, radius: number, most: number): number {
  let turns = radius;
  while ((jackKnifeAngle(trailer, turns) ?? Infinity) > most && turns < 4 * radius) turns *= 1.05;
  return turns;
}

function expand(work: Work, at: number): void {
  const { problem, nodes } = work;
  const arrived = nodes.arcs[at];
  for (const gear of [1, -1]) {
    const turns = arrived ? Math.sign(arrived.length) !== gear : false;
    if (!arrived && (gear === 1) !== (problem.firstGear === "forward")) continue;
    const changes = nodes.changes[at]! + (turns ? 1 : 0);
    if (!canStillEnd(problem, changes, gear)) continue;
    for (const lock of locks)
      tryEdge(work, at, { arc: { curvature: lock / problem.radius, length: gear * work.grain.step }, changes });
  }
}

/** Whether the last gear can still be had within the changes that are left. */
function canStillEnd({ lastGear, mostChanges }: TrainProblem, changes: number, gear: number): boolean {
  const left = mostChanges - changes;
  return left > 0 || (left === 0 && (gear === 1) === (lastGear === "forward"));
}

function tryEdge(work: Work, at: number, edge: { readonly arc: Arc; readonly changes: number }): void {
  const { problem, nodes } = work;
  const { arc, changes } = edge;
  const from = nodes.poses[at]!;
  const before = nodes.arcs[at];
  const to = trainAfter(problem.train.trailer, from, arc);
  if (!inBox(problem.box, to)) return;
  const turned = changes > nodes.changes[at]! ? changeCost : 0;
  const steered = before ? Math.abs(before.curvature - arc.curvature) * problem.radius * 0.05 : 0;
  const cost = nodes.costs[at]! + work.grain.step + turned + steered;
  const key = cellOf(work.grain, to, arc.length > 0 ? 0 : 1, changes);
  const known = work.best.get(key);
  if (known !== undefined && known <= cost) return;
  if (!canDrive(work, from, arc)) return;
  work.best.set(key, cost);
  const item = nodes.poses.length;
  nodes.poses.push(to);
  nodes.arcs.push(arc);
  nodes.parents.push(at);
  nodes.costs.push(cost);
  nodes.changes.push(changes);
  push(work.open, cost + work.grain.greed * stillToGo(work, to), item);
}

function canDrive(work: Work, from: TrainPose, arc: Arc): boolean {
  const { train, limits } = work.problem;
  const most = arc.length < 0 ? limits.reverse : limits.forward;
  if (largestAngleOn(train.trailer, from.hitchAngle, arc) > most) return false;
  return clearlyFree(work, from, arc) || trainDrives(train, from, arc, { ...limits, gap });
}

function stillToGo({ problem, towing, towed }: Work, at: TrainPose): number {
  const behind = trailerPose(problem.train.trailer, at, at.hitchAngle);
  return Math.max(towing.toGo(at), towed.toGo(behind)) + Math.abs(at.hitchAngle);
}

/** Whether the quick looks alone show that both bodies keep off everything on a step. */
function clearlyFree({ problem, towing, towed }: Work, from: TrainPose, arc: Arc): boolean {
  const { trailer, ...train } = problem.train;
  const half = { curvature: arc.curvature, length: arc.length / 2 };
  const middle = trainAfter(trailer, from, half);
  const swing = Math.hypot(1, arc.curvature * (train.towing[0]?.reach ?? 0)) * Math.abs(half.length);
  const has = (probe: Probe, pose: Pose, by: number) => roomOfProbe(probe, pose) >= probe.covers + by + fieldError;
  if (!towing.probes.every((probe) => has(probe, middle, swing))) return false;
  const behind = trailerPose(trailer, middle, middle.hitchAngle);
  const drawn = train.towed[0] ? towedAlong(trailer, train.towed[0], from, half).travel : 0;
  return towed.probes.every((probe) => has(probe, behind, drawn + gap));
}

function inBox(box: Box, { x, y }: Pose): boolean {
  return x >= box.left && x <= box.right && y >= box.low && y <= box.high;
}

/** One number for the cell of a pose, its gear and its changes. */
function cellOf(cell: Grain, at: TrainPose, gear: number, changes: number): number {
  const parts = [
    Math.floor(at.x / cell.place) + 2048,
    Math.floor(at.y / cell.place) + 2048,
    Math.floor((wrapAngle(at.heading) + Math.PI) / cell.heading),
    Math.floor((at.hitchAngle + Math.PI) / cell.hitch),
  ] as const;
  const place = (parts[0] * 4096 + parts[1]) * 128 + parts[2];
  return ((place * 64 + parts[3]) * 16 + Math.min(15, changes)) * 2 + gear;
}

/** The arcs to an item, steps of one curvature and gear run together. */
function arcsTo(nodes: Nodes, item: number): readonly Arc[] {
  const steps: Arc[] = [];
  for (let at = item; at > 0; at = nodes.parents[at]!) steps.push(nodes.arcs[at]!);
  const arcs: Arc[] = [];
  for (const arc of steps.reverse()) {
    const last = arcs.at(-1);
    const goesOn = last && last.curvature === arc.curvature && Math.sign(last.length) === Math.sign(arc.length);
    if (goesOn) arcs[arcs.length - 1] = { curvature: arc.curvature, length: last.length + arc.length };
    else arcs.push(arc);
  }
  return arcs;
}
