// Where a peg comes to stand that is put in by two tapes from two marks, and how far off it may be.

import type { Plan, PlanTape } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import type { Point } from "../model/reading.ts";
import { tapeDoubt } from "./spare-tape.ts";

/** How each cause moves something, by the cause's name: of the plan's net by number, of a new tape by its own words. */
export type Moves = ReadonlyMap<string, Point>;

/** A mark that stands: its place, how each cause moves it, and how far off the roundings of a sheet have put it. */
export interface Mark {
  readonly name: string;
  readonly at: Point;
  readonly moves: Moves;
  readonly aside: Point;
}

export interface TwoTies {
  readonly marks: readonly [Mark, Mark];
  readonly lengths: readonly [number, number];
  /** On which side of the way from the first mark to the second. */
  readonly side: "left" | "right";
  /** Angle between the tapes at the peg, radians. */
  readonly cut: number;
  readonly moves: Moves;
  /** How far the rounding of the two printed lengths puts the peg off: the same every time, so no doubt but an offset. */
  readonly aside: Point;
  /** Half-width that holds at least 19 times in 20 in every direction, metres. */
  readonly within: number;
}

/** Lengths on the sheet are rounded to this, metres. */
const printedStep = 0.01;

/** A length as the sheet prints it, metres. */
export function printed(length: number): number {
  return Number((Math.round(length / printedStep) * printedStep).toFixed(2));
}

/** Pegs of the survey as marks. */
export function marksOf(plan: Plan): readonly Mark[] {
  const { values, sways } = plan.numbers;
  const none: ReadonlyMap<number, number> = new Map();
  const swayOf = ({ id }: Quantity) => sways[id] ?? none;
  return (plan.surveyed ?? []).flatMap(({ kind, name }): readonly Mark[] => {
    const spot = kind === "peg" ? plan.pegs.get(name) : undefined;
    if (!spot) return [];
    const at: Point = [values[spot.east.id] as number, values[spot.north.id] as number];
    const [east, north] = [swayOf(spot.east), swayOf(spot.north)];
    const causes = new Set([...east.keys(), ...north.keys()]);
    const moves = [...causes].map((cause) => [String(cause), [east.get(cause) ?? 0, north.get(cause) ?? 0]] as const);
    return [{ name, at, moves: new Map(moves), aside: [0, 0] }];
  });
}

/** What causes do to a taped length: its own reading, and the reel's share. Keys as in `Moves`. */
export function tapeMoves(tape: PlanTape, length: number, words: string): ReadonlyMap<string, number> {
  const { own, reel } = tapeDoubt(tape, length);
  const moves = new Map([[words, own]]);
  if (tape.reel !== null) moves.set(String(tape.reel.cause), reel);
  return moves;
}

/**
 * A peg that goes off by more than this many times its tapes' own doubt is not held by them: tapes that cut at an angle c
 * stretch it to 1 / sqrt(1 - |cos c|) of it along the worst direction (COMPUTED); 3 is a cut of 27 or 153 degrees.
 */
const mostStretch = 3;

/**
 * The two marks within reach that leave the peg the least doubt; corners that are pegged already serve where no two of the
 * survey hold it. Null where there are no two.
 */
export function bestTies(
  at: Point,
  marks: { readonly survey: readonly Mark[]; readonly pegged: readonly Mark[] },
  peg: { readonly tape: PlanTape; readonly peg: string },
): TwoTies | null {
  return bestPair(at, marks.survey, peg) ?? bestPair(at, [...marks.survey, ...marks.pegged], peg);
}

function bestPair(
  at: Point,
  marks: readonly Mark[],
  { tape, peg }: { readonly tape: PlanTape; readonly peg: string },
): TwoTies | null {
  const near = marks.filter((mark) => {
    const length = distance(at, mark.at);
    return length > printedStep && length <= tape.reach;
  });
  let best: TwoTies | null = null;
  for (const [i, one] of near.entries()) {
    for (const two of near.slice(i + 1)) {
      const ties = tiesFrom(at, [one, two], { tape, peg });
      if (ties !== null && (best === null || ties.within < best.within)) best = ties;
    }
  }
  return best;
}

