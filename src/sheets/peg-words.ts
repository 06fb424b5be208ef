// The words of the setting-out sheet, in the order of the hand.

import type { Point } from "../model/reading.ts";
import type { SheetEntry } from "../model/sheet.ts";
import type { Dig } from "./dig-at.ts";
import type { Check, Pegged, SetOutWork } from "./pegged.ts";
import { distance, type Mark, nineteenInTwenty, printed } from "./two-ties.ts";

const metres = (length: number): string => printed(length).toFixed(2);

/** Whole millimetres, rounded up: a doubt is not made smaller by printing it. */
export const millimetres = (length: number): number => Math.ceil(1000 * length - 1e-9);

export const degrees = (angle: number): string => ((angle * 180) / Math.PI).toFixed(0);

/** One peg: where to stand, what to tape, how deep to dig, what to check. */
export function pegWords(
  { corner, ties, at, dig }: Pegged,
  checks: readonly Check[],
  { base }: SetOutWork,
): SheetEntry {
  const then = checks.map(
    (check) => `then check ${check.is === "diagonal" ? "the diagonal " : ""}to ${check.to} ${checkWords(check)}`,
  );
  if (corner.stands)
    return { words: [`${corner.name} stands already`, ...digWords(dig), ...then].join(", "), notes: digNotes(dig) };
  const along = base ? [`or by offset: ${offsetWords(at, base)}`] : [];
  if (ties === null)
    return {
      words: `Peg ${corner.name}: no two marks within the tape's reach that cut; put a mark nearer first`,
      notes: [...along, ...digNotes(dig)],
    };
  const [a, b] = ties.marks;
  const hand = [
    `Stand at ${a.name}, tape ${metres(ties.lengths[0])}`,
    `swing to ${metres(ties.lengths[1])} from ${b.name} on the ${ties.side} of ${a.name} to ${b.name}`,
    `peg ${corner.name}`,
    ...digWords(dig),
    ...then,
  ].join(", ");
  const good = `good to ± ${millimetres(ties.within)} mm; the tapes cut at ${degrees(ties.cut)} deg`;
  return { words: hand, notes: [...along, good, ...digNotes(dig)] };
}

/** `9.00, look again if out by more than 35 mm`. */
export function checkWords({ length, most }: Check): string {
  return `${metres(length)}, look again if out by more than ${millimetres(most)} mm`;
}

/** What two diagonals should show beside each other. */
export function differenceWords(
  [first, second]: readonly [string, string],
  { longer, most }: { readonly longer: number; readonly most: number },
): string {
  const by = longer === 0 ? "the same" : `${Math.abs(longer).toFixed(2)} ${longer > 0 ? "more" : "less"}`;
  return `Both diagonals: ${first} should read ${by}${longer === 0 ? " as" : " than"} ${second}; look again if that is out by more than ${millimetres(most)} mm`;
}

/** Half-width of a dig as it is printed: 2 u, and what the rounding of the depth adds. */
export function digWithin({ value, u }: { readonly value: number; readonly u: number }): number {
  return nineteenInTwenty * u + Math.abs(printed(value) - value);
}

function digWords(dig: Dig | null): readonly string[] {
  if (dig === null) return [];
  const { depth, to } = dig;
  if (depth === null) return [`${to} ${dig.bottom.toFixed(3)}`];
  const way =
    printed(depth.value) === 0 ? "no dig" : `${depth.value > 0 ? "dig" : "fill"} ${metres(Math.abs(depth.value))}`;
  return [`${way} ± ${digWithin(depth).toFixed(2)} to ${to} ${dig.bottom.toFixed(3)}`];
}

function digNotes(dig: Dig | null): readonly string[] {
  if (dig === null) return [];
  return [
    ...(dig.top === null ? [] : [`finished top ${dig.top.toFixed(3)}, ${(dig.top - dig.bottom).toFixed(3)} of layers`]),
    ...(dig.layerUnknown ? ["a layer has no thickness in the plan: what it takes comes off as well"] : []),
    ...(dig.depth === null ? ["no levels were taken round it: how deep to dig is not known"] : []),
  ];
}

/** Run along the baseline and offset to its left, metres. */
export function runAndOffset(at: Point, [from, to]: readonly [Mark, Mark]): readonly [number, number] {
  const length = distance(from.at, to.at);
  const [e, n] = [(to.at[0] - from.at[0]) / length, (to.at[1] - from.at[1]) / length];
  const [east, north] = [at[0] - from.at[0], at[1] - from.at[1]];
  return [east * e + north * n, north * e - east * n];
}

function offsetWords(at: Point, base: readonly [Mark, Mark]): string {
  const [run, left] = runAndOffset(at, base);
  return `run ${metres(run)}, ${left >= 0 ? "left" : "right"} ${metres(Math.abs(left))}`;
}
