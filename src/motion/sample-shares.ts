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
  const even = Math.max(1, Math.ceil(Math.abs(state[3]!) / spacing));
  const shares: number[] = [];
  for (let i = 1; i <= even; i++) shares.push(i / even);
  const { juts, checked } = look.walls;
  const c = Math.cos(state[2]!);
  const s = Math.sin(state[2]!);
  for (const i of look.near) {
    if (juts[i] === 0) continue;
    const dx = checked.boundary.ax[i]! - state[0]!;
    const dy = checked.boundary.ay[i]! - state[1]!;
    const qx = c * dx + s * dy;
    const qy = c * dy - s * dx;
    for (const corner of checked.corners) {
      const share = passingShare(qx, qy, corner, state);
      if (share > 0 && share < 1) shares.push(share);
    }
  }
  return shares;
}

/** Share at which a corner has the same bearing from the turning centre as a vertex (both in the start's frame). */
function passingShare(vertexX: number, vertexY: number, corner: Point, state: ArcState): number {
  const length = state[3]!;
  const curvature = state[4]!;
  if (Math.abs(curvature) < 1e-3) {
    return Math.abs(vertexY - corner[1]) < closePass ? (vertexX - corner[0]) / length : -1;
  }
  const centre = 1 / curvature;
  const vertexRadius = Math.sqrt(vertexX ** 2 + (vertexY - centre) ** 2);
  if (Math.abs(vertexRadius - Math.sqrt(corner[0] ** 2 + (corner[1] - centre) ** 2)) > closePass) return -1;
  // The vehicle turns by `curvature * length`; the corner's bearing turns with it.
  const gap = Math.atan2(vertexY - centre, vertexX) - Math.atan2(corner[1] - centre, corner[0]);
  const turn = curvature * length;
  const wrapped = gap - 2 * Math.PI * Math.floor(gap / (2 * Math.PI));
  return turn > 0 ? wrapped / turn : (wrapped - 2 * Math.PI) / turn;
}
