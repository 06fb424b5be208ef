// Cautions: each printed once in a report, beside the most serious finding that carries it. None is dropped for a thing that is in the plan.

import type { Finding, Report } from "../model/finding.ts";
import { clean } from "./clean.ts";
import type { Numbered } from "./grouping.ts";

export interface Cautions {
  /** Cautions to print with the finding of this number. */
  readonly with: ReadonlyMap<number, readonly string[]>;
  /** Cautions of findings that are not told one by one (met, screened, asked for as a need). */
  readonly left: readonly string[];
}

const stakesOrder = { safety: 0, damage: 1, nuisance: 2 } as const;

/** Deals every caution to the most serious told finding that carries it, or to the foot of the report. */
export function dealCautions(report: Report, told: readonly Numbered[]): Cautions {
  const printed = new Set<string>();
  const dealt = new Map<number, string[]>();
  const bySeriousness = [...told].sort(
    (a, b) => stakesOrder[a.finding.stakes] - stakesOrder[b.finding.stakes] || a.number - b.number,
  );
  for (const { number, finding } of bySeriousness) {
    const fresh = freshOf(finding, printed);
    if (fresh.length > 0) dealt.set(number, fresh);
  }
  const left: string[] = [];
  for (const finding of report.findings) if (bearsOnPeople(finding)) left.push(...freshOf(finding, printed));
  return { with: dealt, left: left.filter((caution) => !saidWithMore(caution, printed)) };
}

/** Whether a finding that is only counted still has a caution to give: not for a hazard that is only asked after. */
function bearsOnPeople(finding: Finding): boolean {
  if (finding.verdict === "does-not-bear" || finding.reason === "unsaid") return false;
  return finding.verdict !== "not-given" || finding.stakes === "safety";
}

/** Whether another caution of the report begins with these very words. */
function saidWithMore(caution: string, printed: ReadonlySet<string>): boolean {
  return [...printed].some((other) => other !== caution && other.startsWith(`${caution} `));
}

function freshOf(finding: Finding, printed: Set<string>): string[] {
  const fresh: string[] = [];
  for (const caution of finding.cautions.map(clean)) {
    if (caution === "" || printed.has(caution)) continue;
    printed.add(caution);
    fresh.push(caution);
  }
  return fresh;
}
