// Invented reports made of the invented findings: a whole one, a quiet one, one of two plans.

import type { Finding, Report, Verdict } from "../../src/model/finding.ts";
import { fails, hurt, others, quiet } from "./invented-findings.ts";

export { found, invented, wanted } from "./invented-findings.ts";

const noCounts: Readonly<Record<Verdict, number>> = {
  "not-met": 0,
  undecided: 0,
  "not-given": 0,
  departure: 0,
  "no-fault-seen": 0,
  met: 0,
  "does-not-bear": 0,
};

const findings: readonly Finding[] = [...others, ...fails, ...quiet, ...hurt];

function countsOf(rule?: string): Readonly<Record<Verdict, number>> {
  const counts = { ...noCounts };
  for (const finding of findings) if (rule === undefined || finding.rule === rule) counts[finding.verdict] += 1;
  return counts;
}

const ruleIds = [...new Set(findings.map((finding) => finding.rule))].sort();

/** The whole of it: one plan, three stages. */
export const inventedReport: Report = {
  sightrail: 1,
  as_of: "2026-11-25",
  place: ["england"],
  plans: [
    {
      file: "garth.yaml",
      title: "Heather Garth, lower yard",
      stages: ["now", "yard", "finished"],
      stage: null,
      features: 31,
    },
  ],
  options: [],
  counts: countsOf(),
  rules: [
    ...ruleIds.map((rule) => ({ rule, title: `What ${rule.replace("/", " ")} asks`, counts: countsOf(rule) })),
    { rule: "drains/tank-too-deep", title: "A tank set so deep that its lid is out of reach", counts: noCounts },
  ],
  findings,
  needs: [
    {
      path: "services/field line/height",
      asks: 'how high wire "field line" hangs, in writing from its owner',
      unit: "m",
      waits: ["separation/wire-over-work"],
      stakes: "safety",
      reason: "missing",
      at: { file: "garth.yaml", path: "services/field line", line: 88, column: 3 },
    },
    {
      path: "septic_tanks/tank/winter_level",
      asks: 'the winter water level at tank "tank"',
      unit: "m",
      waits: ["drains/tank-floats", "drains/tank-too-deep"],
      stakes: "damage",
      reason: "missing",
      at: null,
    },
    {
      path: "none/gas",
      asks: "whether there is gas on the plot, stored or piped",
      unit: "",
      waits: ["separation/gas-near-drain"],
      stakes: "safety",
      reason: "unsaid",
      at: null,
    },
  ],
  problems: [
    {
      code: "decimal-comma",
      file: "garth.yaml",
      line: 14,
      column: 12,
      expected: "a length such as 3.6 (metres), 450 mm, 12 ft or 6 ft 4 in",
      got: '"3,6"',
      hint: "write a point, not a comma: 3.6",
    },
    {
      code: "unknown-name",
      file: "gates/lane.yaml",
      line: 7,
      column: 9,
      expected: "the name of a peg",
      got: '"P 13\u001b[0m"',
      hint: 'was "P3" meant?',
    },
  ],
  not_checked: ["strength of the lane bridge", "ground below 0.5 m", "who owns the verge", "permits"],
  assumed: [
    "what is built comes within 20 mm of the plan (common practice)",
    "each tape is read and held to 5 mm and 0.2 mm a metre (common practice)",
  ],
};

/** A report with nothing in it to tell. */
export const quietReport: Report = {
  ...inventedReport,
  place: [],
  counts: { ...noCounts, met: 2 },
  rules: [],
  findings: quiet.slice(6, 8),
  needs: [],
  problems: [],
  not_checked: [],
  assumed: [],
};

/** Two plans in one report, one stage of the first. */
export const twoPlans: Report = {
  ...inventedReport,
  options: ["wider gate", "wall lowered"],
  plans: [
    {
      file: "garth.yaml",
      title: "Heather Garth, lower yard",
      stages: ["now", "yard", "finished"],
      stage: "yard",
      features: 31,
    },
    { file: "upper/fold.yaml", title: "The upper fold", stages: ["finished"], stage: null, features: 4 },
  ],
};
