// Findings that are alike are told once: one thing judged by several figures, one open question about several things.

import type { Finding } from "../model/finding.ts";
import { amount, scaleOf } from "./amounts.ts";
import { clean, sentence } from "./clean.ts";
import type { Numbered } from "./grouping.ts";
import { requirementWords, whoSays, type PlaceNames } from "./standing-words.ts";

/**
 * What makes two findings one entry of the page, closest first; none where a finding always stands by itself.
 * `solvedFirst` keeps the rules whose first finding has a remedy worked out: the others by such a rule stand by themselves
 * unasked, since working out the remedies of hundreds takes long.
 */
export function alikeKeys(finding: Finding, solvedFirst: Set<string>): readonly string[] {
  const { rule, option, verdict, reason } = finding;
  if (reason === "no-limit-here") return [JSON.stringify([rule, option, reason])];
  const own = [thingKey(finding), sameFigureKey(finding), matterKey(finding)].filter((key) => key !== null);
  const counsel = JSON.stringify([rule, option, verdict, "counsel"]);
  if (!solvedFirst.has(counsel) && isMild(finding)) {
    if (isCounsel(finding)) return [...own, counsel];
    solvedFirst.add(counsel);
  }
  return isShared(finding) ? [...own, sharedKey(finding)] : own;
}

/** One number of one thing, whatever is wanted of it. */
function thingKey(finding: Finding): string | null {
  const { rule, option, verdict, found, features } = finding;
  if ((verdict !== "not-met" && verdict !== "undecided") || !found || features.length === 0) return null;
  const things = features.map(({ kind, name, role }) => [kind, name, role]);
  return JSON.stringify([rule, option, verdict, finding.decided_by, finding.stages, things, found.value]);
}

/** Rules that speak of one place, each in its own way: the one that is told first tells it, with what the other says. */
const matters: Readonly<Record<string, string>> = {
  "access/grounds": "crest",
  "access/slope-breaks-too-sharply": "crest",
};

/** A place of one surface that several rules speak of. */
function matterKey({ rule, option, verdict, features }: Finding): string | null {
  const matter = Object.hasOwn(matters, rule) ? matters[rule] : undefined;
  const surface = features.find(({ kind }) => kind === "surface");
  return matter === undefined || surface === undefined || verdict !== "not-met"
    ? null
    : JSON.stringify([matter, option, surface.name]);
}

/** Several manoeuvres by one rule at one other thing, with nothing worked out that is about one of them alone. */
function isShared(finding: Finding): boolean {
  const [first, second, ...more] = finding.features;
  if (finding.verdict !== "not-met" || first?.kind !== "manoeuvre" || !second || more.length > 0) return false;
  return finding.remedies.every(({ short }) => short === null);
}

function sharedKey({ rule, option, verdict, features }: Finding): string {
  return JSON.stringify([rule, option, verdict, "shared", features[1]?.kind, features[1]?.name]);
}

/**
 * The figure of one page for one number of one thing: where two rules ask for it, the graver one tells it. Null where
 * nothing is published, and of two things together: there the rules fear different harm.
 */
function sameFigureKey(finding: Finding): string | null {
  const { option, verdict, stages, features, reading, found, wanted } = finding;
  if ((verdict !== "not-met" && verdict !== "undecided") || !found || !wanted?.source) return null;
  if (features.length !== 1) return null;
  if (wanted.standing === "practice" || wanted.standing === "your own wish") return null;
  const things = features.map(({ kind, name }) => [kind, name]);
  const { sense, value, source } = wanted;
  return JSON.stringify([option, verdict, stages, things, reading, found.value, sense, value, source.id]);
}

/** What is only advised, of each thing alike: nothing about one of them has been worked out that its neighbours would lose. */
function isCounsel(finding: Finding): boolean {
  return isMild(finding) && finding.remedies.every(({ short }) => short === null);
}

function isMild({ verdict, grade, stakes, features }: Finding): boolean {
  return verdict === "not-met" && (grade === "should" || stakes === "nuisance") && features.length > 0;
}

/** `The same holds of building "farmhouse" (line 60) and building "sugarhouse" (line 71).` */
export function sameOfWords({ finding, also }: Numbered): string {
  if (finding.reason !== "no-limit-here" && !isCounsel(finding) && !isShared(finding)) return "";
  const own = thingWords(finding);
  const others = also
    .filter((other) => other.rule === finding.rule && thingWords(other) !== own)
    .map((other) => thingWords(other) + aside(other, finding));
  const distinct = [...new Set(others)].filter((words) => words !== "");
  return distinct.length === 0 ? "" : `The same holds of ${listed(distinct)}.`;
}

function thingWords({ features }: Finding): string {
  const [first] = features;
  return first ? `${clean(first.kind)} "${clean(first.name)}"` : "";
}

/**
 * ` (15.24 m, line 60)`. A number below 0 is left out, for only the sentence tells which side that is; but that of another
 * manoeuvre at the same thing is told as that sentence tells its own: ` (by 0.86 m, line 272)`.
 */
function aside(finding: Finding, told: Finding): string {
  const { at, found } = finding;
  const scale = scaleOf(finding);
  const alike = isShared(told) && (told.found?.value ?? 0) < 0 && / by \d/.test(told.sentence);
  const figure = found && scale ? amount(Math.abs(found.value), scale, found.doubt) : "";
  const parts = [
    ...(figure !== "" && found && found.value >= 0 ? [figure] : []),
    ...(figure !== "" && found && found.value < 0 && alike ? [`by ${figure}`] : []),
    ...(at[0] ? [`line ${at[0].line}`] : []),
  ];
  return parts.length === 0 ? "" : ` (${parts.join(", ")})`;
}

function listed(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;
}

/** What else is asked of the same thing, and by whom: `And at least 10.97 m is advised. The United States: ...`. */
export function alsoSays({ finding, also }: Numbered, names: PlaceNames): readonly string[] {
  if (finding.reason === "no-limit-here") return [];
  const wish = wishOf(finding);
  const own = thingWords(finding);
  const same = also
    .filter((other) => thingWords(other) === own && other.rule === finding.rule)
    .map((other) => {
      const says = whoSays(other, names);
      return wishOf(other) === wish ? `So says also: ${says}` : sentence(`And ${wishOf(other)}. ${says}`);
    });
  const matter = matterKey(finding);
  const elsewise = also
    .filter((other) => matter !== null && other.rule !== finding.rule && matterKey(other) === matter)
    .map((other) => `${sentence(other.sentence)} ${whoSays(other, names)}${placed(other)}`);
  return [...same, ...elsewise];
}

const placed = ({ at: [at] }: Finding): string => (at ? ` (line ${at.line})` : "");

/** What is wanted as the sentence words it, with whom it is for; else from the numbers. */
function wishOf(finding: Finding): string {
  const last = clean(finding.sentence).split("; ").at(-1) ?? "";
  if (/ is (?:wanted|advised)\b/.test(last)) return last.replace(/\.$/, "");
  return `${requirementWords(finding)} is ${finding.grade === "should" ? "advised" : "wanted"}`;
}

/** Solved remedies of the other figures that the first does not tell already. */
export function alsoRemedies({ finding, also: all }: Numbered): readonly string[] {
  const also = all.filter(({ rule }) => rule === finding.rule);
  const told = new Set(finding.remedies.map(({ words }) => words));
  return also.flatMap((other) => {
    const more = other.remedies.find(({ words, short }) => short !== null && !told.has(words));
    if (!more) return [];
    told.add(more.words);
    return [`${other.grade === "should" ? "For what is advised" : "For the other figure"}: ${sentence(more.words)}`];
  });
}
