// Where along an arc clearance is looked at during refinement: evenly, and just where a corner passes a jutting vertex.

import type { Point } from "../model/reading.ts";
import type { ArcState } from "./arc-derivatives.ts";
import type { Walls } from "./walls.ts";

/** Distance between even samples, m. */
const spacing = 0.3;

/** Corners that pass a vertex farther off than this (m) need no sample of their own. */
const closePass = 0.3;

/** Shares (0..1] of an arc to look at. */
export function sampleShares(state: ArcState, look: { walls: Walls; near: readonly number[] }): number[] {
  const length = state[3]!;
  const even = Math.max(1, Math.ceil(Math.abs(length) / spacing));
  const shares = Array.from({ length: even }, (_, i) => (i + 1) / even);
  const { juts, checked } = look.walls;
  for (const i of look.near) {
    if (juts[i] === 0) continue;
    const dx = checked.boundary.ax[i]! - state[0]!;
    const dy = checked.boundary.ay[i]! - state[1]!;
    const c = Math.cos(state[2]!);
    const s = Math.sin(state[2]!);
    const seen: Point = [c * dx + s * dy, c * dy - s * dx];
    for (const corner of checked.corners) {
      const share = passingShare(seen, corner, state);
      if (share > 0 && share < 1) shares.push(share);
    }
  }
  return shares;
}

/** Share at which a corner has the same bearing from the turning centre as a vertex (both in the start's frame). */
function passingShare(vertex: Point, corner: Point, state: ArcState): number {
  const length = state[3]!;
  const curvature = state[4]!;
  if (Math.abs(curvature) < 1e-3) {
    return Math.abs(vertex[1] - corner[1]) < closePass ? (vertex[0] - corner[0]) / length : -1;
  }
  const centre = 1 / curvature;
  const vertexRadius = Math.hypot(vertex[0], vertex[1] - centre);
  if (Math.abs(vertexRadius - Math.hypot(corner[0], corner[1] - centre)) > closePass) return -1;
  // The vehicle turns by `curvature * length`; the corner's bearing turns with it.
  const gap = Math.atan2(vertex[1] - centre, vertex[0]) - Math.atan2(corner[1] - centre, corner[0]);
  const turn = curvature * length;
  const wrapped = gap - 2 * Math.PI * Math.floor(gap / (2 * Math.PI));
  return turn > 0 ? wrapped / turn : (wrapped - 2 * Math.PI) / turn;
}
