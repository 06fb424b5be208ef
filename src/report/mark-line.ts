// The mark line: what was found, with its doubt, against what is wanted, on a line of ticks.
// `o` found, `(==o==)` its doubt 19 times in 20, `T` wanted; `<` and `>` where something goes on beyond the line.

import type { FoundValue, Wanted } from "../model/finding.ts";
import { nineteenInTwenty, scaleFor, type Scale } from "./amounts.ts";

/** Columns of the line on an ordinary page and on a wide one; a tick stands at every fifth. */
const columnsOfLine = { ordinary: 41, wide: 51 } as const;
/** A doubt wider than this many times the distance to what is wanted is cut at the ends of the line. */
const widestDoubt = 8;

/** Columns that stand for "goes on beyond this end". */
const beyond = { low: -1_000_000, high: 1_000_000 };

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

/** The line for a finding, or null where a number is missing or cannot be shown. Values in base units. */
export function markLine(
  found: FoundValue,
  wanted: Wanted,
  page: keyof typeof columnsOfLine = "ordinary",
): MarkLine | null {
  const targets = typeof wanted.value === "number" ? [wanted.value] : [...wanted.value];
  const numbers = [found.value, found.doubt, ...targets];
  if (wanted.unit !== found.unit || !numbers.every(Number.isFinite)) return null;
  const scale = scaleFor(found.unit, [found.value, ...targets]);
  const value = found.value * scale.factor;
  const half = Math.abs(nineteenInTwenty * found.doubt * scale.factor);
  const wantedAt = targets.map((target) => target * scale.factor);
  const reach = reachOf(value, half, wantedAt);
  const cells = columnsOfLine[page];
  const column = (x: number) => Math.round(((x - reach.low) / (reach.high - reach.low)) * (cells - 1));
  const row = ticks(cells);
  const spread = spreadOf(found, half, value);
  const place = column(value);
  drawDoubt(row, {
    low: spread.low === null ? beyond.low : column(spread.low),
    place,
    high: spread.high === null ? beyond.high : column(spread.high),
  });
  drawTargets(
    row,
    wantedAt.map((target) => apart(column(target), place, { side: target - value, cells })),
  );
  row[place] = "o";
  return { low: reach.low.toFixed(reach.decimals), marks: row.join(""), high: endWords(reach, scale) };
}

function endWords(reach: Reach, scale: Scale): string {
  const number = reach.high.toFixed(reach.decimals);
  return scale.unit === "" ? number : `${number} ${scale.unit}`;
}

/** Ends of the doubt; null where the value is only bounded on that side. */
function spreadOf(
  found: FoundValue,
  half: number,
  value: number,
): { readonly low: number | null; readonly high: number | null } {
  const method = found.method.replace("_", " ");
  return { low: method === "at most" ? null : value - half, high: method === "at least" ? null : value + half };
}

/** Round ends of the scale that hold what is found, what is wanted, and the doubt unless it is out of all proportion. */
function reachOf(value: number, half: number, targets: readonly number[]): Reach {
  const gap = Math.max(...targets.map((target) => Math.abs(target - value)), ...pairGap(targets));
  const shownHalf = gap > 0 ? Math.min(half, widestDoubt * gap) : half;
  const low = Math.min(value - shownHalf, ...targets);
  const high = Math.max(value + shownHalf, ...targets);
  const size = high - low || Math.abs(value) || 1;
  const step = roundStep(size / 10);
  const least = Math.floor(low / step + 1e-9) - 1;
  const most = Math.ceil(high / step - 1e-9) + 1;
  const decimals = Math.min(9, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  return { low: (least < 0 && low >= 0 ? 0 : least) * step, high: most * step, decimals };
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

/** A mark that would hide the `o` steps one column to its own side. */
function apart(
  target: number,
  place: number,
  { side, cells }: { readonly side: number; readonly cells: number },
): number {
  if (target !== place) return target;
  const moved = place + (side < 0 ? -1 : 1);
  return moved < 0 ? place + 1 : moved >= cells ? place - 1 : moved;
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
