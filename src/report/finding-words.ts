// The words under a finding: why, who says so, what to do, what to mind. Each may be empty.

import type { Finding, NotGiven, RemedyFound, Report, Verdict } from "../model/finding.ts";
import { capital, clean, sentence } from "./clean.ts";
import { dateWords } from "./dates.ts";
import { standingVerdict } from "./grouping.ts";
import { requirementWords, wantedIsTold, whoSays, type PlaceNames } from "./standing-words.ts";

/** Doubt of what is decided by others is told down to this share. */
const leastShare = 0.1;

/** Why it is told: the stages, the chance, what carries the doubt, a departure that ran out, the other places. */
export function whyWords(finding: Finding, report: Report): string {
  return [
    beneathWords(finding),
    reasonWords(finding),
    stageWords(finding, report),
    chanceWords(finding),
    boundWords(finding),
    othersWords(finding),
  ]
    .filter((part) => part !== "")
    .join(" ");
}

function beneathWords(finding: Finding): string {
  const { beneath } = finding;
  if (!beneath) return "";
  const signer = clean(beneath.agreed_by) || "nobody named";
  const because = clean(beneath.because);
  const review = dateWords(beneath.review);
  if (beneath.expired) return `A departure agreed by ${signer} ran out on ${review}; it no longer counts.`;
  const beneathIt = beneath.verdict === "not-met" ? "It does not meet the limit" : "It is not shown to meet the limit";
  return `${beneathIt}. Agreed by ${signer}${because === "" ? "" : `, who says: ${because}`}. To be looked at again by ${review}.`;
}

const reasons: Readonly<Record<NotGiven, string>> = {
  missing: "",
  unsaid: "The plan does not say whether there is one. Silence is not a no.",
  "no-limit-here": "No figure is published for this place. Somebody there has to be asked.",
  "gave-up": "Our search went as far as it may and did not settle it. That is not a no and not a yes.",
};

/** Nothing where the sentence says it already. */
function reasonWords(finding: Finding): string {
  if (finding.verdict !== "not-given" || !finding.reason) return "";
  if (finding.reason === "no-limit-here" && /\bno published figure\b/.test(finding.sentence)) return "";
  return reasons[finding.reason];
}

function stageWords(finding: Finding, report: Report): string {
  const plan = report.plans.find((one) => one.file === finding.at[0]?.file) ?? report.plans[0];
  const all = plan?.stages ?? [];
  const stages = finding.stages.map(clean).filter((stage) => stage !== "");
  const option = finding.option === null ? "" : `In the option "${clean(finding.option)}".`;
  const where = stages.length === 0 || all.length < 2 ? "" : spanWords(stages, all);
  return [option, where].filter((part) => part !== "").join(" ");
}

/** Silent where a finding holds at every stage or only at the last: that is how a plan is read anyway. */
function spanWords(stages: readonly string[], all: readonly string[]): string {
  const lasting = stages.every((stage, index) => stage === clean(all[all.length - stages.length + index] ?? ""));
  if (stages.length >= all.length || (lasting && stages.length === 1)) return "";
  const names = stages.map((stage) => `"${stage}"`);
  if (names.length === 1) return `At stage ${names[0]} only.`;
  return lasting ? `From stage ${names[0]} on.` : `At stages ${names.slice(0, -1).join(", ")} and ${names.at(-1)}.`;
}

function chanceWords(finding: Finding): string {
  if (standingVerdict(finding) !== "undecided" || finding.probability === null) return "";
  const chance = Math.min(99, Math.max(1, Math.round(finding.probability * 100)));
  const asked = finding.stakes === "safety" ? "; where people can be hurt 999 in 1000 are asked for" : "";
  const by = finding.decided_by === "build" ? "Built as closely as is usual" : "As far as is known now";
  return `${finding.decided_by === "survey" ? "By your measurements" : by} it is met ${chance} times in 100${asked}.`;
}

