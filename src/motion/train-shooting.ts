// A train's path as multiple shooting sees it, as `shooting.ts` does for one vehicle: the hitch angle is one more unknown
// at every knot, and the trailer's body has walls of its own.

import { fillArcPoint, newArcPoint } from "./arc-derivatives.ts";
import type { ArcState } from "./arc-derivatives.ts";
import { addResidual } from "./banded.ts";
import type { Banded } from "./banded.ts";
import { edgesAbout, nearEdges } from "./checked.ts";
import { collectTerms, newTerms } from "./clearance-terms.ts";
import { sampleShares } from "./sample-shares.ts";
import type { Wrong } from "./shooting.ts";
import { hitchAngleAfter } from "./trailer-pose.ts";
import type { AngleLimits } from "./trailer-sweep.ts";
import type { TowedUnit } from "./trailer.ts";
import type { Walls } from "./walls.ts";

/** x, y, heading, hitch angle. */
export type TrainKnot = readonly [number, number, number, number];

/** Unknowns, six per arc: length, curvature, then x, y, heading and hitch angle of the knot after it; the last is fixed. */
export interface TrainShooting {
  readonly arcs: number;
  readonly unknowns: Float64Array;
  /** 1 or -1 per arc. */
  readonly gears: Int8Array;
  readonly start: TrainKnot;
  readonly end: TrainKnot;
  readonly trailer: TowedUnit;
  readonly towing: readonly Walls[];
  readonly towed: readonly Walls[];
  readonly limits: AngleLimits;
  /** Clearance, beyond the envelopes as given, below which a term counts, m. */
  target: number;
}

/** Unknowns that one residual spans: knot, arc, knot. */
export const trainSpanned = 10;

/** Number of unknowns: the last arc has no free knot after it. */
export function trainUnknowns(arcs: number): number {
  return 6 * arcs - 4;
}

/** Metres by which a radian of heading, and one of hitch angle, counts at a knot. */
const levers = [1, 1, 2, 2] as const;
/** What is kept from the hitch angles' limits, rad. */
const spareAngle = 0.004;
/** Distance between samples of the trailer's way, m, and step of the difference quotients, rad or 1/m. */
const spacing = 0.3;
const nudge = 1e-6;

const state: ArcState = new Float64Array(5);
const point = newArcPoint();
const terms = newTerms();
const row = new Float64Array(trainSpanned);
/** Hitch angle after part of an arc, and its derivatives by the angle before, the length and the curvature. */
const hitch = { before: 0, angle: 0, byAngle: 0, byLength: 0, byCurvature: 0 };

interface Adding {
  readonly shooting: TrainShooting;
  readonly system: Banded | null;
  readonly wrong: Wrong;
  readonly arc: number;
}

/** Evaluates a path; fills the normal equations where given. `weight` is that of gaps against clearances. */
export function evaluateTrain(shooting: TrainShooting, weight: number, system: Banded | null): Wrong {
  const wrong: Wrong = { cost: 0, gap: 0, clearance: shooting.target };
  for (let arc = 0; arc < shooting.arcs; arc++) {
    const adding = { shooting, system, wrong, arc };
    setState(shooting, arc);
    addGap(adding, weight);
    addTowing(adding);
    addTowed(adding);
  }
  return wrong;
}

function setState({ unknowns, start }: TrainShooting, arc: number): void {
  for (let i = 0; i < 3; i++) state[i] = arc === 0 ? start[i]! : unknowns[6 * arc - 4 + i]!;
  hitch.before = arc === 0 ? start[3] : unknowns[6 * arc - 1]!;
  state[3] = unknowns[6 * arc]!;
  state[4] = unknowns[6 * arc + 1]!;
}

function fillHitch(trailer: TowedUnit, share: number): void {
  const [length, curvature] = [share * state[3]!, state[4]!];
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  hitch.angle = hitchAngleAfter(trailer, hitch.before, { length, curvature });
  hitch.byAngle = (hitchAngleAfter(trailer, hitch.before + nudge, { length, curvature }) - hitch.angle) / nudge;
  const bent = hitchAngleAfter(trailer, hitch.before, { length, curvature: curvature + nudge });
  hitch.byCurvature = (bent - hitch.angle) / nudge;
  hitch.byLength = share * (curvature - (Math.sin(hitch.angle) - S * curvature * Math.cos(hitch.angle)) / T);
}

function addRow({ system, arc }: Adding, residual: number): void {
  if (system !== null) addResidual(system, 6 * arc - 4, row, residual);
}

