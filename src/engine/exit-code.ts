// What a report means for whoever runs it from a script.

import type { Report } from "../model/finding.ts";

/**
 * Exit code of a report: 2 if anything was left out, 1 if a `must` fails (departed and not expired: no) or a safety
 * `must` is not shown to be met, else 0.
 */
export function exitCode(report: Report): 0 | 1 | 2 {
  if (report.problems.length > 0) return 2;
  const fails = report.findings.some((finding) => {
    if (finding.grade !== "must") return false;
    if (finding.verdict === "not-met") return true;
    if (finding.verdict === "departure") return finding.beneath?.expired === true;
    return finding.stakes === "safety" && (finding.verdict === "undecided" || finding.verdict === "not-given");
  });
  return fails ? 1 : 0;
}