function boundWords(finding: Finding): string {
  const kinked = finding.kinked ? "The doubt is larger on one side than on the other; the larger is used." : "";
  const searched = finding.found?.method === "searched" ? "Found by search, not by a formula." : "";
  return [searched, kinked].filter((part) => part !== "").join(" ");
}

const worse: ReadonlySet<Verdict> = new Set(["not-met", "undecided", "not-given"]);

/** The other things found with the same rule, without the names that the sentence has said already. */
function othersWords(finding: Finding): string {
  const own = new Set(finding.features.flatMap(({ kind, name }) => [clean(name), clean(`${kind} "${name}"`)]));
  const names = finding.others
    .filter(({ verdict }) => worse.has(verdict))
    .map(({ features }) =>
      features
        .map(clean)
        .filter((name) => name !== "" && !own.has(name))
        .join(" with "),
    )
    .filter((name) => name !== "");
  const distinct = [...new Set(names)].map((name) => (name.includes('"') ? name : `"${name}"`));
  if (distinct.length === 0) return "";
  const more = distinct.length > 3 ? ` and ${distinct.length - 3} more` : "";
  return `The same with ${distinct.slice(0, 3).join(", ")}${more}.`;
}

/** Who says so; what is wanted is put before it where the sentence has not said it. */
export function saysWords(finding: Finding, names: PlaceNames): string {
  const wanted = requirementWords(finding);
  const told = wanted === "" || wantedIsTold(finding);
  const says = whoSays(finding, names);
  return told || says === "" ? says : capital(`${wanted} is wanted. ${says}`);
}

/** What to do: what to measure again, then the remedies in the card's order, each a paragraph. */
export function doWords(finding: Finding, titles: ReadonlyMap<string, string>): readonly string[] {
  const again = againWords(finding);
  const remedies = finding.remedies.map(
    (remedy, index) => (index === 0 && again === "" ? "" : "Or: ") + remedyWords(remedy, titles),
  );
  return again === "" ? remedies : [again, ...remedies];
}

/** The words carry what is short and what makes it sure; what it would spoil is added where they do not say it. */
function remedyWords(remedy: RemedyFound, titles: ReadonlyMap<string, string>): string {
  const words = sentence(remedy.words);
  const spoiled = remedy.would_then_fail.filter((rule) => !remedy.words.includes(rule));
  if (spoiled.length === 0) return words;
  const names = spoiled.map((rule) => `"${clean(titles.get(rule) ?? rule)}"`);
  return `${words} But then this would no longer hold: ${names.join(", ")}.`;
}

function againWords(finding: Finding): string {
  if (standingVerdict(finding) !== "undecided" || finding.decided_by === "method") return "";
  const shares = finding.doubts.filter((doubt) => doubt.share >= leastShare).slice(0, 3);
  if (shares.length === 0) return "";
  const list = shares.map(
    (doubt) => `${clean(doubt.words) || clean(doubt.path)} (${shareWords(doubt.share)} of the doubt)`,
  );
  if (finding.decided_by === "build") {
    const built = list.map((words) => words.replace(/^building /, "")).join(", ");
    return `Allow more in the plan than is wanted, or build closer than is usual and say so under build. What counts is ${built}.`;
  }
  if (finding.decided_by === "limit") return `Get a closer figure than the table's: ${list.join(", ")}.`;
  return `Measure again, more closely: ${list.join(", ")}.`;
}

/** `63 parts in 100`; `all` where the rest rounds to nothing. */
function shareWords(share: number): string {
  const parts = Math.round(share * 100);
  return parts >= 100 ? "all" : `${parts} parts in 100`;
}

/** Who decides, where that is not the reader. */
export function decidesWords(finding: Finding): string {
  const who = clean(finding.defers_to ?? "");
  return who === "" ? "" : `Ask first: ${who}. They decide, not this sheet.`;
}
