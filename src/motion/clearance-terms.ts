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
  findClose(look, pose, c, s);
  if (close.count === 0) return;
  for (const corner of look.walls.checked.corners) {
    at.leverX = c * corner[0] - s * corner[1];
    at.leverY = s * corner[0] + c * corner[1];
    at.x = pose.x + at.leverX;
    at.y = pose.y + at.leverY;
    cornerTerms(terms, look);
  }
  const { juts, checked } = look.walls;
  const { ax, ay } = checked.boundary;
  const { 0: back, 1: front, 2: right, 3: left } = checked.rectangle as unknown as Four;
  for (let k = 0; k < close.count; k++) {
    const i = close.edges[k]!;
    if (juts[i] === 0) continue;
    const dx = ax[i]! - pose.x;
    const dy = ay[i]! - pose.y;
    const qx = c * dx + s * dy;
    const qy = c * dy - s * dx;
    const beyond = Math.max(back - qx, qx - front, right - qy, qy - left);
    if (beyond < look.target && beyond > -deepest) vertexTerm(terms, look, [qx, qy], [c, s]);
  }
}

/** The edges close enough at the pose at hand; room for as many as were ever near. */
const close = { edges: new Int32Array(64), count: 0 };

/** How far off the envelope's circle an edge may lie and still count, m: more than `deepest`, so that an envelope far off its ground is still drawn back. */
const off = 1.5;

/** Picks the edges near the circle round the envelope: only they can touch it, or tell that it is off its ground. */
function findClose({ walls, near }: Look, pose: PoseLike, c: number, s: number): void {
  const { checked, ex, ey, length } = walls;
  const { ax, ay } = checked.boundary;
  const { 0: back, 1: front, 2: right, 3: left } = checked.rectangle as unknown as Four;
  const x = pose.x + (c * (back + front) - s * (right + left)) / 2;
  const y = pose.y + (s * (back + front) + c * (right + left)) / 2;
  const radius = Math.sqrt((front - back) ** 2 + (left - right) ** 2) / 2 + off;
  if (near.length > close.edges.length) close.edges = new Int32Array(2 * near.length);
  close.count = 0;
  for (const i of near) {
    const dx = x - ax[i]!;
    const dy = y - ay[i]!;
    const along = Math.max(0, Math.min(length[i]!, dx * ex[i]! + dy * ey[i]!));
    const awayX = dx - along * ex[i]!;
    const awayY = dy - along * ey[i]!;
    if (awayX * awayX + awayY * awayY > radius * radius) continue;
    close.edges[close.count] = i;
    close.count += 1;
  }
}

/** The corner at hand: its place, and its lever from the rear-axle midpoint. */
const at = { x: 0, y: 0, leverX: 0, leverY: 0 };

function push(terms: Terms, distance: number, dx: number, dy: number, turn: number): void {
  if (terms.count === mostTerms) return;
  terms.distance[terms.count] = distance;
  terms.by[3 * terms.count] = dx;
  terms.by[3 * terms.count + 1] = dy;
  terms.by[3 * terms.count + 2] = turn;
  terms.count += 1;
}

/** Beyond this (m) a corner is not behind a wall but in another part of the ground. */
const deepest = 1.5;

/**
 * A corner on the ground has a term for every wall closer than the target; a corner off it has one, towards the
 * nearest place of the ground. On or off is told by the nearest feature: the side of an edge, or the sort of a vertex.
 */
function cornerTerms(terms: Terms, look: Look): void {
  const { walls, target } = look;
  const { ex, ey, nx, ny, length, juts } = walls;
  const { ax, ay } = walls.checked.boundary;
  const first = terms.count;
  let nearestSquared = Infinity;
  let nearest = -1;
  let nearestAway = 0;
  for (let k = 0; k < close.count; k++) {
    const i = close.edges[k]!;
    const qx = at.x - ax[i]!;
    const qy = at.y - ay[i]!;
    const along = qx * ex[i]! + qy * ey[i]!;
    if (along >= 0 && along <= length[i]!) {
      const away = qx * nx[i]! + qy * ny[i]!;
      if (away >= 0 && away < target) pushCorner(terms, away, nx[i]!, ny[i]!);
      if (away * away < nearestSquared) {
        nearestSquared = away * away;
        nearest = i;
        nearestAway = away;
      }
    }
    const far = qx * qx + qy * qy;
    if (far < nearestSquared) {
      nearestSquared = far;
      nearest = i;
      nearestAway = NaN;
    }
  }
  if (nearest < 0 || nearestAway >= 0 || nearestSquared >= deepest * deepest) return;
  if (nearestAway < 0) {
    terms.count = first;
    pushCorner(terms, nearestAway, nx[nearest]!, ny[nearest]!);
  } else if (juts[nearest] === 0) {
    terms.count = first;
    const far = Math.sqrt(nearestSquared);
    pushCorner(terms, -far, (ax[nearest]! - at.x) / far, (ay[nearest]! - at.y) / far);
  }
}

function pushCorner(terms: Terms, distance: number, nx: number, ny: number): void {
  push(terms, distance, nx, ny, ny * at.leverX - nx * at.leverY);
}

/** A vertex at (qx, qy) in the vehicle's frame against the rectangle; (c, s) is the heading. */
function vertexTerm(terms: Terms, look: Look, q: readonly [number, number], [c, s]: readonly [number, number]): void {
  const { 0: back, 1: front, 2: right, 3: left } = look.walls.checked.rectangle as unknown as Four;
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