function addGap(adding: Adding, weight: number): void {
  const { shooting, wrong, arc } = adding;
  fillArcPoint(point, state, 1);
  fillHitch(shooting.trailer, 1);
  const reached = [point.x, point.y, point.heading, hitch.angle];
  for (let i = 0; i < 4; i++) {
    const knot = arc + 1 === shooting.arcs ? shooting.end[i]! : shooting.unknowns[6 * arc + 2 + i]!;
    const gap = levers[i]! * (reached[i]! - knot);
    wrong.gap = Math.max(wrong.gap, Math.abs(gap));
    wrong.cost += (weight * gap) ** 2;
    row.fill(0);
    const by = weight * levers[i]!;
    if (i < 3) {
      for (let j = 0; j < 3; j++) row[j] = by * point.by[5 * i + j]!;
      for (let j = 3; j < 5; j++) row[j + 1] = by * point.by[5 * i + j]!;
    } else {
      row[3] = by * hitch.byAngle;
      row[4] = by * hitch.byLength;
      row[5] = by * hitch.byCurvature;
    }
    row[6 + i] = -by;
    addRow(adding, weight * gap);
  }
  addAngle(adding);
}

/** The hitch angle at the end of an arc within its limit. (It goes one way all along, so the ends of arcs are enough.) */
function addAngle(adding: Adding): void {
  const { shooting, wrong, arc } = adding;
  const { forward, reverse } = shooting.limits;
  const own = shooting.gears[arc] === 1 ? forward : reverse;
  const next = shooting.gears[arc + 1] === -1 ? reverse : forward;
  const over = Math.abs(hitch.angle) - (Math.min(own, next) - spareAngle);
  if (over <= 0) return;
  const by = levers[3] * Math.sign(hitch.angle);
  wrong.cost += (levers[3] * over) ** 2;
  row.fill(0);
  row[3] = by * hitch.byAngle;
  row[4] = by * hitch.byLength;
  row[5] = by * hitch.byCurvature;
  addRow(adding, levers[3] * over);
}

/** How far about the walls are looked for, beyond the target, m. */
const about = 0.5;

function addTowing(adding: Adding): void {
  const { shooting } = adding;
  const pose = { x: state[0]!, y: state[1]!, heading: state[2]! };
  for (const walls of shooting.towing) {
    const near = nearEdges(walls.checked, pose, { curvature: state[4]!, length: state[3]! }, shooting.target + about);
    if (near.length === 0) continue;
    const look = { walls, near, target: shooting.target };
    for (const share of sampleShares(state, look)) {
      fillArcPoint(point, state, share);
      collectTerms(terms, look, point);
      for (let term = 0; term < terms.count; term++) {
        row.fill(0);
        for (let j = 0; j < 5; j++) row[j < 3 ? j : j + 1] = -byPoint(term, j);
        addTerm(adding, term);
      }
    }
  }
}

/** Derivative of a term by the arc's start, length and curvature. */
function byPoint(term: number, j: number): number {
  let sum = 0;
  for (let i = 0; i < 3; i++) sum += terms.by[3 * term + i]! * point.by[5 * i + j]!;
  return sum;
}

function addTerm(adding: Adding, term: number): void {
  const { shooting, wrong } = adding;
  const distance = terms.distance[term]!;
  const residual = shooting.target - distance;
  wrong.clearance = Math.min(wrong.clearance, distance);
  wrong.cost += residual * residual;
  addRow(adding, residual);
}

/** The trailer: its pose p = (x, y, heading) moves with the towing vehicle's and with the hitch angle. */
function addTowed(adding: Adding): void {
  const { shooting } = adding;
  const { hitchBehindAxle: S, hitchToAxle: T } = shooting.trailer;
  const count = Math.max(1, Math.ceil(Math.abs(state[3]!) / spacing));
  fillArcPoint(point, state, 0.5);
  for (const walls of shooting.towed) {
    const reach = S + T + Math.abs(state[3]!) / 2 + shooting.target + about;
    const near = edgesAbout(walls.checked, point, reach);
    if (near.length === 0) continue;
    const look = { walls, near, target: shooting.target };
    for (let i = 1; i <= count; i++) {
      fillArcPoint(point, state, i / count);
      fillHitch(shooting.trailer, i / count);
      const own = point.heading - hitch.angle;
      const [cos, sin] = [Math.cos(own), Math.sin(own)];
      const [towingX, towingY] = [S * Math.cos(point.heading), S * Math.sin(point.heading)];
      const pose = { x: point.x - towingX - T * cos, y: point.y - towingY - T * sin, heading: own };
      collectTerms(terms, look, pose);
      for (let term = 0; term < terms.count; term++) {
        const [byX, byY, byTurn] = [terms.by[3 * term]!, terms.by[3 * term + 1]!, terms.by[3 * term + 2]!];
        const byHeading = byX * (towingY + T * sin) - byY * (towingX + T * cos) + byTurn;
        const byHitch = -byX * T * sin + byY * T * cos - byTurn;
        row.fill(0);
        for (let j = 0; j < 5; j++) {
          const moved = byX * point.by[j]! + byY * point.by[5 + j]! + byHeading * point.by[10 + j]!;
          row[j < 3 ? j : j + 1] = -moved;
        }
        row[3] = -byHitch * hitch.byAngle;
        row[4]! -= byHitch * hitch.byLength;
        row[5]! -= byHitch * hitch.byCurvature;
        addTerm(adding, term);
      }
    }
  }
}
