// The order in which findings are told: by what they do to a person. One numbering for the text, the drawing and the page.

import { alikeKeys } from "./alike.ts";
import { verdictOrder, type Finding, type Report, type Verdict } from "../model/finding.ts";

export type Group =
  | "hurt"
  | "fails"
  | "better"
  | "tape"
  | "build"
  | "search"
  | "rough"
  | "unpublished"
  | "missing"
  | "departure";

/** Order of the groups on the page. */
export const groupOrder: readonly Group[] = [
  "hurt",
  "fails",
  "better",
  "tape",
  "build",
  "search",
  "rough",
  "unpublished",
  "missing",
  "departure",
];

export const groupHeading: Readonly<Record<Group, string>> = {
  hurt: "CAN HURT SOMEBODY",
  fails: "WILL NOT WORK",
  better: "COULD BE BETTER",
  tape: "YOUR TAPE CANNOT SAY",
  build: "TOO FINE TO BUILD BY",
  search: "OUR SEARCH CANNOT SAY",
  rough: "THE TABLE IS TOO ROUGH TO SAY",
  unpublished: "NO FIGURE IS PUBLISHED HERE",
  missing: "NOT IN THE PLAN",
  departure: "DEPARTURE, AGREED BY SOMEBODY",
};

/** A finding with its number on the page. */
export interface Numbered {
  readonly number: number;
  readonly group: Group;
  readonly finding: Finding;
  /** Findings that are told in the same entry: other figures for the same thing, other things with the same open question. */
  readonly also: readonly Finding[];
}

/** The verdict that counts: what lies beneath a departure that has run out, else the finding's own. */
export function standingVerdict(finding: Finding): Verdict {
  return finding.verdict === "departure" && finding.beneath?.expired ? finding.beneath.verdict : finding.verdict;
}

/** The findings that are told one by one, grouped and numbered from 1. What is met or does not bear is only counted. */
export function numbered(report: Report): readonly Numbered[] {
  const waiting = new Set(report.needs.flatMap((need) => need.waits));
  const told: { readonly group: Group; readonly finding: Finding; readonly index: number }[] = [];
  report.findings.forEach((finding, index) => {
    const group = groupOf(finding, waiting);
    if (group) told.push({ group, finding, index });
  });
  told.sort((a, b) => rank(a.group) - rank(b.group) || weight(a.finding) - weight(b.finding) || a.index - b.index);
  return folded(told).map((one, index) => ({ number: index + 1, ...one }));
}

/** The rule and the sentence that stand under a number, or null. */
export function toldUnder(number: number, report: Report): { readonly rule: string; readonly sentence: string } | null {
  return numbered(report).find((one) => one.number === number)?.finding ?? null;
}

/** Entries with their like beneath the first of them. */
function folded(
  told: readonly { readonly group: Group; readonly finding: Finding }[],
): readonly Pick<Numbered, "group" | "finding" | "also">[] {
  const entries: { readonly group: Group; readonly finding: Finding; readonly also: Finding[] }[] = [];
  const byKey = new Map<string, Finding[]>();
  const solvedFirst = new Set<string>();
  for (const { group, finding } of told) {
    const keys = alikeKeys(finding, solvedFirst);
    const before = keys.map((key) => byKey.get(key)).find((one) => one !== undefined);
    if (before) {
      before.push(finding);
      continue;
    }
    const also: Finding[] = [];
    entries.push({ group, finding, also });
    for (const key of keys) byKey.set(key, also);
  }
  return entries;
}

function rank(group: Group): number {
  return groupOrder.indexOf(group);
}

/** What must be comes before what should be, and within that the worse verdict. */
function weight(finding: Finding): number {
  return (finding.grade === "must" ? 0 : 100) + verdictOrder.indexOf(standingVerdict(finding));
}

function groupOf(finding: Finding, waiting: ReadonlySet<string>): Group | null {
  const verdict = standingVerdict(finding);
  if (verdict === "departure") return "departure";
  if (verdict === "not-given") return silentGroup(finding, waiting);
  if (verdict !== "not-met" && verdict !== "undecided") return null;
  if (dangerous(finding)) return "hurt";
  if (verdict === "undecided") return undecidedGroup(finding);
  return finding.grade === "should" || finding.stakes === "nuisance" ? "better" : "fails";
}

function dangerous(finding: Finding): boolean {
  return finding.stakes === "safety" && finding.grade === "must";
}

function undecidedGroup(finding: Finding): Group {
  if (finding.decided_by === "build") return "build";
  if (finding.decided_by === "limit") return "rough";
  return finding.decided_by === "method" ? "search" : "tape";
}

/**
 * What the plan does not say is told once, as a need, first where somebody can be hurt; it is a finding of its own where
 * there is something to do about it, or no need tells it.
 */
function silentGroup(finding: Finding, waiting: ReadonlySet<string>): Group | null {
  if (finding.reason === "unsaid") return waiting.has(finding.rule) ? null : "missing";
  if (finding.reason === "missing" && finding.remedies.length === 0 && waiting.has(finding.rule)) return null;
  if (dangerous(finding)) return "hurt";
  if (finding.reason === "gave-up") return "search";
  if (finding.reason === "no-limit-here") return "unpublished";
  return waiting.has(finding.rule) ? null : "missing";
}
