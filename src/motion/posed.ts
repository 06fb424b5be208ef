// A question made ready for the search: everything in the frame of the start pose, envelopes with their boundaries.

import { middleOf, prepareEnvelopes } from "./checked.ts";
import type { Checked } from "./checked.ts";
import { envelopesOf } from "./envelope.ts";
import type { Envelope, Surroundings } from "./envelope.ts";
import { freeMaker } from "./free-poses.ts";
import { borrowHeap } from "./heap.ts";
import type { Heap } from "./heap.ts";
import { latticeOver } from "./lattice.ts";
import type { Box, Lattice, LatticeStep } from "./lattice.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import { nodeAt, nodesAbout } from "./node-at.ts";
import type { Gear, Pose } from "./pose.ts";
import { fieldWords, newField } from "./side.ts";
import { poseFrom, seenFrom } from "./start-frame.ts";
import { beginFronts } from "./two-sided.ts";
import type { Fronts } from "./two-sided.ts";

export interface Posed {
  readonly envelopes: readonly Envelope[];
  readonly checked: readonly Checked[];
  /** The goal in the frame of the start. */
  readonly end: Pose;
  readonly radius: number;
  readonly firstGear: Gear;
  readonly lastGear: Gear;
  /** Where the rear-axle midpoint can be. */
  readonly box: Box;
}

/** The question at its margin, or at another one. */
export function pose(question: ManoeuvreQuestion, margin = question.margin): Posed {
  const around = seenFrom(question.start, question);
  const envelopes = envelopesOf(question.vehicle, around, margin);
  return {
    envelopes,
    checked: prepareEnvelopes(envelopes),
    end: poseFrom(question.start, question.goal),
    radius: question.vehicle.rearAxleRadius,
    firstGear: question.firstGear ?? "forward",
    lastGear: question.lastGear ?? "forward",
    box: boxOf(around),
  };
}

/** The rear-axle midpoint lies within the body and between the tyres, so within both grounds' boxes. */
function boxOf(around: Surroundings): Box {
  const points = (ground: Surroundings["clear"]) => ground.rings.flat();
  const [clear, running] = [points(around.clear), points(around.running)];
  const east = [clear, running].map((ring) => ring.map(([x]) => x));
  const north = [clear, running].map((ring) => ring.map(([, y]) => y));
  return {
    left: Math.max(...east.map((xs) => Math.min(...xs))),
    right: Math.min(...east.map((xs) => Math.max(...xs))),
    low: Math.max(...north.map((ys) => Math.min(...ys))),
    high: Math.min(...north.map((ys) => Math.max(...ys))),
  };
}

/** The lattice of a question at some step. Its rows lie as far apart as any thin part is from the vehicle's middles. */
export function latticeFor({ box, radius, checked }: Posed, step: LatticeStep): Lattice {
  const longestMove = (radius * 2 * Math.PI) / step.headings;
  return latticeOver(box, step, Math.max(longestMove, farthestThin(checked)));
}

/** How far the middle of a part that is not the body lies from the rear-axle midpoint, or the body's middle, m. */
function farthestThin(checked: readonly Checked[]): number {
  const [x, y] = middleOf(checked[0]!);
  const thin = checked.filter((one) => one.envelope.part !== "body").map(middleOf);
  return Math.max(0, ...thin.flatMap(([u, v]) => [Math.hypot(u, v), Math.hypot(u - x, v - y)]));
}

/**
 * Fronts of a question on a lattice, for envelopes shrunk by `deflation` (m). Release them when they are done with, so
 * that the next question finds their memory ready. A heap of one's own may be given.
 */
export function frontsOf(posed: Posed, lattice: Lattice, deflation: number, given?: Heap): Fronts {
  const maker = freeMaker(lattice, posed.checked, deflation);
  const heap = given ?? borrowHeap(fieldWords(lattice, maker, 2));
  return beginFronts({
    lattice,
    field: newField(lattice, heap, maker, 2),
    radius: posed.radius,
    start: nodeAt(lattice, { x: 0, y: 0, heading: 0 }),
    ends: nodesAbout(lattice, posed.end),
    firstGear: posed.firstGear,
    lastGear: posed.lastGear,
  });
}
