// Order and number of findings: what can hurt first, then by verdict; every verdict counted.

import type { Stakes } from "../model/card.ts";
import { type Finding, type Verdict, verdictOrder } from "../model/finding.ts";

const stakesOrder: readonly Stakes[] = ["safety", "damage", "nuisance"];

/** Order of findings: what can hurt first, then verdict, rule and features. */
export function byWeight(a: Finding, b: Finding): number {
  const weigh = (finding: Finding) =>
    [stakesOrder.indexOf(finding.stakes), verdictOrder.indexOf(finding.verdict)] as const;
  const [stakesA, verdictA] = weigh(a);
  const [stakesB, verdictB] = weigh(b);
  if (stakesA !== stakesB) return stakesA - stakesB;
  if (verdictA !== verdictB) return verdictA - verdictB;
  const name = (finding: Finding) =>
    [finding.rule, ...finding.features.map((feature) => feature.name), finding.wanted?.limit ?? "", finding.stage].join(
      "\n",
    );
  return name(a) < name(b) ? -1 : name(a) > name(b) ? 1 : 0;
}

/** Counts by verdict, with every verdict present. */
export function countVerdicts(findings: readonly Finding[], notBearing: number): Readonly<Record<Verdict, number>> {
  const counts = Object.fromEntries(verdictOrder.map((verdict) => [verdict, 0])) as Record<Verdict, number>;
  for (const finding of findings) counts[finding.verdict] += 1;
  counts["does-not-bear"] += notBearing;
  return counts;
}
