// From a way over the lattice to exact arcs: damped least squares (Levenberg-Marquardt) on all arcs and knots at once,
// until the arcs join and the walls are clear. The last word is the exact sweep's, not this file's.

import { clearBanded, newBanded, solveDamped } from "./banded.ts";
import type { Banded } from "./banded.ts";
import { directionChanges, posesAlong } from "./pose.ts";
import type { Arc, Pose } from "./pose.ts";
import { evaluate, spanned, unknownsOf } from "./shooting.ts";
import type { Shooting, Wrong } from "./shooting.ts";
import { whereRejected } from "./sweep.ts";
import type { Walls } from "./walls.ts";

/** A rough path: arcs and the knots between them (one more than arcs, first and last exact). */
export interface RoughPath {
  readonly arcs: readonly Arc[];
  /** 1 or -1 per arc. */
  readonly gears: readonly (1 | -1)[];
  readonly knots: readonly Pose[];
}

/** What a refined path must keep to. */
export interface RefineWith {
  readonly walls: readonly Walls[];
  readonly largestCurvature: number;
  readonly mostChanges: number;
}

/** How near the end must be reached: m and rad. */
export const endTolerance = { distance: 0.02, heading: 0.01 } as const;

/** Clearance beyond what is asked at which refinement stops pushing, m. */
const spare = 0.012;
/** The same where that is too much to ask, and by how much less than nothing there must be to give up at once, m. */
const leastSpare = 0.001;
const hopeless = 0.06;
const mostSteps = 50;
/** Steps after which a path must have come down to a share of its cost, or it is given up. */
const patience = { steps: 8, share: 0.5 } as const;

/** Exact arcs near a rough path, checked by the exact sweep; null where none was found. */
export function refine(rough: RoughPath, limits: RefineWith): readonly Arc[] | null {
  const shooting = shootingOf(rough, limits);
  const size = unknownsOf(shooting.arcs);
  const work = { system: newBanded(size, spanned), held: new Uint8Array(size), step: new Float64Array(size) };
  let damping = 1e-3;
  let weight = 2;
  let earlier = Infinity;
  for (let count = 0; count < mostSteps; count++) {
    clearBanded(work.system);
    const before = evaluate(shooting, weight, work.system);
    if (count % patience.steps === 0) {
      if (before.cost > earlier * patience.share) {
        if (shooting.target <= leastSpare || before.clearance < -hopeless) return null;
        shooting.target = leastSpare;
      }
      earlier = before.cost;
    }
    if (promising(before)) {
      const arcs = accepted(shooting, limits);
      if (arcs !== null) return arcs;
    }
    const taken = takeStep({ shooting, limits, weight }, work, before.cost, damping);
    if (taken === null) return null;
    damping = taken;
    if (weight < 16) {
      weight *= 2;
      earlier *= 4;
    }
  }
  return null;
}

function promising(wrong: Wrong): boolean {
  return wrong.gap < 5e-3 && wrong.clearance > -2e-3;
}

function shootingOf(rough: RoughPath, limits: RefineWith): Shooting {
  const count = rough.arcs.length;
  const unknowns = new Float64Array(unknownsOf(count));
  for (const [i, arc] of rough.arcs.entries()) {
    unknowns[5 * i] = arc.length;
    unknowns[5 * i + 1] = arc.curvature;
    if (i + 1 === count) break;
    const knot = rough.knots[i + 1]!;
    unknowns.set([knot.x, knot.y, knot.heading], 5 * i + 2);
  }
  const first = rough.knots[0]!;
  const last = rough.knots.at(-1)!;
  return {
    arcs: count,
    unknowns,
    gears: Int8Array.from(rough.gears),
    start: [first.x, first.y, first.heading],
    end: [last.x, last.y, last.heading],
    walls: limits.walls,
    target: spare,
  };
}

interface Work {
  readonly system: Banded;
  readonly held: Uint8Array;
  readonly step: Float64Array;
}

interface Setting {
  readonly shooting: Shooting;
  readonly limits: RefineWith;
  readonly weight: number;
}

/** Takes one step that lowers the cost; returns the next damping, or null where no step does. */
function takeStep(setting: Setting, work: Work, cost: number, first: number): number | null {
  const { shooting, limits, weight } = setting;
  const { unknowns } = shooting;
  const before = unknowns.slice();
  holdAtBounds(shooting, limits, work);
  let damping = first;
  for (let attempt = 0; attempt < 7; attempt++) {
    if (solveDamped(work.system, damping, work.held, work.step)) {
      for (let i = 0; i < unknowns.length; i++) unknowns[i] = before[i]! + work.step[i]!;
      keepBounds(shooting, limits);
      if (evaluate(shooting, weight, null).cost < cost) return Math.max(1e-8, damping / 4);
    }
    damping = Math.max(1e-6, damping * 6);
  }
  unknowns.set(before);
  return null;
}

/** Holds lengths and curvatures that stand at a bound and are pushed beyond it. */
function holdAtBounds(shooting: Shooting, limits: RefineWith, work: Work): void {
  const { unknowns, gears } = shooting;
  work.held.fill(0);
  for (let arc = 0; arc < shooting.arcs; arc++) {
    // The step goes against the gradient.
    const lengthPush = -work.system.right[5 * arc]! * gears[arc]!;
    if (unknowns[5 * arc]! * gears[arc]! <= 0 && lengthPush < 0) work.held[5 * arc] = 1;
    const curvature = unknowns[5 * arc + 1]!;
    const bendPush = -work.system.right[5 * arc + 1]! * Math.sign(curvature);
    if (Math.abs(curvature) >= limits.largestCurvature && bendPush > 0) work.held[5 * arc + 1] = 1;
  }
}

function keepBounds(shooting: Shooting, limits: RefineWith): void {
  const { unknowns, gears } = shooting;
  const most = limits.largestCurvature;
  for (let arc = 0; arc < shooting.arcs; arc++) {
    if (unknowns[5 * arc]! * gears[arc]! < 0) unknowns[5 * arc] = 0;
    unknowns[5 * arc + 1] = Math.max(-most, Math.min(most, unknowns[5 * arc + 1]!));
  }
}

/** Shortest arc that is kept, m; shorter ones are left out of the finished path. */
const shortest = 1e-4;

/** The arcs as they stand, where they end at the end and pass the exact sweep. */
function accepted(shooting: Shooting, limits: RefineWith): readonly Arc[] | null {
  const arcs: Arc[] = [];
  for (let i = 0; i < shooting.arcs; i++) {
    const length = shooting.unknowns[5 * i]!;
    if (Math.abs(length) >= shortest) arcs.push({ length, curvature: shooting.unknowns[5 * i + 1]! });
  }
  const [x, y, heading] = shooting.start;
  const start: Pose = { x, y, heading };
  const end = posesAlong(start, arcs).at(-1) ?? start;
  if (Math.hypot(end.x - shooting.end[0], end.y - shooting.end[1]) > endTolerance.distance) return null;
  if (Math.abs(end.heading - shooting.end[2]) > endTolerance.heading) return null;
  if (directionChanges(arcs) > limits.mostChanges) return null;
  const checked = limits.walls.map((walls) => walls.checked);
  return whereRejected(checked, start, arcs) === null ? arcs : null;
}
