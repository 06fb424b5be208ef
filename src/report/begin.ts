// The sentence under the head that tells a newcomer where to begin.

import type { Finding } from "../model/finding.ts";
import { clean, sentence } from "./clean.ts";
import type { Numbered } from "./grouping.ts";

/**
 * `Begin with 1: move heap "stone drop" 5.10 m to the south, ...`; empty where nothing is told that can be begun with. A
 * survey that disagrees with itself goes before all else: what is dangerous may only look so, or not look so, because of it.
 */
export function beginWords(told: readonly Numbered[]): string {
  const wrong = told.find(({ group, finding }) => group === "fails" && isOfSurvey(finding));
  const step = wrong ? firstStep(wrong.finding) : "";
  if (wrong && step !== "")
    return `Begin with ${wrong.number}: ${step.replace(/\.$/, "")}; every other answer hangs on it.`;
  return beginWithDanger(told);
}

/** Whether a finding is of the measurements themselves: the whole of them, or a run of levels. */
function isOfSurvey({ features: [thing] }: Finding): boolean {
  return thing?.kind === "survey" || thing?.kind === "level run";
}

function beginWithDanger(told: readonly Numbered[]): string {
  const first = told.find(({ group }) => group === "hurt") ?? told.find(({ group }) => group === "fails");
  if (!first) return "";
  const step = firstStep(first.finding);
  return step === "" ? "" : `Begin with ${first.number}${whose(first.finding, step)}: ${step}`;
}

/** The thing that it is about, where the step does not name it. */
function whose({ features: [thing] }: Finding, step: string): string {
  const name = clean(thing?.name ?? "");
  return !thing || name === "" || step.includes(`"${name}"`) ? "" : ` (${clean(thing.kind)} "${name}")`;
}

/** The first remedy without its amounts, else whom to ask, else what to measure. */
function firstStep(finding: Finding): string {
  const [remedy] = finding.remedies;
  if (remedy) return lower(sentence(firstSentence(clean(remedy.words)).replace(amounts, "")));
  const who = clean(finding.defers_to ?? "");
  return who === "" ? "" : sentence(`ask ${who}`).replace(/^A/, "a");
}

/** ` (12.00 m would just do, 12.12 m to be sure)`, `: 0.26 m more would just do, 0.28 m to be sure`. */
const amounts = /(?: \([^()]*\b(?:to be sure|will do)\)|: [^:]*\b(?:to be sure|will do))(?=\.?$)/;

function firstSentence(words: string): string {
  return /^.*?[.;](?=\s|$)/.exec(words)?.[0].replace(/[.;]$/, "") ?? words;
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
