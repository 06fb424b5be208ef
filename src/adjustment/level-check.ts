// What a level book can be held to: its own arithmetic, and the level it should come home to.

import { reduceByRiseAndFall } from "./level-book.ts";
import type { BookRow, ReducedBook } from "./level-book.ts";

/** The three differences that are equal in any book that is added up right. */
export interface ArithmeticCheck {
  /** Sum of backsights less sum of foresights. */
  readonly sights: number;
  /** Sum of rises less sum of falls. */
  readonly rises: number;
  /** Last level less first. */
  readonly levels: number;
}

/** A figure booked by hand that does not follow from the readings. */
export interface BookingSlip {
  readonly row: number;
  readonly point: string;
  readonly figure: "rise" | "fall" | "level";
  readonly booked: number;
  readonly worked: number;
}

/** The three differences of a reduced book. */
export function arithmeticOf(book: ReducedBook): ArithmeticCheck {
  const first = book.rows[0]!.level;
  const last = book.rows.at(-1)!.level;
  return { sights: book.backsights - book.foresights, rises: book.rises - book.falls, levels: last - first };
}

/**
 * The three differences as the keeper booked them: sights from the readings, rises and levels from the booked
 * figures where there are any (a level carried on where none is booked). They disagree where a figure is wrong.
 */
export function arithmeticAsBooked(rows: readonly BookRow[], start: number): ArithmeticCheck | null {
  const book = reduceByRiseAndFall(rows, start);
  if (book === null) return null;
  let rises = 0;
  let level = start;
  rows.forEach(({ booked }, index) => {
    const rise = bookedRise(booked) ?? book.rows[index]!.rise ?? 0;
    rises += rise;
    level = booked?.level ?? level + rise;
  });
  return { sights: book.backsights - book.foresights, rises, levels: level - start };
}

/**
 * Figures booked by hand that differ from what the readings give, each row worked from the booked level of the
 * row before (so that one slip is named once). `rounding` is half of the last place booked, metres.
 */
export function bookingSlips(rows: readonly BookRow[], start: number, rounding: number): BookingSlip[] {
  const book = reduceByRiseAndFall(rows, start);
  if (book === null) return [];
  const slips: BookingSlip[] = [];
  let level = start;
  rows.forEach(({ point, booked }, row) => {
    const worked = book.rows[row]!.rise ?? 0;
    const rise = bookedRise(booked);
    const slip = (figure: BookingSlip["figure"], is: number, should: number) => {
      if (Math.abs(is - should) > rounding) slips.push({ row, point, figure, booked: is, worked: should });
    };
    if (booked?.rise !== undefined) slip("rise", booked.rise, worked);
    if (booked?.fall !== undefined) slip("fall", booked.fall, -worked);
    const carried = level + (rise ?? worked);
    if (booked?.level !== undefined) slip("level", booked.level, carried);
    level = booked?.level ?? carried;
  });
  return slips;
}

function bookedRise(booked: BookRow["booked"]): number | undefined {
  if (booked?.rise === undefined && booked?.fall === undefined) return undefined;
  return (booked.rise ?? 0) - (booked.fall ?? 0);
}

export interface Closing {
  /** Last level as levelled less the level known for that point. */
  readonly misclosure: number;
  readonly setUps: number;
  /** perRootSetUp sqrt(n). */
  readonly allowed: number;
  readonly within: boolean;
  /** Levels with the misclosure shared out by set-ups, in the order of the rows. */
  readonly corrected: readonly number[];
}

/**
 * Closing error of a book that ends on a known level, against `perRootSetUp` sqrt(n) for n set-ups (metres; the
 * caller brings the limit), and the levels with the error shared out equally by set-ups: a point read from set-up
 * k is corrected by k/n of it (PRACTICE). Exact least squares with equal sights agrees at change points.
 */
export function closeBook(book: ReducedBook, known: number, perRootSetUp: number): Closing {
  const misclosure = book.rows.at(-1)!.level - known;
  const allowed = perRootSetUp * Math.sqrt(book.setUps);
  const corrected = book.rows.map(({ level, setUp }, index) => {
    return index === 0 ? level : level - (misclosure * setUp) / book.setUps;
  });
  return { misclosure, setUps: book.setUps, allowed, within: Math.abs(misclosure) <= allowed, corrected };
}
