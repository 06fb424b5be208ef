// Whether a vehicle could get through if it could also slide sideways and turn on the spot. If not even that, no number
// of shunts helps; and a vehicle with a reverse gear can follow any such motion as closely as wanted, given shunts enough.

import { prepareEnvelopes } from "./checked.ts";
import { close } from "./flood.ts";
import { freeMaker } from "./free-poses.ts";
import { borrowHeap, giveBack } from "./heap.ts";
import { emptySide, fieldWords, newField, seed } from "./side.ts";
import type { Lattice, Motion } from "./lattice.ts";
import type { Envelope } from "./envelope.ts";
import { nodeAt } from "./node-at.ts";
import type { Pose } from "./pose.ts";
import { stands } from "./trace.ts";

/**
 * Whether the end is connected to the origin in the free space of a sliding body. The body is shrunk by
 * cell / sqrt(2) + r dTheta / 2, r the farthest corner from its middle: no pose of a true motion is farther than that
 * from the node next to it, so "not connected" holds for every motion. "Connected" is only likely. Another deflation
 * (m) may be asked for.
 */
export function slidesThrough(
  lattice: Lattice,
  envelopes: readonly Envelope[],
  end: Pose,
  deflation = allowanceOf(lattice, envelopes),
): boolean {
  const body = envelopes[0]!;
  const middle = (body.back + body.front) / 2;
  const about = aboutMiddle(envelopes);
  const maker = freeMaker(lattice, prepareEnvelopes(about), deflation);
  const heap = borrowHeap(fieldWords(lattice, maker, 1));
  const side = emptySide(newField(lattice, heap, maker, 1), 0);
  const from = nodeAt(lattice, { x: middle, y: 0, heading: 0 });
  const to = nodeAt(lattice, {
    ...end,
    x: end.x + middle * Math.cos(end.heading),
    y: end.y + middle * Math.sin(end.heading),
  });
  if (seed(side, from.heading, from.bit)) close(side, slides(lattice));
  const through = stands(side, to);
  giveBack(heap);
  return through;
}

function aboutMiddle(envelopes: readonly Envelope[]): readonly Envelope[] {
  const body = envelopes[0]!;
  const middle = (body.back + body.front) / 2;
  return envelopes.map((one) => ({ ...one, back: one.back - middle, front: one.front - middle }));
}

function allowanceOf(lattice: Lattice, envelopes: readonly Envelope[]): number {
  const reach = Math.max(...aboutMiddle(envelopes).map(farthestCorner));
  return lattice.cell / Math.SQRT2 + (reach * Math.PI) / lattice.headings;
}

function farthestCorner(envelope: Envelope): number {
  const long = Math.max(Math.abs(envelope.back), Math.abs(envelope.front));
  return Math.hypot(long, Math.max(Math.abs(envelope.right), Math.abs(envelope.left)));
}

/** To the four neighbouring cells, and to the two neighbouring headings. */
function slides(lattice: Lattice): readonly Motion[] {
  const along = [1, -1, lattice.stride, -lattice.stride].map((bits) => slide(lattice, 0, bits));
  return [...along, slide(lattice, 1, 0), slide(lattice, -1, 0)];
}

function slide(lattice: Lattice, turn: -1 | 0 | 1, bits: number): Motion {
  return { turn, shift: new Int32Array(lattice.headings).fill(bits), steer: 0, gear: 1 };
}
