// The library: a plan's text in, a report out. Pure, but for printers that are loaded when asked for.

import compiledKinds from "#compiled/kinds" with { type: "json" };
import compiledRulebook from "#compiled/rulebook" with { type: "json" };
import {
  card as validCard,
  part as validPart,
  places as validPlaces,
  plan as validPlan,
  sources as validSources,
} from "#compiled/validators";
import { check, type Checked } from "./engine/check.ts";
import type { ReadRequirement } from "./engine/departures.ts";
import { knownPlaces } from "./engine/known-places.ts";
import { planNeeds } from "./engine/needs.ts";
import { stageIndex } from "./engine/stages.ts";
import { addCounts, mergeRules } from "./engine/merge.ts";
import { readPlain } from "./engine/spread.ts";
import { inStead } from "./engine/unknown-words.ts";
import { tellsRoom, vehicleWays } from "./engine/vehicle-ways.ts";
import { measures } from "./measures/index.ts";
import type { Card, Rulebook, Table } from "./model/card.ts";
import type { Report } from "./model/finding.ts";
import type { Picture } from "./model/picture.ts";
import type { Place, Position } from "./model/path.ts";
import type { Plan } from "./model/plan.ts";
import type { Problem, WithProblems } from "./model/problem.ts";
import { type KindTable, propertyNames } from "./plan/kind-table.ts";
import { resolveText } from "./plan/resolve-text.ts";
import { readYaml } from "./reading/read-yaml.ts";
import type { SourceText } from "./reading/source-text.ts";
import { nearestWord } from "./reading/nearest-word.ts";
import { readRequirement } from "./rulebook/bounds.ts";
import { reasonText as cardInWords } from "./report/reason.ts";
import { papersSeen, standingUnsaid, wantedIncludes } from "./plan/wants.ts";
import type { Printable } from "./report/printed.ts";
import type { Worked } from "./sheets/remeasure.ts";
import { withOwnRules } from "./rulebook/own-rules.ts";
import { type PackedRulebook, unpackRulebook } from "./rulebook/packed.ts";
import { type Earth, earthOf } from "./site/earth.ts";
import { partsOf } from "./site/parts.ts";
import { stagePictures } from "./site/stage-pictures.ts";

export type { Card, Rulebook } from "./model/card.ts";
export type * from "./model/finding.ts";
export { exitCode } from "./engine/exit-code.ts";
export { endings, printed } from "./report/printed.ts";
export { problemSentence } from "./report/problem-lines.ts";
export { nearestWord } from "./reading/nearest-word.ts";
export { toldUnder } from "./report/grouping.ts";
export type { Picture } from "./model/picture.ts";
export { remeasureSheet } from "./sheets/remeasure.ts";
export { groundSheet } from "./sheets/ground.ts";
export { setOutSheet } from "./sheets/setout.ts";
export { sheetCsv, sheetText } from "./report/sheet.ts";
export type { Sheet } from "./model/sheet.ts";
export type { Problem } from "./model/problem.ts";
export type { RoomResult, RoomWishes } from "./sheets/room-request.ts";

/** A file as text. The name is only used to say where something stands. */
export interface Text {
  readonly file: string;
  readonly text: string;
}

/** A plan with the files that it includes. */
export interface PlanText extends Text {
  readonly includes?: readonly Text[];
}

export interface CheckOptions {
  /** Day against which dates are judged where the plan has no `as_of`, as 2026-11-25. */
  readonly asOf: string;
  /** Stands before the plan's `as_of` when given. */
  readonly asOfStands?: boolean;
  readonly place?: readonly string[];
  readonly stage?: string;
  readonly option?: string;
  /** Cards of the owner's own, beside the built-in ones; file names as `area/slug.yaml`. */
  readonly cards?: readonly Text[];
  /** Solve remedies (default true); `plain` leaves out those that a path must be searched for, which takes seconds. */
  readonly remedies?: boolean | "plain";
}

/** A report with the pictures of its plans. */
export interface Inspection extends Printable {
  /** The plans as resolved, for the sheets that are taken outside. */
  readonly worked: readonly (Worked & { readonly densities: Table | undefined })[];
}

