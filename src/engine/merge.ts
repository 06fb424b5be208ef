// Several checks as one: counts added, rules listed once.

import { type Report, type Verdict, verdictOrder } from "../model/finding.ts";
import type { Checked } from "./check.ts";
import { countVerdicts } from "./weigh.ts";

/** Counts of several rules, added. */
export function addCounts(counts: readonly Readonly<Record<Verdict, number>>[]): Readonly<Record<Verdict, number>> {
  const sum = { ...countVerdicts([], 0) };
  for (const count of counts) for (const verdict of verdictOrder) sum[verdict] += count[verdict];
  return sum;
}

/** Rules of several checks, each once. */
export function mergeRules(checks: readonly Checked[]): Report["rules"] {
  const byRule = new Map<string, Report["rules"][number]>();
  for (const rule of checks.flatMap((one) => one.rules)) {
    const before = byRule.get(rule.rule);
    byRule.set(rule.rule, before ? { ...rule, counts: addCounts([before.counts, rule.counts]) } : rule);
  }
  return [...byRule.values()];
}
