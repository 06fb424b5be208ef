// Many checks that are each only just met: what that leaves of being right altogether.

import type { Finding } from "../model/finding.ts";

/** A check is only just met below this probability; above it a further check adds next to nothing. */
const farMet = 0.99;
/** Probability at which a limit counts as met. */
const met = 0.95;

/** How many met checks are only just met. */
export function onlyJustMet(findings: readonly Finding[]): number {
  return findings.filter(
    (finding) => finding.verdict === "met" && finding.probability !== null && finding.probability < farMet,
  ).length;
}

/** Chance that at least one of `count` independent checks is wrong, each right with probability 0.95: 1 - 0.95^n. */
export function chanceOfOneWrong(count: number): number {
  return 1 - met ** count;
}