let builtIn: Rulebook | null = null;

/** The built-in rulebook. */
export function rulebook(): Rulebook {
  builtIn ??= unpackRulebook(compiledRulebook as unknown as PackedRulebook);
  return builtIn;
}

/** The rulebook with the owner's own cards, sources and places; a card of the same id stands before the built-in one. */
export function rulebookWith(texts: readonly Text[]): WithProblems<Rulebook> {
  const base = rulebook();
  if (texts.length === 0) return { value: base, problems: [] };
  return withOwnRules(base, texts, {
    measures,
    propertiesOf: (key) => propertyNames((compiledKinds as unknown as KindTable)[key] ?? {}),
    checks: { card: validCard, sources: validSources, places: validPlaces },
  });
}

/** Checks one plan. Same texts and options, same report, to the byte. */
export function checkPlan(plan: PlanText, options: CheckOptions): Report {
  return inspect([plan], options).report;
}

/** Checks plans and draws their pictures. */
export function inspect(plans: readonly PlanText[], options: CheckOptions): Inspection {
  const book = rulebookWith(options.cards ?? []);
  const each = plans.map((plan) => inspectOne(plan, options, book.value));
  const densities = book.value.tables.get("densities");
  const report: Report = {
    sightrail: 1,
    as_of: each[0]?.asOf ?? options.asOf,
    place: [...new Set(each.flatMap((one) => one.places))],
    plans: each.map((one) => one.head),
    options: options.option ? [options.option] : [],
    counts: addCounts(each.flatMap((one) => one.checked.rules.map((rule) => rule.counts))),
    rules: mergeRules(each.map((one) => one.checked)),
    findings: each.flatMap((one) => one.checked.findings),
    needs: each.flatMap((one) => one.checked.needs),
    problems: [...book.problems, ...each.flatMap((one) => one.problems)],
    not_checked: [...new Set(each.flatMap((one) => one.notChecked))],
    assumed: [...new Set([...each.flatMap((one) => one.assumed), ...inStead(book.value.cards, rulebook().cards)])],
  };
  return {
    report,
    pictures: each.flatMap((one) => (one.picture ? [one.picture] : [])),
    tie: each[0]?.tie ?? null,
    places: book.value.placeNames,
    worked: each.flatMap(({ plan, checked }) => (plan ? [{ ...checked, plan, densities }] : [])),
  };
}

interface One {
  readonly head: Report["plans"][number];
  readonly asOf: string;
  readonly places: readonly string[];
  readonly checked: Checked;
  readonly problems: readonly Problem[];
  readonly notChecked: readonly string[];
  readonly assumed: readonly string[];
  readonly picture: Picture | null;
  readonly tie: Earth | null;
  readonly plan: Plan | null;
}

const nothingChecked: Checked = { findings: [], needs: [], deciding: [], rules: [], notLookedAt: [], problems: [] };

function inspectOne(text: PlanText, options: CheckOptions, book: Rulebook): One {
  const { document, problems } = readYaml(text.file, text.text);
  const head = { file: text.file, title: text.file, stages: [], stage: null, features: 0 };
  const empty: One = {
    head,
    asOf: options.asOf,
    places: options.place ?? [],
    checked: nothingChecked,
    problems,
    notChecked: [],
    assumed: [],
    picture: null,
    tie: null,
    plan: null,
  };
  if (!document) return empty;
  const {
    plan,
    sources,
    problems: met,
    isAsAsked,
  } = resolveText(document, text.includes ?? [], formsOf(book), options.option);
  const all = [...problems, ...met];
  const stage = stageIndex(plan, options.stage, (path) => document.locate(path, "key"));
  const isStage = stage === null || typeof stage === "number";
  if (!isStage || !isAsAsked) return unlooked(plan, { ...empty, problems: isStage ? all : [...all, stage] });
  return checkResolved({ plan, document, sources, options, book, stage, problems: all });
}

/** A plan of which something was asked that it has not: told by its own name and places, and not looked at. */
function unlooked(plan: Plan, empty: One): One {
  const { title, stages, file, features } = plan;
  return { ...empty, head: { file, title, stages, stage: null, features: features.length }, places: plan.places };
}

