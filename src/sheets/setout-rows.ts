// The table of the setting-out sheet.

import { degrees, digWithin, millimetres, runAndOffset } from "./peg-words.ts";
import type { Check, Pegged, SetOutWork } from "./pegged.ts";
import { printed } from "./two-ties.ts";

export type Cell = string | number;

export const columns = [
  "row",
  "feature",
  "peg",
  "east",
  "north",
  "baseline",
  "run",
  "left",
  "stand_at",
  "tape",
  "swing_from",
  "swing",
  "side",
  "cut_deg",
  "good_to_mm",
  "top",
  "dig_to",
  "bottom",
  "dig",
  "dig_good_to_mm",
  "check_to",
  "check",
  "look_again_over_mm",
];

type Filled = Readonly<Record<string, Cell>>;
const rowOf = (filled: Filled): readonly Cell[] => columns.map((name) => filled[name] ?? "");
const fixed = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** A corner: how to put it in, and how deep to dig there. */
export function pegRow(feature: string, { corner, ties, at, dig }: Pegged, { base }: SetOutWork): readonly Cell[] {
  const [run, left] = base ? runAndOffset(at, base) : [];
  return rowOf({
    row: corner.stands ? "stands" : "peg",
    feature,
    peg: corner.name,
    east: fixed(at[0], 3),
    north: fixed(at[1], 3),
    ...(base && run !== undefined && left !== undefined
      ? { baseline: `${base[0].name} to ${base[1].name}`, run: printed(run), left: printed(left) }
      : {}),
    ...(ties
      ? {
          stand_at: ties.marks[0].name,
          tape: printed(ties.lengths[0]),
          swing_from: ties.marks[1].name,
          swing: printed(ties.lengths[1]),
          side: ties.side,
          cut_deg: Number(degrees(ties.cut)),
          good_to_mm: millimetres(ties.within),
        }
      : {}),
    ...digCells(dig),
  });
}

function digCells(dig: Pegged["dig"]): Filled {
  if (dig === null) return {};
  const levels = {
    dig_to: dig.to,
    bottom: fixed(dig.bottom, 3),
    ...(dig.top === null ? {} : { top: fixed(dig.top, 3) }),
  };
  if (dig.depth === null) return levels;
  return { ...levels, dig: printed(dig.depth.value), dig_good_to_mm: millimetres(digWithin(dig.depth)) };
}

export function checkRow(feature: string, { from, to, is, length, most }: Check): readonly Cell[] {
  const row = is === "side" ? "check" : "diagonal";
  return rowOf({
    row,
    feature,
    peg: from,
    check_to: to,
    check: printed(length),
    look_again_over_mm: millimetres(most),
  });
}

/** Two marks that should still stand as they stood. */
export function markRow({ from, to, length, most }: Check): readonly Cell[] {
  return rowOf({
    row: "mark",
    peg: from,
    check_to: to,
    check: printed(length),
    look_again_over_mm: millimetres(most),
  });
}
