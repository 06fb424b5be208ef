// The mark line: what was found, with its doubt, against what is wanted, on a line of ticks.
// `o` found, `(==o==)` its doubt 19 times in 20, `T` wanted; `<` and `>` where something goes on beyond the line.

import type { Finding } from "../model/finding.ts";
import { nineteenInTwenty, scaleOf, type Scale } from "./amounts.ts";

/** Columns of the line on an ordinary page and on a wide one; a tick stands at every fifth. */
const columnsOfLine = { ordinary: 41, wide: 51 } as const;
/** A doubt wider than this many times the distance to what is wanted is cut at the ends of the line. */
const widestDoubt = 8;

/** Differences below this part of the value are rounding. */
const rounding = 1e-9;
/** Numbers are kept to a millionth of their unit; nothing finer is shown. */
const finest = 1e-6;
/** Columns that stand for "goes on beyond this end". */
const beyond = { low: -1_000_000, high: 1_000_000 };

/** What a mark line is made from. */
export type MarkedFinding = Pick<Finding, "found" | "wanted" | "dimension" | "shown_in">;

export interface MarkLine {
  readonly low: string;
  readonly marks: string;
  readonly high: string;
}

interface Reach {
  readonly low: number;
  readonly high: number;
  readonly decimals: number;
}

/** The line for a finding, or null where a number is missing or cannot be shown. */
export function markLine(finding: MarkedFinding, page: keyof typeof columnsOfLine = "ordinary"): MarkLine | null {
  const { found, wanted } = finding;
  const scale = scaleOf(finding);
  if (!found || !wanted || !scale || wanted.unit !== found.unit) return null;
  const targets = [wanted.value].flat();
  if (![found.value, found.doubt, ...targets].every(Number.isFinite)) return null;
  const value = found.value * scale.factor;
  const half = Math.abs(nineteenInTwenty * found.doubt * scale.factor);
  const wantedAt = targets.map((target) => target * scale.factor);
  const reach = reachOf(value, half, wantedAt);
  if (!Number.isFinite(reach.high - reach.low)) return null;
  const marks = rowOf({ value, half, method: found.method, wantedAt }, reach, columnsOfLine[page]);
  return { low: reach.low.toFixed(reach.decimals), marks, high: endWords(reach, scale) };
}

interface Numbers {
  readonly value: number;
  readonly half: number;
  readonly method: string;
  readonly wantedAt: readonly number[];
}

function rowOf({ value, half, method, wantedAt }: Numbers, reach: Reach, cells: number): string {
  const column = (x: number) => Math.round(((x - reach.low) / (reach.high - reach.low)) * (cells - 1));
  const row = ticks(cells);
  const spread = spreadOf(method, half, value);
  const place = placeOf(value, wantedAt, { column, cells });
  drawDoubt(row, {
    low: spread.low === null ? beyond.low : column(spread.low),
    place,
    high: spread.high === null ? beyond.high : column(spread.high),
  });
  const targets = wantedAt.map((target) => apart(target, value, { column, place }));
  drawTargets(row, targets);
  row[place] = "o";
  return row.join("");
}

function endWords(reach: Reach, scale: Scale): string {
  const number = reach.high.toFixed(reach.decimals);
  return scale.unit === "" ? number : `${number} ${scale.unit}`;
}

/** Ends of the doubt; null where the value is only bounded on that side. */
function spreadOf(
  method: string,
  half: number,
  value: number,
): { readonly low: number | null; readonly high: number | null } {
  return { low: method === "at most" ? null : value - half, high: method === "at least" ? null : value + half };
}

/** Round ends of the scale that hold what is found, what is wanted, and the doubt unless it is out of all proportion. */
function reachOf(value: number, half: number, targets: readonly number[]): Reach {
  const gap = Math.max(...targets.map((target) => Math.abs(target - value)), ...pairGap(targets));
  const shownHalf = gap > 0 ? Math.min(half, widestDoubt * gap) : half;
  const low = Math.min(value - shownHalf, ...targets);
  const high = Math.max(value + shownHalf, ...targets);
  const size = sizeOf(high - low, value);
  const step = roundStep(size / 10);
  const least = Math.floor(low / step + 1e-9) - 1;
  const most = Math.ceil(high / step - 1e-9) + 1;
  const decimals = Math.min(9, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  return { low: (least < 0 && low >= 0 ? 0 : least) * step, high: most * step, decimals };
}

/** Length of the scale; a difference that is only rounding counts as none, and then the value itself, or 1, gives the size. */
function sizeOf(length: number, value: number): number {
  if (length > Math.max(Math.abs(value) * rounding, finest)) return length;
  return Math.abs(value) > finest ? Math.abs(value) : 1;
}

function pairGap(targets: readonly number[]): readonly number[] {
  const [first, second] = targets;
  return first !== undefined && second !== undefined ? [Math.abs(second - first)] : [];
}

/** The next 1, 2 or 5 with zeros. */
function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const lead = rough / power;
  return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
}

function ticks(cells: number): string[] {
  return Array.from({ length: cells }, (_, index) => (index % 5 === 0 ? "." : " "));
}

/** Where a mark would hide the `o` it steps one column to its own side; at an end of the line the `o` steps in. */
function apart(
  target: number,
  value: number,
  row: { readonly column: (x: number) => number; readonly place: number },
): number {
  const column = row.column(target);
  return column === row.place ? column + (target < value ? -1 : 1) : column;
}

/** The column of the `o`, kept off an end where a mark has to stand beyond it. */
function placeOf(
  value: number,
  targets: readonly number[],
  row: { readonly column: (x: number) => number; readonly cells: number },
): number {
  const place = row.column(value);
  const hidden = targets.filter((target) => row.column(target) === place);
  if (place === 0 && hidden.some((target) => target < value)) return 1;
  return place === row.cells - 1 && hidden.some((target) => target >= value) ? place - 1 : place;
}

function drawTargets(row: string[], targets: readonly number[]): void {
  for (const target of targets) if (target >= 0 && target < row.length) keepBracket(row, target);
}

/** Sets a `T`; a bracket that stood there moves one column outward, so that both are seen. */
function keepBracket(row: string[], target: number): void {
  const there = row[target];
  row[target] = "T";
  if (there === "(" && target > 0) row[target - 1] = "(";
  if (there === ")" && target < row.length - 1) row[target + 1] = ")";
}

function drawDoubt(row: string[], at: { readonly low: number; readonly place: number; readonly high: number }): void {
  if (at.low === at.place && at.high === at.place) return;
  const low = Math.max(0, Math.min(at.low, at.place - 1));
  const high = Math.min(row.length - 1, Math.max(at.high, at.place + 1));
  for (let index = low; index <= high; index++) row[index] = "=";
  row[low] = at.low < 0 ? "<" : "(";
  row[high] = at.high >= row.length ? ">" : ")";
}

/** Said once where an amount is told: what is printed first, what would just do and what is sure are three numbers. */
export function amountLegend(remedies: readonly { readonly words: string }[]): string {
  const isTold = remedies.some(({ words }) => /\bto be sure\b/.test(words));
  return isTold ? "Do: the first amount is the sure one, rounded up to what can be set out (50 mm; levels 5 mm)." : "";
}

/** The key to these lines; empty where there are none. */
export function markLegend(lines: readonly MarkLine[]): string {
  if (lines.length === 0) return "";
  const beyond = lines.some(({ marks }) => /[<>]/.test(marks)) ? "   < > goes on beyond the line" : "";
  return `( o ) what you have, give or take, 19 times in 20   T what is wanted${beyond}`;
}