/** A plan as it is resolved, without a check; null where it is no text of the form at all. */
export function resolvedPlan(text: PlanText, option?: string): WithProblems<Plan | null> {
  const { document, problems } = readYaml(text.file, text.text);
  if (!document) return { value: null, problems };
  const resolved = resolveText(document, text.includes ?? [], formsOf(rulebook()), option);
  return { value: resolved.plan, problems: [...problems, ...resolved.problems] };
}

/** `room` and its printers, loaded when asked for. */
export const roomWork = async () => ({
  ...(await import("./sheets/room-request.ts")),
  ...(await import("./report/room-printed.ts")),
});

const formsOf = (book: Rulebook) => ({
  plan: validPlan,
  part: validPart,
  kinds: compiledKinds as unknown as KindTable,
  tables: book.tables,
});

interface Resolved {
  readonly plan: Plan;
  readonly document: SourceText;
  readonly sources: readonly SourceText[];
  readonly options: CheckOptions;
  readonly book: Rulebook;
  readonly stage: number | null;
  readonly problems: readonly Problem[];
}

function checkResolved({ plan, document, sources, options, book, stage, problems }: Resolved): One {
  const asOf = options.asOfStands ? options.asOf : (plan.asOf ?? options.asOf);
  const places = knownPlaces(options.place ?? plan.places, book);
  const stages = stage === null ? plan.stages.map((_, index) => index) : [stage];
  const locate = (place: Place): Position =>
    (sources.find((source) => source.file === place.file) ?? document).locate(place.path, "key");
  const checked = check({
    plan,
    rulebook: book,
    measures,
    asOf,
    places,
    stages,
    option: options.option ?? null,
    locate,
    readRequirement: readLocal,
    parts: (standing, at, number) => [...partsOf(standing, at, number), ...(plan.surveyed ?? [])],
    remedies: options.remedies ?? true,
  });
  const read = readPlain(plan.numbers);
  const tie = earthOf(plan, read);
  const needs = planNeeds(checked.needs, { plan, asOf, today: options.asOf, papers: papersSeen(document) });
  return {
    head: {
      file: plan.file,
      title: plan.title,
      stages: plan.stages,
      stage: stage === null ? null : (plan.stages[stage] ?? null),
      features: plan.features.length,
      goes: vehicleWays(plan, checked.findings, stages),
    },
    asOf,
    places,
    checked: { ...checked, needs },
    problems: [...problems, ...checked.problems],
    notChecked: [...plan.notBuilt.map(({ kind, names }) => `${kind}: ${names.join(", ")}`), ...checked.notLookedAt],
    assumed: [...plan.assumed, ...standingUnsaid(document)],
    picture: stagePictures(plan, { ...checked, ways: checked.findings.filter(tellsRoom), stages, read, tie }),
    tie,
    plan,
  };
}

/** A requirement of `local_limits`, read in the card's dimension. */
const readLocal: ReadRequirement = (raw, card, complain) => {
  let fine = true;
  const requirement = readRequirement(raw, card.dimension, [], (_, expected, got, hint) => {
    fine = false;
    complain(expected, got, hint);
  });
  return fine ? requirement : null;
};

/** Names of files that a plan includes and that the caller must fetch. */
export function wants(plan: Text): readonly string[] {
  // A text without the word, plain or behind an escape, has no such key: most plans are read once only.
  if (!/include|files|\\/u.test(plan.text)) return [];
  const { document } = readYaml(plan.file, plan.text);
  return document ? wantedIncludes(document) : [];
}

/** The same inspection with problems met before it (files that could not be read). */
export function withProblems(inspection: Inspection, problems: readonly Problem[]): Inspection {
  if (problems.length === 0) return inspection;
  return { ...inspection, report: { ...inspection.report, problems: [...problems, ...inspection.report.problems] } };
}

/** A rule in words. */
export const reasonText = (card: Card, book: Rulebook): string => cardInWords(card, book, measures);

/** The known rule nearest to a mistyped one, or null. */
export const nearestRule = (rule: string, { cards }: Rulebook): string | null =>
  nearestWord(
    rule,
    cards.map(({ id }) => id),
  );
