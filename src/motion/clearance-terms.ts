// How far an envelope is from the walls near it at one pose, term by term, with the derivatives by the pose.

import type { Four } from "./checked.ts";
import type { Walls } from "./walls.ts";

/** Distances below the target (m, negative where walls are crossed) and their derivatives by x, y and heading. */
export interface Terms {
  count: number;
  readonly distance: Float64Array;
  /** Three per term. */
  readonly by: Float64Array;
}

const mostTerms = 64;

export function newTerms(): Terms {
  return { count: 0, distance: new Float64Array(mostTerms), by: new Float64Array(3 * mostTerms) };
}

interface PoseLike {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** Where to look: the walls of one envelope, the edges near enough, and the distance below which terms count. */
export interface Look {
  readonly walls: Walls;
  readonly near: readonly number[];
  readonly target: number;
}

/** Collects the terms of one envelope at a pose: corners against walls, jutting vertices against its sides. */
export function collectTerms(terms: Terms, look: Look, pose: PoseLike): void {
  terms.count = 0;
  const c = Math.cos(pose.heading);
  const s = Math.sin(pose.heading);
  for (const [u, v] of look.walls.checked.corners) {
    cornerTerms(terms, look, { x: pose.x, y: pose.y, leverX: c * u - s * v, leverY: s * u + c * v });
  }
  const { juts, checked } = look.walls;
  for (const i of look.near) {
    if (juts[i] === 0) continue;
    const dx = checked.boundary.ax[i]! - pose.x;
    const dy = checked.boundary.ay[i]! - pose.y;
    vertexTerm(terms, look, [c * dx + s * dy, c * dy - s * dx], [c, s]);
  }
}

function push(terms: Terms, distance: number, dx: number, dy: number, turn: number): void {
  if (terms.count === mostTerms) return;
  terms.distance[terms.count] = distance;
  terms.by[3 * terms.count] = dx;
  terms.by[3 * terms.count + 1] = dy;
  terms.by[3 * terms.count + 2] = turn;
  terms.count += 1;
}

interface CornerAt {
  readonly x: number;
  readonly y: number;
  readonly leverX: number;
  readonly leverY: number;
}

/** Beyond this (m) a corner is not behind a wall but in another part of the ground. */
const deepest = 1.5;

/**
 * A corner on the ground has a term for every wall closer than the target; a corner off it has one, towards the
 * nearest place of the ground. On or off is told by the nearest feature: the side of an edge, or the sort of a vertex.
 */
function cornerTerms(terms: Terms, look: Look, corner: CornerAt): void {
  const { walls, near, target } = look;
  const { boundary } = walls.checked;
  const px = corner.x + corner.leverX;
  const py = corner.y + corner.leverY;
  const first = terms.count;
  let nearest = Infinity;
  let on = true;
  let outX = 0;
  let outY = 0;
  for (const i of near) {
    const qx = px - boundary.ax[i]!;
    const qy = py - boundary.ay[i]!;
    const along = qx * walls.ex[i]! + qy * walls.ey[i]!;
    if (along >= 0 && along <= walls.length[i]!) {
      const away = qx * walls.nx[i]! + qy * walls.ny[i]!;
      if (away >= 0 && away < target) pushCorner(terms, away, corner, [walls.nx[i]!, walls.ny[i]!]);
      if (Math.abs(away) < nearest) [nearest, on, outX, outY] = [Math.abs(away), away >= 0, walls.nx[i]!, walls.ny[i]!];
    }
    const far = Math.hypot(qx, qy);
    if (far < nearest) [nearest, on, outX, outY] = [far, walls.juts[i] === 1, -qx / far, -qy / far];
  }
  if (on) return;
  terms.count = first;
  if (nearest < deepest) pushCorner(terms, -nearest, corner, [outX, outY]);
}

function pushCorner(terms: Terms, distance: number, corner: CornerAt, [nx, ny]: readonly [number, number]): void {
  push(terms, distance, nx, ny, ny * corner.leverX - nx * corner.leverY);
}

/** A vertex at (qx, qy) in the vehicle's frame against the rectangle; (c, s) is the heading. */
function vertexTerm(terms: Terms, look: Look, q: readonly [number, number], [c, s]: readonly [number, number]): void {
  const [back, front, right, left] = look.walls.checked.rectangle as unknown as Four;
  const [qx, qy] = q;
  const beyondX = Math.max(back - qx, qx - front);
  const beyondY = Math.max(right - qy, qy - left);
  const toX = qx - front > back - qx ? 1 : -1;
  const toY = qy - left > right - qy ? 1 : -1;
  let distance = Math.max(beyondX, beyondY);
  if (distance >= look.target || distance < -deepest) return;
  let mx = beyondX > beyondY ? toX : 0;
  let my = beyondX > beyondY ? 0 : toY;
  if (beyondX > 0 && beyondY > 0) {
    distance = Math.hypot(beyondX, beyondY);
    if (distance >= look.target) return;
    mx = (toX * beyondX) / distance;
    my = (toY * beyondY) / distance;
  }
  push(terms, distance, -(c * mx - s * my), -(s * mx + c * my), mx * qy - my * qx);
}
