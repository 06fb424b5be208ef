// Prints the table of blunders: npx tsx tests/adjustment/print-blunders.ts

import { blunderRows, blunders, fair, taped } from "./blunder-plot.ts";

const word = (yes: boolean): string => (yes ? "yes" : "-").padStart(6);
for (const [words, change] of blunders) {
  const rows = blunderRows(taped(12), change);
  console.log(`\n${words}\ntape     length      by  sigmas  redund.  found  among  first  alone`);
  for (const { tape, length, by, sigmas, redundancy, found, among, first, alone } of rows)
    console.log(
      `${tape.padEnd(7)} ${length.toFixed(3).padStart(7)} ${by.toFixed(3).padStart(7)} ${sigmas.toFixed(1).padStart(7)} ${redundancy.toFixed(2).padStart(8)} ${word(found)} ${word(among)} ${word(first)} ${word(alone)}`,
    );
  for (const [group, some] of [
    ["all", rows],
    ["over 6 sigma, redundancy 0.3 or more", rows.filter(fair)],
  ] as const) {
    const share = (what: "found" | "among" | "first" | "alone") => some.filter((row) => row[what]).length;
    console.log(
      `${group}: ${some.length} tried, ${share("found")} found, ${share("among")} with the tape among the suspects, ${share("first")} first, ${share("alone")} alone`,
    );
  }
}
