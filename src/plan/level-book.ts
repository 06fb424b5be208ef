// Books levels by height of collimation, set-up by set-up, and spreads what the book misses at its close.

import type { LevelRun } from "../model/plan.ts";
import { child, textOf, type Node } from "./node.ts";
import { readNumber } from "./numbers.ts";
import type { Measuring } from "./measuring.ts";
import { difference, exact, scaled, sum, type Uncertain } from "./sway.ts";
import type { Troubles } from "./troubles.ts";
import { wordsOf } from "./troubles.ts";
import { swayLength } from "../model/quantity.ts";

/** One levelled point of the book. */
export interface Booked {
  readonly row: Node;
  readonly level: Uncertain;
}

export interface LevelBook {
  readonly booked: readonly Booked[];
  readonly runs: readonly LevelRun[];
  /** Misclosure of each run with the doubt of the known levels alone: what the staff read is what is tested. */
  readonly missed: readonly Uncertain[];
  /** Runs that come home to no known level: nothing shows a misread staff in them. */
  readonly open: readonly OpenRun[];
}

/** A run of levels that does not close. */
export type OpenRun = Pick<LevelRun, "from" | "to" | "place" | "setUps">;

interface Work {
  readonly measuring: Measuring;
  readonly troubles: Troubles;
  /** Levels of pegs given outside the book. */
  readonly given: ReadonlyMap<string, Uncertain>;
}

/** A row with its readings. */
interface Row {
  readonly node: Node;
  readonly words: string;
  readonly back: Uncertain | null;
  readonly between: Uncertain | null;
  readonly fore: Uncertain | null;
  readonly known: Uncertain | null;
}

/** What stands at a row, in words: a peg, a feature, a change point. */
export function rowWords(row: Node): string {
  const of = textOf(child(row, "of"));
  const at = textOf(child(row, "at"));
  if (of !== null) return of;
  if (at !== null) return at;
  if (child(row, "change")?.data === true) return "the change point";
  return textOf(child(row, "name")) ?? textOf(child(row, "spot")) ?? "a spot";
}

/**
 * Height of collimation: H = level + backsight; level = H - sight; a run closes on a known point and its miss m over
 * n set-ups is taken out of every level read from set-up k as k m / n. Usual booking of the trade (MEMORY, any
 * textbook of levelling). Every level keeps the sway of each staff reading through all of this.
 */
export function bookLevels(nodes: readonly Node[], work: Work): LevelBook {
  const rows = nodes.map((node) => readRow(node, work));
  const known = new Map([...work.given, ...knownLevels(rows)]);
  const runs = splitRuns(rows, known);
  const done = runs.map((run) => bookRun(run, known, work));
  return {
    booked: done.flatMap((run) => run.booked),
    runs: done.flatMap((run) => run.closing ?? []),
    missed: done.flatMap((run) => run.missed ?? []),
    open: done.flatMap((run) => run.open ?? []),
  };
}

function readRow(node: Node, { measuring, troubles }: Work): Row {
  const words = rowWords(node);
  const sight = (key: string, name: string): Uncertain | null => {
    const written = readNumber(child(node, key), "length", troubles);
    return written === null
      ? null
      : measuring.observed(written, `the ${name} on ${words}`, { name: "levelling", dimension: "length" });
  };
  const given = readNumber(child(node, "level"), "length", troubles);
  const known = given === null ? null : measuring.stated(given, `the level of ${words}`, "length", "survey");
  return {
    node,
    words,
    back: sight("bs", "backsight"),
    between: sight("is", "sight"),
    fore: sight("fs", "foresight"),
    known,
  };
}

/** Levels given in the book, by peg. */
function knownLevels(rows: readonly Row[]): ReadonlyMap<string, Uncertain> {
  return new Map(rows.flatMap((row) => (row.known === null ? [] : [[row.words, row.known] as const])));
}

/** A run begins at a backsight that no foresight stands beside, and goes on until the next such. */
function splitRuns(rows: readonly Row[], known: ReadonlyMap<string, Uncertain>): readonly (readonly Row[])[] {
  const runs: Row[][] = [];
  for (const row of rows) {
    const begins = row.back !== null && (row.fore === null || known.has(row.words));
    const last = runs.at(-1);
    if (last === undefined || begins) {
      if (last !== undefined && row.fore !== null) last.push({ ...row, back: null });
      runs.push([begins && row.fore !== null ? { ...row, fore: null } : row]);
    } else last.push(row);
  }
  return runs;
}

interface Read {
  readonly row: Row;
  readonly level: Uncertain;
  readonly setUp: number;
  readonly closes: boolean;
}

interface BookedRun {
  readonly booked: readonly Booked[];
  readonly closing: LevelRun | null;
  readonly missed: Uncertain | null;
  readonly open: OpenRun | null;
}

function bookRun(rows: readonly Row[], known: ReadonlyMap<string, Uncertain>, work: Work): BookedRun {
  const [first] = rows;
  const start = first === undefined ? undefined : known.get(first.words);
  if (first === undefined || first.back === null || start === undefined) {
    if (first !== undefined) reportNoStart(first, work);
    return { booked: [], closing: null, missed: null, open: null };
  }
  const read = readHeights(rows, start, known);
  const close = read.findLast((one) => one.closes);
  const end = close && known.get(close.row.words);
  const miss = close && end ? difference(close.level, end) : exact(0);
  const setUps = close?.setUp ?? 0;
  const levels = read
    .filter((one) => child(one.row.node, "change")?.data !== true)
    .map((one) => {
      const share = setUps === 0 ? 0 : Math.min(one.setUp, setUps) / setUps;
      return { row: one.row.node, level: one.closes && end ? end : difference(one.level, scaled(miss, share)) };
    });
  const booked = [{ row: first.node, level: start }, ...levels];
  if (!close || !end) return { booked, closing: null, missed: null, open: openRun(first, read) };
  const closing = {
    from: first.words,
    to: close.row.words,
    place: close.row.node.place,
    setUps,
    misclosure: miss.value,
    u: swayLength(miss.sway),
  };
  // Where it closes on its own start, the doubt of that one level falls out of the miss.
  return { booked, closing, missed: { value: miss.value, sway: difference(start, end).sway }, open: null };
}

function openRun(first: Row, read: readonly Read[]): OpenRun | null {
  const last = read.at(-1);
  return last ? { from: first.words, to: last.row.words, place: first.node.place, setUps: last.setUp } : null;
}

/** Levels read from each set-up in turn. A foresight on a known point closes the run. */
function readHeights(rows: readonly Row[], start: Uncertain, known: ReadonlyMap<string, Uncertain>): readonly Read[] {
  const read: Read[] = [];
  let height = sum(start, rows[0]?.back ?? exact(0));
  let setUp = 1;
  for (const row of rows.slice(1)) {
    const sight = row.fore ?? row.between;
    if (sight === null) continue;
    const level = difference(height, sight);
    read.push({ row, level, setUp, closes: row.fore !== null && row.back === null && known.has(row.words) });
    if (row.back === null || row.fore === null) continue;
    height = sum(level, row.back);
    setUp += 1;
  }
  return read;
}

function reportNoStart(row: Row, { troubles }: Work): void {
  troubles.report(row.node, {
    code: "missing-key",
    expected: "a level book that starts with a backsight on a point of known level",
    got: wordsOf(row.node.data),
    hint: "write the level of the first point, and bs for the sight to it: {at: P1, bs: 1.412, level: 100.000}",
  });
}
