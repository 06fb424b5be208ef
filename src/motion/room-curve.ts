// Length against depth: for each length of a rectangle the least depth on which a vehicle turns round.

import { keepsClear, type SizeRange, type SizeWithPath, smallestSize } from "./room-size.ts";
import { type RoomLayout, type Turner, turnQuestion } from "./room-layout.ts";
import { overallLength, type Vehicle } from "./vehicle.ts";

/** A length and the least depth found for it, m, with its path; `found` is null where no depth that was tried will do. */
export interface CurvePoint {
  readonly long: number;
  readonly found: SizeWithPath | null;
}

/** Lengths of a curve are whole halves of a metre, this many, from three fifths of the longest on. */
const lengthStep = 0.5;
const lengthCount = 8;
const shortestShare = 0.6;
/** Depths are looked for up to this many times the longest length of the curve. */
const deepest = 1.25;

/**
 * Longest length that is worth looking at, m: the bar of a T head by single arcs, 2 r + length over all, with the
 * clearance at both ends (COMPUTED). More gains next to nothing in depth.
 */
export function longestUseful({ vehicle, clearance }: Turner): number {
  return 2 * vehicle.rearAxleRadius + overallLength(vehicle) + 2 * Math.max(0, clearance);
}

/** Lengths from three fifths of the longest useful one to all of it, m, in half metres. */
export function curveLengths(turner: Turner): readonly number[] {
  const longest = longestUseful(turner);
  const lengths = Array.from({ length: lengthCount }, (_, i) => {
    const share = shortestShare + ((1 - shortestShare) * i) / (lengthCount - 1);
    return Math.ceil((share * longest) / lengthStep) * lengthStep;
  });
  return [...new Set(lengths)];
}

/** Depths among which the least is looked for, m: from the body with its clearances on. */
export function depthRange(turner: Turner, layout: RoomLayout): SizeRange {
  const least = bodyWidthWith(turner.vehicle, turner.clearance);
  const track = layout.form === "road" ? 0 : layout.track;
  const from = layout.form === "rectangle" && layout.entry === "along" ? Math.max(track, least) : least;
  return { from, to: Math.max(longestUseful(turner) * deepest, 2 * from) };
}

const bodyWidthWith = (vehicle: Vehicle, clearance: number) => vehicle.bodyWidth + 2 * Math.max(0, clearance);

/**
 * Least depths for some lengths, m. A path on a shorter ground is a path on a longer one, so each search begins with
 * the path before it and the depths never rise with the length.
 */
export function depthCurve(layout: RoomLayout, turner: Turner, lengths: readonly number[]): readonly CurvePoint[] {
  const range = depthRange(turner, layout);
  const points: CurvePoint[] = [];
  let before: SizeWithPath | undefined;
  for (const long of [...lengths].sort((a, b) => a - b)) {
    const ask = (deep: number) => turnQuestion(layout, { long, deep }, turner);
    const known = before && keepsClear(ask(before.size), before.path) ? before : undefined;
    const found = smallestSize(ask, range, known);
    points.push({ long, found });
    before = found ?? before;
  }
  return points;
}

/** The point of a curve whose rectangle has the smallest area; null where none was found. */
export function smallestArea(points: readonly CurvePoint[]): CurvePoint | null {
  const found = points.filter((point) => point.found !== null);
  const area = ({ long, found: at }: CurvePoint) => long * (at?.size ?? Infinity);
  return found.reduce<CurvePoint | null>((best, point) => (best && area(best) <= area(point) ? best : point), null);
}
