// The one place that words a finding: the card's fault, the measure's phrase, and what is wanted.

import type { Card } from "../model/card.ts";
import { featureWords } from "../model/plan.ts";
import { propertyWords, statedPhrase } from "../model/property-words.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure, Parameters, Subject } from "../model/reading.ts";
import { words, wordsApart } from "../model/wording.ts";
import type { Outcome } from "./evaluate.ts";
import type { JudgedPlace } from "./worst-place.ts";
import { type LiveRequirement } from "./requirement.ts";

/** Numbers a requirement names, at the plan's own values: one, or two for a band. */
export function wantedValues(requirement: LiveRequirement, read: Read): readonly number[] {
  if (requirement.sense === "between") return [requirement.low.value(read), requirement.high.value(read)];
  return [requirement.bound.value(read)];
}

/** `at least 1.20 m`, `at most 15 %`, `between 2.5 % and 6 %`, `1 in 80 or steeper`. */
function wantedWords(requirement: LiveRequirement, texts: readonly string[]): string {
  if (requirement.sense === "between") return `between ${texts[0] ?? ""} and ${texts[1] ?? ""}`;
  const [text = ""] = texts;
  const isAtLeast = requirement.sense === "at_least";
  if (/^1 in [\d.]+$/.test(text)) return `${text} or ${isAtLeast ? "steeper" : "flatter"}`;
  return `${isAtLeast ? "at least" : "at most"} ${text}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Fills a measure's phrase: roles by name, `found` by the number with its unit, parameters by their words. */
export function phraseWith(measure: Measure, subject: Subject, found: string, parameters: Parameters = {}): string {
  const stated = measure.phrase.includes("{property}") ? statedPhrase(String(parameters["property"])) : null;
  return filled(stated ?? measure.phrase, { subject, found, parameters });
}

interface Filling {
  readonly subject: Subject;
  readonly found: string;
  readonly parameters: Parameters;
}

function filled(phrase: string, { subject, found, parameters }: Filling): string {
  return phrase.replace(/\{(\w+)\}/g, (whole, slot: string) => {
    if (slot === "found") return found;
    const feature = subject[slot];
    if (feature) return featureWords(feature);
    return parameters[slot] === undefined ? whole : propertyWords(String(parameters[slot]));
  });
}

/** The unit a reading is printed in: the card's `shown`, else the measure's own. */
export function shownOf(outcome: Outcome): string | undefined {
  const asked = parametersOf(outcome)["shown"];
  return typeof asked === "string" && asked !== "" ? asked : outcome.measure.shownIn;
}

function parametersOf({ card, limit }: Outcome): Parameters {
  return limit?.measure?.parameters ?? card.parameters;
}

/** What carries most of the doubt. */
export type DecidedBy = "survey" | "build" | "method" | "limit";

/** The whole sentence of an outcome. */
export function sentenceOf(outcome: Outcome, read: Read, decidedBy: DecidedBy = "survey"): string {
  const { card, subject } = outcome;
  const about = subject[card.about.role];
  const name = about ? featureWords(about) : "the plot";
  if (outcome.verdict === "not-given") return notGiven(outcome, name);
  if (!outcome.judged) return `${capital(name)}: ${card.title} does not bear here.`;
  return judgedSentence(outcome, { judged: outcome.judged, name, read, decidedBy });
}

interface Judged {
  readonly judged: JudgedPlace;
  readonly name: string;
  readonly read: Read;
  readonly decidedBy: DecidedBy;
}

function judgedSentence(outcome: Outcome, { judged, name, read, decidedBy }: Judged): string {
  const { card, measure } = outcome;
  if (measure.shownIn === "yes or no") return yesOrNo(outcome, judged, name);
  const { phrase, wish } = numberWords(outcome, judged, read);
  const where = judged.place.where ? ` (${judged.place.where})` : "";
  const tail = wish === "" ? "" : `; ${wish}`;
  if (judged.verdict === "not-met") return `${capital(name)} ${card.fault}: ${phrase}${where}${tail}.`;
  if (judged.verdict === "undecided")
    return `${capital(name)}: ${openBy[decidedBy]} whether it ${card.fault}; ${phrase}${where}${tail}.`;
  return `${capital(name)}: ${phrase}${where}${tail}.`;
}

/** What was found and what is wanted, without the fault: `2.10 m clear of tree "whitethorn"; at least 3.00 m is wanted`; empty of yes or no. */
export function numbersOf(outcome: Outcome, read: Read): string {
  const { judged, measure } = outcome;
  if (!judged || measure.shownIn === "yes or no") return "";
  const { phrase, wish } = numberWords(outcome, judged, read);
  const isSideless = judged.value.value < 0 && !measure.below;
  if (isSideless && judged.place.where) return judged.place.where;
  const where = judged.place.where ? `, ${judged.place.where}` : "";
  return `${phrase}${where}${wish === "" ? "" : `; ${wish}`}`;
}

/** What was found, by its size and side, and what is wanted; nothing is wanted in words where the limit is just not to be on that side. */
function numberWords(outcome: Outcome, judged: JudgedPlace, read: Read) {
  const { measure, subject, element } = outcome;
  const parameters = parametersOf(outcome);
  const [found = "", ...wanted] = numberTexts(outcome, judged, read);
  const forWhom = element ? ` for ${element}` : "";
  const asked = outcome.grade === "should" ? "advised" : "wanted";
  const values = wantedValues(judged.requirement, read);
  const isNothing = judged.requirement.sense !== "between" && values[0] === 0;
  const below = measure.below && judged.value.value < 0 ? measure.below : null;
  const phrase = below
    ? filled(below.phrase, { subject, parameters, found: boundWords(judged, turned) + found })
    : phraseWith(measure, subject, boundWords(judged, plain) + found, parameters);
  if (isNothing && judged.requirement.sense === "at_most")
    return { phrase, wish: `${noneWords(measure, parameters) ?? `none at all is ${asked}`}${forWhom}` };
  if (isNothing && below) return { phrase, wish: "" };
  if (below && judged.requirement.sense === "at_least" && (values[0] ?? 0) < 0)
    return { phrase, wish: `no more than ${sizeWords(wanted[0] ?? "")} of that is ${asked}${forWhom}` };
  const side = below?.wanted ? ` ${below.wanted}` : "";
  return { phrase, wish: `${wantedWords(judged.requirement, wanted)}${side} is ${asked}${forWhom}` };
}

/** Where no number that the plan states would do: `no depth is small enough for it`; null of other readings. */
function noneWords(measure: Measure, { property }: Parameters): string | null {
  return measure.phrase.includes("{property}")
    ? `no ${propertyWords(String(property))} is small enough for that`
    : null;
}

const plain = { at_least: "at least ", at_most: "at most " } as const;
const turned = { at_least: "at most ", at_most: "at least " } as const;

/** A value that is only bounded says so. */
function boundWords({ place, value }: JudgedPlace, words: typeof plain | typeof turned): string {
  return place.bound && value.value !== 0 ? words[place.bound] : "";
}

/** A question that the plan answers with yes or no has no number to print. */
function yesOrNo({ card }: Outcome, judged: JudgedPlace, name: string): string {
  if (judged.verdict === "not-met") return `${capital(name)} ${card.fault}.`;
  return `${capital(name)}: ${card.asks.charAt(0).toLowerCase()}${card.asks.slice(1).replace(/\?$/, "")}: the plan says yes.`;
}

/** How it is said that nobody can tell yet, by what carries the doubt. */
const openBy: Readonly<Record<DecidedBy, string>> = {
  survey: "the measurements cannot say",
  build: "ordinary building is not close enough to say",
  method: "our own search cannot tell",
  limit: "the published figure is too rough to say",
};

/** Found and wanted, printed with as many figures as tell them apart. */
function numberTexts(outcome: Outcome, judged: JudgedPlace, read: Read): readonly string[] {
  const { measure } = outcome;
  const wording = { u: judged.value.u, shownIn: shownOf(outcome) };
  const wanted = wantedValues(judged.requirement, read);
  const nearest = wanted.reduce(
    (best, value) => (Math.abs(value - judged.value.value) < Math.abs(best - judged.value.value) ? value : best),
    wanted[0] ?? 0,
  );
  const [apart, near] = wordsApart(judged.value.value, nearest, measure.dimension, wording);
  const found = measure.below && judged.value.value < 0 ? sizeWords(apart) : apart;
  return [found, ...wanted.map((value) => (value === nearest ? near : words(value, measure.dimension, wording)))];
}

/** The words of a number without its sign: the phrase tells the side. */
function sizeWords(text: string): string {
  return text.replace(/^-/, "").replace(/ uphill$/, "");
}

function notGiven(outcome: Outcome, name: string): string {
  const { card } = outcome;
  // "Whether it is not known to carry" would ask twice over.
  const open = `so nobody can say whether it ${card.fault.replace(/^is not known to /, "can ")}`;
  const whom = card.defersTo ? "" : " Ask the local authority.";
  if (outcome.reason === "no-limit-here")
    return `${capital(name)}: no published figure is known for this place${outcome.because ? ` and ${outcome.because}` : ""}, ${open}.${whom}`;
  if (outcome.reason === "gave-up")
    return `${capital(name)}: our search gave up (${outcome.because ?? "no reason given"}), ${open}.`;
  const asks = [...new Set(outcome.missing.map((need) => need.asks))];
  const gives = asks.every((ask) => ask.startsWith("the ")) ? "give" : "say";
  return `${capital(name)}: the plan does not ${gives} ${list(asks)}, ${open}.`;
}

/** `a, b and c`. */
export function list(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? "what is needed";
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;
}

/** Hazards of one thing or of a stuff; all others are said as many. */
const single: Readonly<Record<string, string>> = {
  gas: "gas",
  oil: "oil",
  septic: "a septic tank or drainage field",
  flooding: "flooding",
  asbestos: "asbestos",
  "unknown fill": "unknown fill",
  "made ground": "made ground",
  rock: "rock",
  "high ground water": "high ground water",
  "steep ground": "steep ground",
  "public way": "a public way",
  livestock: "livestock",
  heritage: "heritage",
  "boundary dispute": "a boundary dispute",
  slurry: "slurry",
};

/** `whether there are wells: draw them, or put "wells" under none ...`; `whether there is gas: draw it ...`. */
export function whetherThereIs(hazard: string): string {
  const one = Object.hasOwn(single, hazard) ? single[hazard] : undefined;
  const [is, them, they, many] = one ? ["is", "it", "it was", "is"] : ["are", "them", "they were", "are"];
  return `whether there ${is} ${one ?? hazard}: draw ${them}, or put "${hazard}" under none if ${they} looked for and ${many} not there`;
}

/** Sentence of a hazard that is neither drawn nor ruled out. */
export function unsaidSentence(card: Card): string {
  return `Nobody has said ${whetherThereIs(card.hazard ?? "the hazard")}.`;
}
