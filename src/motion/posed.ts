// A question made ready for the search: everything in the frame of the start pose, envelopes with their boundaries.

import { prepareEnvelopes } from "./checked.ts";
import type { Checked } from "./checked.ts";
import { envelopesOf } from "./envelope.ts";
import type { Envelope, Surroundings } from "./envelope.ts";
import { freeLayer } from "./free-poses.ts";
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

/** The lattice of a question at some step. */
export function latticeFor(posed: Pick<Posed, "box" | "radius">, step: LatticeStep): Lattice {
  return latticeOver(posed.box, step, (posed.radius * 2 * Math.PI) / step.headings);
}

/**
 * Fronts of a question on a lattice, for envelopes shrunk by `deflation` (m). Release them when they are done with, so
 * that the next question finds their memory ready; a heap may be given that has room for them.
 */
export function frontsOf(
  posed: Posed,
  lattice: Lattice,
  deflation: number,
  heap: Heap = borrowHeap(fieldWords(lattice, 2)),
): Fronts {
  return beginFronts({
    lattice,
    field: newField(lattice, heap, freeLayer(lattice, posed.checked, deflation), 2),
    radius: posed.radius,
    start: nodeAt(lattice, { x: 0, y: 0, heading: 0 }),
    ends: nodesAbout(lattice, posed.end),
    firstGear: posed.firstGear,
    lastGear: posed.lastGear,
  });
}
