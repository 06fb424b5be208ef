// Nodes of a lattice near a pose.

import type { Lattice } from "./lattice.ts";
import type { Pose } from "./pose.ts";
import type { Node } from "./trace.ts";

/** The node nearest to a pose. */
export function nodeAt(lattice: Lattice, pose: Pose): Node {
  const turn = Math.round((pose.heading * lattice.headings) / (2 * Math.PI));
  const heading = ((turn % lattice.headings) + lattice.headings) % lattice.headings;
  const column = Math.round(pose.x / lattice.cell) + lattice.originColumn;
  const row = Math.round(pose.y / lattice.cell) + lattice.originRow;
  return { heading, bit: row * lattice.stride + column };
}

/** Share of a heading step within which a heading counts as one of the lattice's own. */
const onHeading = 0.1;

/**
 * Nodes from which a pose is reached by bending a path a little: within one cell of it, at the headings on both sides
 * of its own, or at its own alone where the lattice has that. (Neighbouring headings would lead off sideways.)
 */
export function nodesAbout(lattice: Lattice, pose: Pose): readonly Node[] {
  const middle = nodeAt(lattice, pose);
  const exact = (pose.heading * lattice.headings) / (2 * Math.PI);
  const beside = Math.abs(exact - Math.round(exact)) < onHeading ? [0] : [0, exact > Math.round(exact) ? 1 : -1];
  const nodes: Node[] = [];
  for (const turn of beside) {
    const heading = (middle.heading + turn + lattice.headings) % lattice.headings;
    for (const up of [0, -1, 1]) {
      for (const along of [0, -1, 1]) nodes.push({ heading, bit: middle.bit + up * lattice.stride + along });
    }
  }
  return nodes;
}
