// Cautions: each printed once in a report, beside the most serious finding that carries it. None is dropped for a thing that is in the plan.

import type { Finding, Report } from "../model/finding.ts";
import { capital, clean } from "./clean.ts";
import type { Numbered } from "./grouping.ts";

export interface Cautions {
  /** Cautions to print with the finding of this number. */
  readonly with: ReadonlyMap<number, readonly string[]>;
  /** Cautions of findings that are not told one by one (met, screened, asked for as a need), by what they are about. */
  readonly left: readonly CautionsAbout[];
}

/** Cautions about one sort of thing, in the order in which they came up. */
export interface CautionsAbout {
  readonly about: string;
  readonly cautions: readonly string[];
}

/** Names of the areas of rules, as a heading of their cautions; others go by their own name. */
const areaWords: Readonly<Record<string, string>> = {
  access: "Gates, ways",
  runoff: "Rain water",
  separation: "Near others",
  works: "The works",
  ground: "Levels",
  survey: "Measuring",
};

const stakesOrder = { safety: 0, damage: 1, nuisance: 2 } as const;

/** Deals every caution to the most serious told finding that carries it, or to the foot of the report. */
export function dealCautions(report: Report, told: readonly Numbered[]): Cautions {
  const printed = new Set<string>();
  const dealt = new Map<number, string[]>();
  const bySeriousness = [...told].sort(
    (a, b) => stakesOrder[a.finding.stakes] - stakesOrder[b.finding.stakes] || a.number - b.number,
  );
  for (const { number, finding, also } of bySeriousness) {
    const fresh = [finding, ...also].flatMap((one) => freshOf(one, printed));
    if (fresh.length > 0) dealt.set(number, fresh);
  }
  const failing = new Set(told.filter(({ group }) => !faultless.has(group)).map(({ finding }) => aboutOf(finding)));
  const left = new Map<string, string[]>();
  // What is about things that fail comes first, and within that what can hurt somebody.
  const byNeed = report.findings
    .filter(bearsOnPeople)
    .map((finding) => ({ finding, rank: (failing.has(aboutOf(finding)) ? 0 : 3) + stakesOrder[finding.stakes] }))
    .sort((a, b) => a.rank - b.rank);
  for (const { finding } of byNeed) {
    const about = aboutOf(finding);
    left.set(about, [...(left.get(about) ?? []), ...freshOf(finding, printed)]);
  }
  const said = new Set([...dealt.values()].flat().flatMap(sentencesOf));
  return { with: dealt, left: [...left].flatMap(([about, cautions]) => unsaidOf(about, cautions, { printed, said })) };
}

/** Groups that say nothing of a failure. */
const faultless: ReadonlySet<string> = new Set(["unpublished", "departure", "missing"]);

interface Said {
  readonly printed: ReadonlySet<string>;
  /** Sentences that stand on the page already; added to. */
  readonly said: Set<string>;
}

function unsaidOf(about: string, cautions: readonly string[], { printed, said }: Said): readonly CautionsAbout[] {
  const rest = cautions
    .filter((caution) => !saidWithMore(caution, printed))
    .map((caution) => freshSentences(caution, said))
    .filter((caution) => caution !== "");
  return rest.length === 0 ? [] : [{ about, cautions: rest }];
}

const sentencesOf = (caution: string): readonly string[] => caution.split(/(?<=\.) (?=[A-Z])/).map(closed);
const closed = (sentence: string) => (sentence.endsWith(".") ? sentence : `${sentence}.`);

/** A caution without the sentences that stand on the page word for word. */
function freshSentences(caution: string, said: Set<string>): string {
  const fresh = sentencesOf(caution).filter((sentence) => !said.has(sentence));
  for (const sentence of fresh) said.add(sentence);
  return fresh.join(" ");
}

function aboutOf({ rule }: Finding): string {
  const area = clean(rule.split("/")[0] ?? "");
  return Object.hasOwn(areaWords, area) ? (areaWords[area] ?? area) : capital(area);
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
