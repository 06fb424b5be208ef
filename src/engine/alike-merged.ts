// Findings of one rule that say the same in several stages, as one.

import type { Finding } from "../model/finding.ts";

/**
 * Findings that say the same in several stages are one, though what stands around has changed. `abouts` are what each
 * is about: only findings about the same can say the same, and most are alone. `order` is that of the plan's stages.
 */
export function alikeMerged(
  findings: readonly Finding[],
  abouts: readonly string[],
  order: readonly string[],
): readonly Finding[] {
  const times = new Map<string, number>();
  for (const about of abouts) times.set(about, (times.get(about) ?? 0) + 1);
  const merged = new Map<string | Finding, Finding>();
  for (const [k, finding] of findings.entries()) {
    if (times.get(abouts[k] ?? "") === 1) {
      merged.set(finding, finding);
      continue;
    }
    const { fingerprint, verdict, found, wanted, sentence } = finding;
    const says = JSON.stringify([fingerprint, verdict, found, wanted, sentence]);
    const before = merged.get(says);
    const stages = [...new Set([...(before?.stages ?? []), ...finding.stages])].sort(
      (a, b) => order.indexOf(a) - order.indexOf(b),
    );
    merged.set(says, Object.assign(before ?? finding, { stage: stages[0] ?? finding.stage, stages }));
  }
  return [...merged.values()];
}