/**
 * With e1, e2 the unit vectors from the marks M1, M2 to the peg P: e1.(dP - dM1) = dl1, e2.(dP - dM2) = dl2, solved for
 * dP for each cause in turn, and for the two roundings; covariance is the sum of squares over causes. COMPUTED, checked
 * by drawing at random.
 */
function tiesFrom(
  at: Point,
  marks: readonly [Mark, Mark],
  { tape, peg }: { readonly tape: PlanTape; readonly peg: string },
): TwoTies | null {
  const arms = marks.map((mark) => armTo(at, mark, tapeMoves(tape, distance(at, mark.at), `${mark.name} to ${peg}`)));
  const [one, two] = arms as [Arm, Arm];
  const turn = one.e[0] * two.e[1] - one.e[1] * two.e[0];
  const cosine = one.e[0] * two.e[0] + one.e[1] * two.e[1];
  if (mostStretch * Math.sqrt(Math.max(0, 1 - Math.abs(cosine))) < 1) return null;
  const movedBy = (r1: number, r2: number): Point => [
    (r1 * two.e[1] - r2 * one.e[1]) / turn,
    (r2 * one.e[0] - r1 * two.e[0]) / turn,
  ];
  const causes = new Set([...one.moves.keys(), ...two.moves.keys()]);
  const moves = new Map(
    [...causes].map((cause) => [cause, movedBy(one.moves.get(cause) ?? 0, two.moves.get(cause) ?? 0)]),
  );
  const lengths: readonly [number, number] = [one.length, two.length];
  const aside = movedBy(asideAlong(one), asideAlong(two));
  const cut = Math.atan2(Math.abs(turn), cosine);
  return { marks, lengths, side: sideOf(at, marks), cut, moves, aside, within: widest(moves, aside) };
}

interface Arm {
  readonly e: Point;
  readonly length: number;
  /** Along the arm: how each cause moves its far end, and how far off the mark at its near end was put. */
  readonly moves: ReadonlyMap<string, number>;
  readonly markAside: number;
}

/** How far along the arm the far end is put off: by the rounding of the tape, and with the mark. */
const asideAlong = ({ length, markAside }: Arm): number => printed(length) - length + markAside;

function armTo(at: Point, mark: Mark, tape: ReadonlyMap<string, number>): Arm {
  const length = distance(at, mark.at);
  const e: Point = [(at[0] - mark.at[0]) / length, (at[1] - mark.at[1]) / length];
  const along = ([east, north]: Point): number => e[0] * east + e[1] * north;
  const moves = new Map(tape);
  for (const [cause, by] of mark.moves) moves.set(cause, (moves.get(cause) ?? 0) + along(by));
  return { e, length, moves, markAside: along(mark.aside) };
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

function sideOf(at: Point, [one, two]: readonly [Mark, Mark]): "left" | "right" {
  const [a, b] = [one.at, two.at];
  return (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0]) > 0 ? "left" : "right";
}

/** Half-width that holds 19 times in 20, in standard uncertainties. */
export const nineteenInTwenty = 2;
/** Directions that are looked along over the half circle. */
const directions = 180;

/** The largest over all directions n of 2 s(n) + |n.aside|, s^2 = n'Cn: within it lies 19 in 20, whatever the rounding. */
function widest(moves: Moves, aside: Point): number {
  let [xx, xy, yy] = [0, 0, 0];
  for (const [e, n] of moves.values()) [xx, xy, yy] = [xx + e * e, xy + e * n, yy + n * n];
  const along = Array.from({ length: directions }, (_, k) => {
    const [e, n] = [Math.cos((k * Math.PI) / directions), Math.sin((k * Math.PI) / directions)];
    const spread = Math.sqrt(Math.max(0, e * e * xx + 2 * e * n * xy + n * n * yy));
    return nineteenInTwenty * spread + Math.abs(e * aside[0] + n * aside[1]);
  });
  return Math.max(...along);
}
