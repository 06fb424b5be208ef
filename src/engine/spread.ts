// Doubt of one candidate place: the law of propagation with covariance, on the numbers that were read.

import type { NumberBook, Read } from "../model/quantity.ts";
import { swayLength } from "../model/quantity.ts";

/** A value with its standard uncertainty and what carries it. */
export interface Spread {
  readonly value: number;
  readonly u: number;
  /** Contribution of each cause at one standard uncertainty, signed; squares sum to u^2 less the method's part. */
  readonly contributions: ReadonlyMap<number, number>;
  readonly methodU: number;
  /** True where one-sided changes differ by more than a fifth: then u is the larger of them. */
  readonly kinked: boolean;
}

/** Plain reading of the book. */
export function readPlain(book: NumberBook): Read {
  return (quantity) => book.values[quantity.id] as number;
}

/** A read that notes which numbers were asked for. */
export function readNoting(read: Read, noted: Set<number>): Read {
  return (quantity) => {
    noted.add(quantity.id);
    return read(quantity);
  };
}

/** Step of the numeric derivative as a part of the number's own u: small, so that the result does not depend on how the plan is turned. */
const stepShare = 1e-3;
/** One-sided changes that differ by more than this part of the larger mark a kink. */
const kinkShare = 0.2;

/**
 * Standard uncertainty of `value` (JCGM 100:2008 5.1.2 and 5.2.2): g by central differences, u^2 = g' V g with
 * V = S S', S the sways of the numbers. Kinks are looked for along V g / u, the one displacement of one standard
 * uncertainty that changes the value most; that direction turns with the plan, so the doubt does not change with it.
 *
 * @param value reads numbers only through the read it is given; frozen topology
 * @param base read at the plan's own values (a remedy may have changed some)
 */
export function spread(value: (read: Read) => number, base: Read, book: NumberBook, methodU = 0): Spread {
  const noted = new Set<number>();
  const centre = value(readNoting(base, noted));
  const moving = [...noted].filter((id) => (book.sways[id]?.size ?? 0) > 0);
  const contributions = new Map<number, number>();
  const slopeBy = slopes(value, base, book);
  for (const id of moving) addContribution(contributions, id, slopeBy(id), book);
  const linear = rootOfSquares(contributions);
  const checked = checkForKink({ value, base, book, moving, contributions, linear, centre });
  return {
    value: centre,
    u: Math.hypot(checked.u, methodU),
    contributions: checked.contributions,
    methodU,
    kinked: checked.kinked,
  };
}

/** Square root of the sum of squares: the length of independent contributions together. */
function rootOfSquares(contributions: ReadonlyMap<number, number>): number {
  let sum = 0;
  for (const part of contributions.values()) sum += part * part;
  return Math.sqrt(sum);
}

const doubts = new WeakMap<NumberBook, Float64Array>();

/** Standard uncertainty of a number of a book; worked out once for all of its numbers. */
export function doubtOfNumber(book: NumberBook, id: number): number {
  const known = doubts.get(book) ?? Float64Array.from(book.sways, swayLength);
  doubts.set(book, known);
  return known[id] ?? 0;
}

/** A value, and the sum of the standard uncertainties of all numbers that it reads. */
export function doubtsRead(
  value: (read: Read) => number,
  read: Read,
  book: NumberBook,
): { readonly value: number; readonly doubts: number } {
  const noted = new Set<number>();
  const plain = value(readNoting(read, noted));
  let sum = 0;
  for (const id of noted) sum += doubtOfNumber(book, id);
  return { value: plain, doubts: sum };
}

/** Central differences of a value by one number after another. One read serves them all: a value only asks it, and keeps nothing by it. */
function slopes(value: (read: Read) => number, base: Read, book: NumberBook): (id: number) => number {
  let moved = -1;
  let by = 0;
  const read: Read = (quantity) => (quantity.id === moved ? base(quantity) + by : base(quantity));
  return (id) => {
    const step = Math.max(doubtOfNumber(book, id) * stepShare, 1e-9);
    moved = id;
    by = step;
    const above = value(read);
    by = -step;
    return (above - value(read)) / (2 * step);
  };
}

function addContribution(contributions: Map<number, number>, id: number, slope: number, book: NumberBook): void {
  if (slope === 0 || !Number.isFinite(slope)) return;
  for (const [cause, sway] of book.sways[id] ?? [])
    contributions.set(cause, (contributions.get(cause) ?? 0) + slope * sway);
}

interface KinkQuestion {
  readonly value: (read: Read) => number;
  readonly base: Read;
  readonly book: NumberBook;
  readonly moving: readonly number[];
  readonly contributions: ReadonlyMap<number, number>;
  readonly linear: number;
  readonly centre: number;
}

function checkForKink(question: KinkQuestion): {
  u: number;
  kinked: boolean;
  contributions: ReadonlyMap<number, number>;
} {
  const { linear, contributions } = question;
  if (question.moving.length === 0) return { u: 0, kinked: false, contributions };
  if (linear < 1e-12) return largerSides(question);
  const [up, down] = alongWorst(question);
  const larger = Math.max(Math.abs(up), Math.abs(down));
  const kinked = Math.abs(up - down) > kinkShare * larger;
  return { u: kinked ? Math.max(larger, linear) : linear, kinked, contributions };
}

/** Change of the value along plus and minus V g / u. */
function alongWorst({
  value,
  base,
  book,
  moving,
  contributions,
  linear,
  centre,
}: KinkQuestion): readonly [number, number] {
  const move = new Map<number, number>();
  for (const id of moving) {
    let along = 0;
    for (const [cause, sway] of book.sways[id] ?? []) along += (sway * (contributions.get(cause) ?? 0)) / linear;
    move.set(id, along);
  }
  const moved =
    (sign: number): Read =>
    (quantity) =>
      base(quantity) + sign * (move.get(quantity.id) ?? 0);
  return [value(moved(1)) - centre, centre - value(moved(-1))];
}

/** Where the derivative vanishes on both sides (a touch, a tie): the larger one-sided change of each cause. */
function largerSides({ value, base, book, moving, centre }: KinkQuestion): {
  u: number;
  kinked: boolean;
  contributions: ReadonlyMap<number, number>;
} {
  const causes = new Set(moving.flatMap((id) => [...(book.sways[id] ?? new Map<number, number>()).keys()]));
  const contributions = new Map<number, number>();
  for (const cause of causes) {
    const moved =
      (sign: number): Read =>
      (quantity) =>
        base(quantity) + sign * (book.sways[quantity.id]?.get(cause) ?? 0);
    const up = value(moved(1)) - centre;
    const down = centre - value(moved(-1));
    const larger = Math.abs(up) > Math.abs(down) ? up : down;
    if (larger !== 0 && Number.isFinite(larger)) contributions.set(cause, larger);
  }
  const u = rootOfSquares(contributions);
  return { u, kinked: u > 0, contributions };
}
