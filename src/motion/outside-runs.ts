// Which columns of each row of a lattice lie off a ground, by parity.

import type { Boundary } from "./ground.ts";
import type { Lattice } from "./lattice.ts";

/** Beyond every column. */
const farOut = 1 << 28;

/** The run of a row that is off the ground from end to end. */
export const everywhere: Int32Array = Int32Array.of(-farOut, farOut);

/**
 * For each row pairs of first and last column that are surely off the ground: off it half a cell above and below the
 * row, and a cell in from the crossings. Columns count on beyond both ends of the lattice.
 */
export function outsideRuns(lattice: Lattice, boundary: Boundary): readonly Int32Array[] {
  return Array.from({ length: lattice.rows }, (_, row) => {
    const y = (row - lattice.originRow) * lattice.cell;
    const above = gapsAt(boundary, y + lattice.cell / 2);
    const below = gapsAt(boundary, y - lattice.cell / 2);
    const runs: number[] = [];
    for (const [from, to] of common(above, below)) {
      const first = from === -Infinity ? -farOut : Math.ceil(from / lattice.cell) + lattice.originColumn + 1;
      const last = to === Infinity ? farOut : Math.floor(to / lattice.cell) + lattice.originColumn - 1;
      if (first <= last) runs.push(first, last);
    }
    return Int32Array.from(runs);
  });
}

type Span = readonly [number, number];

/** Stretches of a level line that are off the ground: outside the outline, or in an obstacle. */
function gapsAt(boundary: Boundary, y: number): readonly Span[] {
  const { ringStarts, outlineRings } = boundary;
  const outline = crossings(boundary, [0, ringStarts[outlineRings]!], y);
  const gaps: Span[] = [];
  for (let i = 0; i <= outline.length; i += 2) gaps.push([outline[i - 1] ?? -Infinity, outline[i] ?? Infinity]);
  for (let ring = outlineRings; ring + 1 < ringStarts.length; ring++) {
    const across = crossings(boundary, [ringStarts[ring]!, ringStarts[ring + 1]!], y);
    for (let i = 0; i + 1 < across.length; i += 2) gaps.push([across[i]!, across[i + 1]!]);
  }
  return gaps;
}

function crossings(boundary: Boundary, edges: Span, y: number): readonly number[] {
  const { ax, ay, bx, by } = boundary;
  const found: number[] = [];
  for (let i = edges[0]; i < edges[1]; i++) {
    if (ay[i]! > y === by[i]! > y) continue;
    found.push(ax[i]! + ((y - ay[i]!) / (by[i]! - ay[i]!)) * (bx[i]! - ax[i]!));
  }
  return found.sort((a, b) => a - b);
}

/** Overlaps of any stretch of one list with any of the other. */
function common(a: readonly Span[], b: readonly Span[]): readonly Span[] {
  const spans: Span[] = [];
  for (const one of a) {
    for (const other of b) {
      const from = Math.max(one[0], other[0]);
      const to = Math.min(one[1], other[1]);
      if (from < to) spans.push([from, to]);
    }
  }
  return spans;
}
