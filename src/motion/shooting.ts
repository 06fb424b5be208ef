// A path as multiple shooting sees it: arcs with knots between them that need not join yet, and what is wrong with it.

import { fillArcPoint, newArcPoint } from "./arc-derivatives.ts";
import type { ArcState } from "./arc-derivatives.ts";
import { addResidual } from "./banded.ts";
import type { Banded } from "./banded.ts";
import { nearEdges } from "./checked.ts";
import { collectTerms, newTerms } from "./clearance-terms.ts";
import { sampleShares } from "./sample-shares.ts";
import type { Walls } from "./walls.ts";

/**
 * Unknowns, five per arc: length, curvature, then x, y, heading of the knot after it; the last knot is the fixed end.
 * The knot before arc i and the arc and the knot after it are eight neighbours, so the normal equations are banded.
 */
export interface Shooting {
  readonly arcs: number;
  readonly unknowns: Float64Array;
  /** 1 or -1 per arc. */
  readonly gears: Int8Array;
  readonly start: readonly [number, number, number];
  readonly end: readonly [number, number, number];
  readonly walls: readonly Walls[];
  /** Clearance, beyond the envelopes as given, below which a term counts, m. */
  target: number;
}

/** Unknowns that one residual spans: knot, arc, knot. */
export const spanned = 8;

/** Number of unknowns: the last arc has no free knot after it. */
export function unknownsOf(arcs: number): number {
  return 5 * arcs - 3;
}

/** What is wrong with a path: the weighted sum of squares, the largest gap between arcs, the least clearance. */
export interface Wrong {
  cost: number;
  /** Largest gap at a knot, m (headings at a lever of `headingLever`). */
  gap: number;
  /** Least clearance found at a sample, m; the target where it is more. */
  clearance: number;
}

/** Metres by which a radian of heading counts at a knot: about half a wheelbase. */
const headingLever = 2;

const state: ArcState = new Float64Array(5);
const point = newArcPoint();
const terms = newTerms();
const row = new Float64Array(spanned);

/** Evaluates a path; fills the normal equations where given. `gapWeight` is the weight of gaps against clearances. */
export function evaluate(shooting: Shooting, gapWeight: number, system: Banded | null): Wrong {
  const wrong: Wrong = { cost: 0, gap: 0, clearance: shooting.target };
  for (let arc = 0; arc < shooting.arcs; arc++) {
    setState(shooting, arc);
    addGap({ shooting, system, wrong }, arc, gapWeight);
    addClearances({ shooting, system, wrong }, arc);
  }
  return wrong;
}

interface Adding {
  readonly shooting: Shooting;
  readonly system: Banded | null;
  readonly wrong: Wrong;
}

function setState(shooting: Shooting, arc: number): void {
  const { unknowns, start } = shooting;
  for (let i = 0; i < 3; i++) state[i] = arc === 0 ? start[i]! : unknowns[5 * arc - 3 + i]!;
  state[3] = unknowns[5 * arc]!;
  state[4] = unknowns[5 * arc + 1]!;
}

function addGap({ shooting, system, wrong }: Adding, arc: number, weight: number): void {
  fillArcPoint(point, state, 1);
  const reached = [point.x, point.y, point.heading];
  for (let i = 0; i < 3; i++) {
    const knot = arc + 1 === shooting.arcs ? shooting.end[i]! : shooting.unknowns[5 * arc + 2 + i]!;
    const scale = i === 2 ? headingLever : 1;
    const gap = scale * (reached[i]! - knot);
    wrong.gap = Math.max(wrong.gap, Math.abs(gap));
    wrong.cost += (weight * gap) ** 2;
    if (system === null) continue;
    for (let j = 0; j < 5; j++) row[j] = weight * scale * point.by[5 * i + j]!;
    row.fill(0, 5);
    row[5 + i] = -weight * scale;
    addResidual(system, 5 * arc - 3, row, weight * gap);
  }
}

function addClearances({ shooting, system, wrong }: Adding, arc: number): void {
  const pose = { x: state[0]!, y: state[1]!, heading: state[2]! };
  for (const walls of shooting.walls) {
    const near = nearEdges(walls.checked, pose, { curvature: state[4]!, length: state[3]! }, shooting.target + 0.5);
    if (near.length === 0) continue;
    const look = { walls, near, target: shooting.target };
    for (const share of sampleShares(state, look)) {
      fillArcPoint(point, state, share);
      collectTerms(terms, look, point);
      for (let term = 0; term < terms.count; term++) addTerm(system, wrong, arc, term, shooting.target);
    }
  }
}

function addTerm(system: Banded | null, wrong: Wrong, arc: number, term: number, target: number): void {
  const distance = terms.distance[term]!;
  const residual = target - distance;
  wrong.clearance = Math.min(wrong.clearance, distance);
  wrong.cost += residual * residual;
  if (system === null) return;
  const { by } = point;
  for (let j = 0; j < 5; j++) {
    let sum = 0;
    for (let i = 0; i < 3; i++) sum += terms.by[3 * term + i]! * by[5 * i + j]!;
    row[j] = -sum;
  }
  row.fill(0, 5);
  addResidual(system, 5 * arc - 3, row, residual);
}
