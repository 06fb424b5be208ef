// A drive as its vehicle sees it: from the start, along its heading, left and right exchanged where the goal lies to the right.
// A plot that is moved, turned or mirrored asks the search the same question, figure for figure.

import type { Arc, Pose } from "../motion/pose.ts";
import { poseFrom, pointFrom } from "../motion/start-frame.ts";
import { counterClockwise, ringCentroid } from "../geometry/ring.ts";
import type { Point } from "../model/reading.ts";

/** Rings of metres and the goal, seen from the start. Outlines run counter-clockwise, holes clockwise. */
export interface SeenDrive {
  readonly running: readonly (readonly Point[])[];
  readonly bodies: readonly (readonly Point[])[];
  readonly wheels: readonly (readonly Point[])[];
  readonly goal: Pose;
  /** True where left and right are exchanged. */
  readonly exchanged: boolean;
}

type Ring = readonly Point[];

const asItRuns = (ring: Ring): Ring => ring;

/** Smaller figures (m, and the sine of the goal's heading) do not tell left from right. */
const tells = 1e-3;

/** The rings and the goal of a drive as seen from its start. */
export function seenDrive(start: Pose, goal: Pose, rings: Pick<SeenDrive, "running" | "bodies" | "wheels">): SeenDrive {
  const see = (ring: readonly Point[]): readonly Point[] => ring.map((point) => pointFrom(start, point));
  const running = rings.running.map(see);
  const bodies = rings.bodies.map(see);
  const wheels = rings.wheels.map(see);
  const end = poseFrom(start, goal);
  const exchanged = liesRight([end.y, Math.sin(end.heading), ...[...running, ...bodies, ...wheels].map(sideways)]);
  const laid = (list: readonly Ring[], way: (ring: Ring) => Ring = asItRuns) =>
    sorted(list.map((ring) => way(exchanged ? mirrored(ring) : ring)));
  return {
    running: laid(running),
    bodies: laid(bodies, counterClockwise),
    wheels: laid(wheels, counterClockwise),
    goal: { x: end.x, y: exchanged ? 0 - end.y : end.y, heading: halfTurn(exchanged ? 0 - end.heading : end.heading) },
    exchanged,
  };
}

/** Arcs that were found for a drive as it is seen, as they are driven in the plan. */
export function asDrivenThere({ exchanged }: SeenDrive, arcs: readonly Arc[]): readonly Arc[] {
  return exchanged ? arcs.map((arc) => ({ ...arc, curvature: 0 - arc.curvature })) : arcs;
}

/** The first figure that tells a side decides. */
function liesRight(figures: readonly number[]): boolean {
  const telling = figures.find((figure) => Math.abs(figure) > tells);
  return telling !== undefined && telling < 0;
}

/** Half a turn to the right is half a turn to the left. */
const halfTurn = (heading: number): number => (Math.PI - Math.abs(heading) < tells ? Math.abs(heading) : heading);

const sideways = (ring: readonly Point[]): number => ringCentroid(ring)?.[1] ?? 0;

const mirrored = (ring: readonly Point[]): readonly Point[] => ring.map(([x, y]): Point => [x, 0 - y]).toReversed();

/** Rings that begin at their rearmost vertex, in an order of their own: joining them elsewhere gives another. */
function sorted(rings: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  return rings.map(fromRearmost).sort((a, b) => byPlace(a[0] ?? [0, 0], b[0] ?? [0, 0]) || a.length - b.length);
}

function fromRearmost(ring: readonly Point[]): readonly Point[] {
  const first = ring.reduce((best, point, i) => (byPlace(point, ring[best] ?? point) < 0 ? i : best), 0);
  return [...ring.slice(first), ...ring.slice(0, first)];
}

const byPlace = ([ax, ay]: Point, [bx, by]: Point): number => ax - bx || ay - by;
