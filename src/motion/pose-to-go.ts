// How far it is to the end from any pose, roughly: shortest ways of one body, turned only as sharply as it can be, over
// a coarse grid of poses. It guides a search and decides nothing.

import { newOpenList, pop, push } from "./open-list.ts";
import { poseAfter, wrapAngle } from "./pose.ts";
import type { Pose } from "./pose.ts";
import type { Box } from "./lattice.ts";
import { fieldError, roomOfProbe } from "./room-field.ts";
import type { Probe } from "./room-field.ts";

/** A body whose ways are sought, and where they end. */
export interface Guided {
  readonly probes: readonly Probe[];
  readonly box: Box;
  readonly radius: number;
  readonly end: Pose;
}

/** Metres to go from a pose. */
export type PoseToGo = (pose: Pose) => number;

const cell = 0.6;
const headings = 32;
const step = 1.1;
const locks = [0, 1, -1, 0.5, -0.5] as const;
/** A change of direction counts as so many metres; a pose from which no way was found as so many. */
const changeCost = 6;
const far = 150;

/** Ways from the end outwards, in both gears: what can be driven can be driven back. */
export function poseToGo(guided: Guided): PoseToGo {
  const { box } = guided;
  const columns = Math.max(1, Math.ceil((box.right - box.left) / cell));
  const rows = Math.max(1, Math.ceil((box.high - box.low) / cell));
  const cellOf = (pose: Pose, gear: number): number => {
    const column = Math.floor((pose.x - box.left) / cell);
    const row = Math.floor((pose.y - box.low) / cell);
    if (column < 0 || row < 0 || column >= columns || row >= rows) return -1;
    const turned = Math.floor(((wrapAngle(pose.heading) + Math.PI) / (2 * Math.PI)) * headings) % headings;
    return ((row * columns + column) * headings + turned) * 2 + gear;
  };
  const costs = new Float64Array(columns * rows * headings * 2).fill(far);
  spread(guided, costs, cellOf);
  return (pose) => {
    let least = far;
    for (const turn of [0, -1, 1]) {
      const at = cellOf({ ...pose, heading: pose.heading + (turn * 2 * Math.PI) / headings }, 0);
      if (at >= 0) least = Math.min(least, costs[at]!, costs[at + 1]!);
    }
    return least;
  };
}

function spread(guided: Guided, costs: Float64Array, cellOf: (pose: Pose, gear: number) => number): void {
  const poses: Pose[] = [guided.end, guided.end];
  const gears = [0, 1];
  const reached = [0, 0];
  const open = newOpenList();
  push(open, 0, 0);
  push(open, 0, 1);
  for (let at = pop(open); at !== undefined; at = pop(open)) {
    if (reached[at]! > costs[cellOf(poses[at]!, gears[at]!)]!) continue;
    for (let gear = 0; gear < 2; gear++) {
      const cost = reached[at]! + step + (gear === gears[at] ? 0 : changeCost);
      for (const lock of locks) {
        const pose = poseAfter(poses[at]!, { curvature: lock / guided.radius, length: gear === 0 ? step : -step });
        const key = cellOf(pose, gear);
        if (key < 0 || cost >= costs[key]! - 1e-3) continue;
        if (guided.probes.some((probe) => roomOfProbe(probe, pose) < probe.within - fieldError)) continue;
        costs[key] = cost;
        push(open, cost, poses.length);
        poses.push(pose);
        gears.push(gear);
        reached.push(cost);
      }
    }
  }
}
