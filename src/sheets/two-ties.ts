// Where a peg comes to stand that is put in by two tapes from two marks, and how far off it may be.

import type { Plan, PlanTape } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { tapeDoubt } from "./spare-tape.ts";

/** A mark that stands: its place and how each cause moves it. */
export interface Mark {
  readonly name: string;
  readonly at: Point;
  readonly sways: readonly [ReadonlyMap<string, number>, ReadonlyMap<string, number>];
}

/** How each cause moves something, by the cause's name: of the plan's net by number, of a new tape by its own words. */
export type Moves = ReadonlyMap<string, readonly [number, number]>;

export interface TwoTies {
  readonly marks: readonly [Mark, Mark];
  readonly lengths: readonly [number, number];
  /** On which side of the way from the first mark to the second. */
  readonly side: "left" | "right";
  /** Angle between the tapes at the peg, radians. */
  readonly cut: number;
  readonly moves: Moves;
  /** Standard uncertainty along the worst direction, metres. */
  readonly u: number;
}

/** Lengths on the sheet are rounded to this, metres; what that leaves is u = step / sqrt 12 (JCGM 100:2008 4.3.7, MEMORY). */
export const printedStep = 0.01;
const roundingU = printedStep / Math.sqrt(12);

/** Pegs of the survey as marks. */
export function marksOf(plan: Plan): readonly Mark[] {
  const { values, sways } = plan.numbers;
  const swayOf = ({ id }: Quantity) => new Map([...(sways[id] ?? [])].map(([cause, by]) => [String(cause), by]));
  return (plan.surveyed ?? []).flatMap(({ kind, name }): readonly Mark[] => {
    const spot = kind === "peg" ? plan.pegs.get(name) : undefined;
    if (!spot) return [];
    const at: Point = [values[spot.east.id] as number, values[spot.north.id] as number];
    return [{ name, at, sways: [swayOf(spot.east), swayOf(spot.north)] }];
  });
}

/** What causes do to a taped length: its own reading and rounding, and the reel's share. Keys as in `Moves`. */
export function tapeMoves(tape: PlanTape, length: number, words: string): ReadonlyMap<string, number> {
  const { own, reel } = tapeDoubt(tape, length);
  const moves = new Map([[words, Math.hypot(own, roundingU)]]);
  if (tape.reel !== null) moves.set(String(tape.reel.cause), reel);
  return moves;
}

/** The two marks within reach that leave the peg the least doubt; null where there are no two. */
export function bestTies(
  at: Point,
  marks: readonly Mark[],
  { tape, peg }: { readonly tape: PlanTape; readonly peg: string },
): TwoTies | null {
  const near = marks.filter(({ at: [e, n] }) => {
    const length = Math.hypot(at[0] - e, at[1] - n);
    return length > printedStep && length <= tape.reach;
  });
  let best: TwoTies | null = null;
  for (const [i, one] of near.entries()) {
    for (const two of near.slice(i + 1)) {
      const ties = tiesFrom(at, [one, two], { tape, peg });
      if (ties !== null && (best === null || ties.u < best.u)) best = ties;
    }
  }
  return best;
}

/** Cut of two tapes below which they are taken as one line (sine of the angle; method tolerance). */
const oneLine = 1e-3;

/**
 * With e1, e2 the unit vectors from the marks M1, M2 to the peg P: e1.(dP - dM1) = dl1, e2.(dP - dM2) = dl2, solved for
 * dP for each cause in turn; covariance is the sum of squares over causes. COMPUTED, checked by drawing at random.
 */
function tiesFrom(
  at: Point,
  marks: readonly [Mark, Mark],
  { tape, peg }: { readonly tape: PlanTape; readonly peg: string },
): TwoTies | null {
  const arms = marks.map((mark) => armTo(at, mark, tapeMoves(tape, distance(at, mark.at), `${mark.name} to ${peg}`)));
  const [one, two] = arms as [Arm, Arm];
  const turn = one.e[0] * two.e[1] - one.e[1] * two.e[0];
  if (Math.abs(turn) < oneLine) return null;
  const moves = new Map<string, readonly [number, number]>();
  for (const cause of new Set([...one.moves.keys(), ...two.moves.keys()])) {
    const [r1, r2] = [one.moves.get(cause) ?? 0, two.moves.get(cause) ?? 0];
    moves.set(cause, [(r1 * two.e[1] - r2 * one.e[1]) / turn, (r2 * one.e[0] - r1 * two.e[0]) / turn]);
  }
  const lengths: readonly [number, number] = [one.length, two.length];
  const cut = Math.atan2(Math.abs(turn), one.e[0] * two.e[0] + one.e[1] * two.e[1]);
  return { marks, lengths, side: sideOf(at, marks), cut, moves, u: worstDirection(moves) };
}

interface Arm {
  readonly e: Point;
  readonly length: number;
  /** Along the arm: how each cause moves its far end. */
  readonly moves: ReadonlyMap<string, number>;
}

function armTo(at: Point, mark: Mark, tape: ReadonlyMap<string, number>): Arm {
  const length = distance(at, mark.at);
  const e: Point = [(at[0] - mark.at[0]) / length, (at[1] - mark.at[1]) / length];
  const moves = new Map(tape);
  mark.sways.forEach((sway, axis) => {
    for (const [cause, by] of sway) moves.set(cause, (moves.get(cause) ?? 0) + (e[axis] as number) * by);
  });
  return { e, length, moves };
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

function sideOf(at: Point, [one, two]: readonly [Mark, Mark]): "left" | "right" {
  const [a, b] = [one.at, two.at];
  return (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0]) > 0 ? "left" : "right";
}

/** Root of the larger eigenvalue of the covariance: (xx + yy)/2 + sqrt(((xx - yy)/2)^2 + xy^2). */
function worstDirection(moves: Moves): number {
  let [xx, xy, yy] = [0, 0, 0];
  for (const [e, n] of moves.values()) {
    xx += e * e;
    xy += e * n;
    yy += n * n;
  }
  return Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
}

/**
 * Standard uncertainty of what a check tape between two pegs shows beyond the plan's own distance: the pegs' moves along
 * it, less what the check tape itself does.
 */
export function checkDoubt(
  ends: readonly [{ readonly at: Point; readonly moves: Moves }, { readonly at: Point; readonly moves: Moves }],
  tape: PlanTape,
): number {
  const [a, b] = ends;
  const length = distance(a.at, b.at);
  const [e, n] = [(b.at[0] - a.at[0]) / length, (b.at[1] - a.at[1]) / length];
  const sums = new Map<string, number>();
  const add = (cause: string, by: number) => sums.set(cause, (sums.get(cause) ?? 0) + by);
  for (const [cause, [east, north]] of b.moves) add(cause, e * east + n * north);
  for (const [cause, [east, north]] of a.moves) add(cause, -(e * east + n * north));
  for (const [cause, by] of tapeMoves(tape, length, "the check itself")) add(cause, -by);
  return Math.hypot(...sums.values());
}
