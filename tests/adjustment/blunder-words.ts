// The table of blunders as text.

import { blunderRows, blunders, fair, taped } from "./blunder-plot.ts";

const word = (yes: boolean): string => (yes ? "yes" : "-").padStart(6);

/** One line a tape and two of counts, for each kind of blunder. */
export function blunderTable(): string {
  return `${blunders.map(([words, change]) => tableOf(words, blunderRows(taped(12), change))).join("\n\n")}\n`;
}

function tableOf(words: string, rows: ReturnType<typeof blunderRows>): string {
  return [
    words,
    "tape     length      by  sigmas  redund.  found  among  first  alone",
    ...rows.map(
      ({ tape, length, by, sigmas, redundancy, found, among, first, alone }) =>
        `${tape.padEnd(7)} ${length.toFixed(3).padStart(7)} ${by.toFixed(3).padStart(7)} ${sigmas.toFixed(1).padStart(7)} ${redundancy.toFixed(2).padStart(8)} ${word(found)} ${word(among)} ${word(first)} ${word(alone)}`,
    ),
    countsOf("all", rows),
    countsOf("over 6 sigma, redundancy 0.3 or more", rows.filter(fair)),
  ].join("\n");
}

function countsOf(group: string, rows: ReturnType<typeof blunderRows>): string {
  const share = (what: "found" | "among" | "first" | "alone") => rows.filter((row) => row[what]).length;
  return `${group}: ${rows.length} tried, ${share("found")} found, ${share("among")} with the tape among the suspects, ${share("first")} first, ${share("alone")} alone`;
}
