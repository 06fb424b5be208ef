// A way over the lattice as arcs and knots in metres, with headings counted on through full turns.

import type { Lattice } from "./lattice.ts";
import type { LatticeWay } from "./meeting.ts";
import type { Arc, Pose } from "./pose.ts";
import type { RoughPath } from "./refine.ts";
import type { Node, Run } from "./trace.ts";

/** A run in the order in which it is driven. */
interface Leg {
  readonly run: Run;
  readonly gear: 1 | -1;
  readonly steer: -1 | 0 | 1;
  /** Where it ends, as driven. */
  readonly to: Node;
}

/** Arcs and knots of a way, from the origin to `end` (whose heading is taken the nearest way round). */
export function roughPathOf(way: LatticeWay, lattice: Lattice, radius: number, end: Pose): RoughPath {
  const legs = [...way.towards.map(forwards), ...way.onwards.toReversed().map(backwards)];
  const arcs: Arc[] = [];
  const knots: Pose[] = [{ x: 0, y: 0, heading: 0 }];
  const turn = (2 * Math.PI) / lattice.headings;
  let heading = 0;
  for (const { run, gear, steer, to } of legs) {
    const length = steer === 0 ? between(lattice, run) : radius * turn * run.steps;
    arcs.push({ curvature: steer / radius, length: gear * length });
    heading += steer * gear * turn * run.steps;
    knots.push({ ...placeOf(lattice, to), heading });
  }
  const turns = Math.round((heading - end.heading) / (2 * Math.PI));
  if (arcs.length > 0) knots[knots.length - 1] = { x: end.x, y: end.y, heading: end.heading + 2 * Math.PI * turns };
  return { arcs, gears: legs.map((leg) => leg.gear), knots };
}

function forwards(run: Run): Leg {
  return { run, gear: run.motion.gear, steer: run.motion.steer, to: run.to };
}

function backwards(run: Run): Leg {
  return { run, gear: run.motion.gear === 1 ? -1 : 1, steer: run.motion.steer, to: run.from };
}

/** Distance between the ends of a run, m. */
function between(lattice: Lattice, run: Run): number {
  const from = placeOf(lattice, run.from);
  const to = placeOf(lattice, run.to);
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** Place of a node in metres from the lattice's origin. */
export function placeOf(lattice: Lattice, node: Node): { readonly x: number; readonly y: number } {
  const row = Math.floor(node.bit / lattice.stride);
  const column = node.bit - row * lattice.stride;
  return { x: (column - lattice.originColumn) * lattice.cell, y: (row - lattice.originRow) * lattice.cell };
}
