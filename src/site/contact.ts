// The one pair of points by which a vehicle at a pose comes near to a boundary, kept while numbers are nudged: a corner of
// the vehicle against a side, or a vertex against a side of the vehicle. A least distance over several pairs has no slope
// where two of them tie, as along a parallel wall; one pair has.

import type { Envelope } from "../motion/envelope.ts";
import type { Pose } from "../motion/pose.ts";
import { footOn, type Segment } from "../geometry/segment.ts";
import { plus, turned } from "../geometry/vector.ts";
import type { Point } from "../model/reading.ts";

/** Distance (m) of the pair, for envelopes and sides read again in the same order. */
export type Contact = (envelopes: readonly Envelope[], sides: readonly Segment[]) => number;

/** The nearest pair of a vehicle's rectangles at a pose and some sides; null where there is nothing to pair. */
export function contactAt(pose: Pose, envelopes: readonly Envelope[], sides: readonly Segment[]): Contact | null {
  let nearest: { readonly contact: Contact; readonly distance: number } | null = null;
  for (const contact of contactsOf(pose, envelopes.length, sides.length)) {
    const distance = contact(envelopes, sides);
    if (nearest === null || distance < nearest.distance - alike) nearest = { contact, distance };
  }
  return nearest?.contact ?? null;
}

/** Pairs whose distances differ by less (m) tie: the first is taken, whichever way rounding falls. */
const alike = 1e-7;
const four = [0, 1, 2, 3] as const;

function contactsOf(pose: Pose, envelopes: number, sides: number): readonly Contact[] {
  const found: Contact[] = [];
  for (let e = 0; e < envelopes; e++) {
    for (let s = 0; s < sides; s++) {
      for (const k of four) {
        found.push((now, lines) => distanceFrom(lines[s], cornersAt(now[e], pose)[k]));
        for (const end of [0, 1] as const)
          found.push((now, lines) => distanceFrom(sideOf(cornersAt(now[e], pose), k), lines[s]?.[end]));
      }
    }
  }
  return found;
}

const distanceFrom = (side: Segment | undefined, point: Point | undefined): number =>
  side && point ? footOn(side, point).distance : Infinity;

const sideOf = (corners: readonly Point[], k: number): Segment => [corners[k] as Point, corners[(k + 1) % 4] as Point];

function cornersAt(envelope: Envelope | undefined, { x, y, heading }: Pose): readonly Point[] {
  if (!envelope) return [];
  const { back, front, right, left } = envelope;
  const corners: readonly Point[] = [
    [back, right],
    [front, right],
    [front, left],
    [back, left],
  ];
  return corners.map((corner) => plus([x, y], turned(corner, heading)));
}
