// A level book as it is kept in the field: one row for each place of the staff.

/** Backsight, intermediate sight or foresight on a point, metres; what the keeper booked beside them, if anything. */
export interface BookRow {
  readonly point: string;
  readonly backsight?: number;
  readonly intermediate?: number;
  readonly foresight?: number;
  /** Booked by hand, to be checked: rise (or fall) from the row before, and the level. */
  readonly booked?: { readonly rise?: number; readonly fall?: number; readonly level?: number };
}

/**
 * Why a row cannot stand where it stands. `backsight-alone`: a new set-up with no foresight before it.
 * `foresight-alone`: a set-up closed in the middle of the book with no backsight to go on from.
 */
export type BookFault =
  | "no-reading"
  | "not-a-number"
  | "starts-without-backsight"
  | "intermediate-beside-another"
  | "backsight-alone"
  | "foresight-alone"
  | "ends-without-foresight";

/** One row worked out. `rise` is negative for a fall; null in the first row. */
export interface ReducedRow {
  readonly point: string;
  readonly rise: number | null;
  readonly level: number;
  /** Height of the line of sight with which this point was first read. */
  readonly collimation: number;
  /** Number of the set-up from which this point was first read, from 1. */
  readonly setUp: number;
}

export interface ReducedBook {
  readonly rows: readonly ReducedRow[];
  readonly setUps: number;
  readonly backsights: number;
  readonly foresights: number;
  readonly rises: number;
  /** Sum of falls, positive. */
  readonly falls: number;
}

/** The faults of a book that make it unreadable, by row from 0; empty where it can be reduced. */
export function bookFaults(rows: readonly BookRow[]): { readonly row: number; readonly fault: BookFault }[] {
  return rows.flatMap((row, index) => {
    const fault = rowFault(row, index, rows.length);
    return fault === null ? [] : [{ row: index, fault }];
  });
}

function rowFault(row: BookRow, index: number, count: number): BookFault | null {
  const given = [row.backsight, row.intermediate, row.foresight].filter((reading) => reading !== undefined);
  if (given.length === 0) return "no-reading";
  if (!given.every(Number.isFinite)) return "not-a-number";
  if (row.intermediate !== undefined && given.length > 1) return "intermediate-beside-another";
  const alone = given.length === 1;
  if (index === 0) return row.backsight !== undefined && alone ? null : "starts-without-backsight";
  if (index === count - 1) return row.foresight !== undefined && alone ? null : "ends-without-foresight";
  if (row.intermediate !== undefined || !alone) return null;
  return row.backsight === undefined ? "foresight-alone" : "backsight-alone";
}

/**
 * Reduce by rise and fall: each reading less the one before it from the same set-up, added up from `start`.
 * Null where the book has faults. Heights in metres. Method: the trade's two ways of booking, PRACTICE.
 */
export function reduceByRiseAndFall(rows: readonly BookRow[], start: number): ReducedBook | null {
  if (rows.length < 2 || bookFaults(rows).length > 0) return null;
  const out: ReducedRow[] = [];
  let level = start;
  let setUp = 1;
  let before = rows[0]!.backsight!;
  let collimation = start + before;
  rows.forEach((row, index) => {
    const reading = index === 0 ? null : (row.foresight ?? row.intermediate)!;
    const rise = reading === null ? null : before - reading;
    level += rise ?? 0;
    out.push({ point: row.point, rise, level, collimation, setUp });
    before = row.backsight ?? reading ?? before;
    if (index > 0 && row.backsight !== undefined) {
      setUp += 1;
      collimation = level + row.backsight;
    }
  });
  return summed(rows, out, setUp);
}

/** Reduce by height of collimation: line of sight = level + backsight; level = line of sight less reading. */
export function reduceByCollimation(rows: readonly BookRow[], start: number): ReducedBook | null {
  if (rows.length < 2 || bookFaults(rows).length > 0) return null;
  const out: ReducedRow[] = [];
  let setUp = 0;
  let collimation = 0;
  rows.forEach((row, index) => {
    const reading = row.foresight ?? row.intermediate;
    const level = reading === undefined ? start : collimation - reading;
    const rise = index === 0 ? null : level - out[index - 1]!.level;
    const first = index === 0 ? { collimation: start + row.backsight!, setUp: 1 } : { collimation, setUp };
    out.push({ point: row.point, rise, level, ...first });
    if (row.backsight !== undefined) {
      setUp += 1;
      collimation = level + row.backsight;
    }
  });
  return summed(rows, out, setUp);
}

function summed(rows: readonly BookRow[], reduced: readonly ReducedRow[], setUps: number): ReducedBook {
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  return {
    rows: reduced,
    setUps,
    backsights: sum(rows.map(({ backsight }) => backsight ?? 0)),
    foresights: sum(rows.map(({ foresight }) => foresight ?? 0)),
    rises: sum(reduced.map(({ rise }) => Math.max(rise ?? 0, 0))),
    falls: sum(reduced.map(({ rise }) => Math.max(-(rise ?? 0), 0))),
  };
}
