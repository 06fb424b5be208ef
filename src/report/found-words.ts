// The number of a finding in words: what was found, how sure, and how far off what is wanted.

import type { Finding } from "../model/finding.ts";
import { amount, difference, doubtWords, finer, nineteenInTwenty, scaleOf } from "./amounts.ts";
import { capital, clean } from "./clean.ts";
import { standingVerdict } from "./grouping.ts";

/** Standard uncertainties between what is found and what is wanted for 0.95 and for 0.999 (normal distribution, COMPUTED). */
const sureAt = { usual: 1.645, safety: 3.09 } as const;

/** `short by 28 mm`, `over by 0.20 m`, `0.45 m to spare`, or `good to ± 0.05 m; ± 0.02 m would decide`; empty where there is no number. */
export function marginWords(finding: Finding): string {
  const { found, wanted } = finding;
  const scale = scaleOf(finding);
  if (!scale || !found || !wanted || found.unit !== wanted.unit || !Number.isFinite(found.value)) return "";
  const { gap, side } = gapOf(found.value, wanted.value, wanted.sense);
  if (!Number.isFinite(gap)) return "";
  if (standingVerdict(finding) === "undecided" && finding.decided_by !== "method" && finding.decided_by !== "limit") {
    const needs = gap / (finding.stakes === "safety" ? sureAt.safety : sureAt.usual);
    const fine = finer(scale, nineteenInTwenty * found.doubt);
    if (needs < found.doubt && needs > 0)
      return `good to ± ${doubtWords(found.doubt, fine)}; ± ${difference(nineteenInTwenty * needs, fine, needs)} would decide`;
  }
  if (side === "met") return "";
  return `${side} by ${difference(gap, finer(scale, gap), Math.min(found.doubt, gap / 10))}`;
}

function gapOf(
  found: number,
  wanted: number | readonly [number, number],
  sense: string,
): { readonly gap: number; readonly side: "short" | "over" | "met" } {
  const [low, high] =
    typeof wanted === "number" ? (sense === "at_most" ? [-Infinity, wanted] : [wanted, Infinity]) : wanted;
  if (found < low) return { gap: low - found, side: "short" };
  if (found > high) return { gap: found - high, side: "over" };
  return { gap: Math.min(found - low, high - found), side: "met" };
}

/** The number in words, for those who do not see the mark line. */
export function foundWords(finding: Finding): string {
  const { found } = finding;
  const scale = scaleOf(finding);
  if (!scale || !found || !Number.isFinite(found.value)) return "";
  const name = clean(finding.reading);
  const bound = /^at (least|most)$/.test(found.method) ? `${found.method} ` : "";
  const doubt = found.doubt > 0 ? `, give or take ${doubtWords(found.doubt, scale)}, 19 times in 20` : "";
  const margin = marginWords(finding);
  return `${name === "" ? "Found" : capital(name)}: ${bound}${amount(found.value, scale, found.doubt)}${doubt}${margin === "" ? "" : `; ${margin}`}.`;
}
