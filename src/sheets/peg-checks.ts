// What the tape between two pegs shows when they are put in honestly, and from when on it is suspicious.

import type { PlanTape } from "../model/plan.ts";
import type { Point } from "../model/reading.ts";
import { distance, type Moves, printed, tapeMoves } from "./two-ties.ts";

/** An end of a check: where the peg should stand, how causes move it, and how far the printed lengths put it off. */
export interface CheckEnd {
  readonly at: Point;
  readonly moves: Moves;
  readonly aside: Point;
}

/** Moves of the length between two pegs by cause, and by how much the printed lengths of their ties make it long. */
interface LengthMoves {
  readonly length: number;
  readonly sums: ReadonlyMap<string, number>;
  readonly long: number;
}

function lengthMoves([a, b]: readonly [CheckEnd, CheckEnd]): LengthMoves {
  const length = distance(a.at, b.at);
  const [e, n] = [(b.at[0] - a.at[0]) / length, (b.at[1] - a.at[1]) / length];
  const sums = new Map<string, number>();
  const along = ([east, north]: Point): number => e * east + n * north;
  for (const [cause, by] of b.moves) sums.set(cause, along(by));
  for (const [cause, by] of a.moves) sums.set(cause, (sums.get(cause) ?? 0) - along(by));
  return { length, sums, long: along(b.aside) - along(a.aside) };
}

/** Honest work goes beyond this many standard uncertainties 1 time in 370. */
const suspicious = 3;

/**
 * How far a check tape between two pegs may be out from what the sheet prints before it is suspicious: 3 u of the pegs'
 * moves along it less what the check tape itself does, and the roundings on top.
 */
export function suspiciousCheck(ends: readonly [CheckEnd, CheckEnd], tape: PlanTape): number {
  const { length, sums, long } = lengthMoves(ends);
  const off = length + long - printed(length);
  return suspicious * lessTape(sums, tapeMoves(tape, length, "the check itself")) + Math.abs(off);
}

/** The same for the difference of two diagonals, each taped: by how much the first is longer than the second. */
export function suspiciousDifference(
  first: readonly [CheckEnd, CheckEnd],
  second: readonly [CheckEnd, CheckEnd],
  tape: PlanTape,
): { readonly longer: number; readonly most: number } {
  const [one, two] = [lengthMoves(first), lengthMoves(second)];
  const both = new Map(one.sums);
  for (const [cause, by] of two.sums) both.set(cause, (both.get(cause) ?? 0) - by);
  const tapes = new Map(tapeMoves(tape, one.length, "the first diagonal"));
  for (const [cause, by] of tapeMoves(tape, two.length, "the second diagonal"))
    tapes.set(cause, (tapes.get(cause) ?? 0) - by);
  const longer = printed(one.length - two.length);
  const off = one.length + one.long - two.length - two.long - longer;
  return { longer, most: suspicious * lessTape(both, tapes) + Math.abs(off) };
}

function lessTape(sums: ReadonlyMap<string, number>, tape: ReadonlyMap<string, number>): number {
  const all = new Map(sums);
  for (const [cause, by] of tape) all.set(cause, (all.get(cause) ?? 0) - by);
  return Math.hypot(...all.values());
}
