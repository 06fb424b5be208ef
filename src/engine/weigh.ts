// Order and number of findings: what can hurt first, then by verdict; every verdict counted.

import type { Stakes } from "../model/card.ts";
import { type Finding, type Verdict, verdictOrder } from "../model/finding.ts";

const stakesOrder: readonly Stakes[] = ["safety", "damage", "nuisance"];

/** Findings in order: what can hurt first, then by verdict, rule and features. */
export function byWeight(findings: readonly Finding[]): readonly Finding[] {
  return findings
    .map((finding) => ({ finding, weight: weightOf(finding), name: nameOf(finding) }))
    .sort((a, b) => a.weight - b.weight || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
    .map(({ finding }) => finding);
}

function weightOf({ stakes, verdict }: Finding): number {
  return stakesOrder.indexOf(stakes) * verdictOrder.length + verdictOrder.indexOf(verdict);
}

function nameOf({ rule, features, wanted, stage }: Finding): string {
  return [rule, ...features.map((feature) => feature.name), wanted?.limit ?? "", stage].join("\n");
}

/** Counts by verdict, with every verdict present. */
export function countVerdicts(findings: readonly Finding[], notBearing: number): Readonly<Record<Verdict, number>> {
  const counts = Object.fromEntries(verdictOrder.map((verdict) => [verdict, 0])) as Record<Verdict, number>;
  for (const finding of findings) counts[finding.verdict] += 1;
  counts["does-not-bear"] += notBearing;
  return counts;
}
