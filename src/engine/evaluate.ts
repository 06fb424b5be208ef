// One card on one subject: the measure's places, every row that applies, must before should, the worst of them.

import type { Card, Condition, Grade, Limit, Rulebook } from "../model/card.ts";
import type { NotGiven } from "../model/finding.ts";
import type { NumberBook, Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Missing, Scene, Subject } from "../model/reading.ts";
import { inBand, placeInBand } from "./in-band.ts";
import type { Judged } from "./judge.ts";
import { numberOf, settle } from "./requirement.ts";
import { isRuledOut } from "../site/hazards.ts";
import { type AppliedRow, rowsFor, type TestCondition } from "./rows.ts";
import { digUnsaid, type Holds, type PropertyTest, type Supposed, testProperty } from "./test-property.ts";
import { withSilences } from "./silence.ts";
import { spread } from "./spread.ts";
import { isWorse, type JudgedPlace, leastMargin, worstPlace } from "./worst-place.ts";

/** What an evaluation works with; `read` may carry a remedy's changes. */
export interface EvaluationContext {
  readonly rulebook: Rulebook;
  readonly measures: ReadonlyMap<string, Measure>;
  readonly book: NumberBook;
  readonly read: Read;
  readonly scene: Scene;
  readonly chains: readonly (readonly string[])[];
  /** What the plan lists as looked for and not there. */
  readonly none?: readonly string[];
  /** What is supposed to have been said where the plan is silent. */
  readonly supposed?: Supposed;
}

/** Outcome of one row on one subject. */
export interface Outcome {
  readonly card: Card;
  readonly subject: Subject;
  readonly limit: Limit | null;
  readonly element: string | null;
  readonly fellBack: boolean;
  readonly grade: Grade;
  readonly verdict: Judged | "not-given" | "does-not-bear";
  readonly reason?: NotGiven;
  readonly judged: JudgedPlace | null;
  readonly missing: readonly Missing[];
  readonly because?: string;
  readonly measure: Measure;
}

/** Evaluates a card on a subject. One outcome per row that applies, its elements folded. */
export function evaluate(card: Card, subject: Subject, context: EvaluationContext): readonly Outcome[] {
  const runs = new Map<string, Found>();
  const judged = new Map<string, Outcome>();
  return withSilences(
    (supposed) => evaluateAs({ card, subject, context: { ...context, supposed }, runs, judged }),
    worseOutcome,
    context.supposed,
  );
}

function evaluateAs(question: RowQuestion): readonly Outcome[] {
  const { card, subject, context, runs } = question;
  const measure = context.measures.get(card.measure) as Measure;
  const bare = {
    card,
    subject,
    limit: null,
    element: null,
    fellBack: false,
    grade: "must",
    judged: null,
    missing: [],
    measure,
  } as const;
  // Plain conditions are quicker to test than most measures are to take; companions are measures themselves.
  const early = hasCompanions(card) ? null : rowsOf(card, subject, context);
  if (early?.is === "out-of-scope") return [{ ...bare, verdict: "does-not-bear" }];
  const first = runs.get(ownMeasure) ?? measure.find(subject, context.scene, card.parameters);
  runs.set(ownMeasure, first);
  const onlyOwnRows = card.limits.every((limit) => limit.measure);
  if (first.is === "does-not-bear" && !onlyOwnRows) return [{ ...bare, verdict: "does-not-bear" }];
  const dug = digUnsaid(subject, context.supposed);
  if (dug === "none") return [{ ...bare, verdict: "does-not-bear" }];
  if (dug) return [{ ...bare, verdict: "not-given", reason: "missing", missing: dug }];
  const rows = early ?? rowsOf(card, subject, context);
  if (rows.is === "no-limit-here") return [{ ...bare, verdict: "not-given", reason: "no-limit-here" }];
  if (rows.is === "out-of-scope") return [{ ...bare, verdict: "does-not-bear" }];
  const outcomes = rows.rows.map((row) => judgedOnce(row, question, first));
  if (rows.missing.length > 0)
    outcomes.push({ ...bare, verdict: "not-given", reason: whyMissing(rows.missing), missing: rows.missing });
  return foldElements(outcomes);
}

function hasCompanions({ companions }: Card): boolean {
  for (const _ in companions) return true;
  return false;
}

function rowsOf(card: Card, subject: Subject, context: EvaluationContext) {
  const plain: PropertyTest = {
    inBand: (band) => bandOfProperty(band, subject, context),
    isRuledOut: (feature, property) => isRuledOut(context.none ?? [], feature, property),
    ...(context.supposed ? { supposed: context.supposed } : {}),
  };
  const test: TestCondition = (condition) => {
    const companion = card.companions[condition.of];
    if (!companion) return testProperty(condition, subject, plain);
    return testCompanion(condition, companion, { subject, context });
  };
  return rowsFor({ card, subject, chains: context.chains, test, supposed: context.supposed ?? new Map() });
}

/** The card's own measure, among those of its rows. */
const ownMeasure = "own";
const measureKey = (name: string, parameters: object) => `${name} ${JSON.stringify(parameters)}`;
const whyMissing = (missing: readonly Missing[]): NotGiven =>
  missing.some((need) => need.why === "unsaid") ? "unsaid" : "missing";

interface RowQuestion {
  readonly card: Card;
  readonly subject: Subject;
  readonly context: EvaluationContext;
  /** What measures found: the card's own, and those of rows by name and parameters. */
  readonly runs: Map<string, Found>;
  /** Rows that were judged: what is supposed of a silence decides which rows apply, not how they stand. */
  readonly judged: Map<string, Outcome>;
}

function judgedOnce(row: AppliedRow, question: RowQuestion, first: Found): Outcome {
  const key = `${row.limit.id}\n${row.element ?? ""}`;
  const outcome = question.judged.get(key) ?? evaluateRow(row, question, first);
  question.judged.set(key, outcome);
  return outcome;
}

function evaluateRow(row: AppliedRow, question: RowQuestion, first: Found): Outcome {
  const { card, subject, context } = question;
  const measure = context.measures.get(row.limit.measure?.name ?? card.measure) as Measure;
  const found = row.limit.measure ? foundByRow(row.limit.measure, question) : first;
  const bare = {
    card,
    subject,
    ...row,
    grade: row.limit.must ? "must" : "should",
    judged: null,
    missing: [],
    measure,
  } as const;
  if (found.is === "does-not-bear") return { ...bare, verdict: "does-not-bear" };
  if (found.is === "gave-up") return { ...bare, verdict: "not-given", reason: "gave-up", because: found.because };
  if (found.is === "missing")
    return { ...bare, verdict: "not-given", reason: whyMissing(found.missing), missing: found.missing };
  if (found.places.length === 0) return { ...bare, verdict: "does-not-bear" };
  return judgeGrades(found.places, bare, question);
}

function foundByRow(own: NonNullable<Limit["measure"]>, { subject, context, runs }: RowQuestion): Found {
  const key = measureKey(own.name, own.parameters);
  const measure = context.measures.get(own.name) as Measure;
  const found = runs.get(key) ?? measure.find(subject, context.scene, own.parameters);
  runs.set(key, found);
  return found;
}

function judgeGrades(
  places: readonly CandidatePlace[],
  bare: Omit<Outcome, "verdict">,
  question: RowQuestion,
): Outcome {
  const limit = bare.limit as Limit;
  const must = limit.must ? judgeRequirement(places, bare, limit.must, question) : null;
  if (must && must.verdict !== "met") return must;
  if (!limit.should) return must as Outcome;
  const should = judgeRequirement(places, { ...bare, grade: "should" }, limit.should, question);
  if (!must) return should;
  return should.verdict === "met" || should.verdict === "does-not-bear" || should.verdict === "not-given"
    ? must
    : should;
}

function judgeRequirement(
  places: readonly CandidatePlace[],
  bare: Omit<Outcome, "verdict">,
  requirement: NonNullable<Limit["must"]>,
  question: RowQuestion,
): Outcome {
  const { context, subject, card } = question;
  const settled = settle(requirement, { subject, element: bare.element, tables: context.rulebook.tables });
  if ("missing" in settled) return { ...bare, verdict: "not-given", reason: "missing", missing: settled.missing };
  if ("noRow" in settled) return { ...bare, verdict: "not-given", reason: "no-limit-here", because: settled.noRow };
  const stakes = bare.grade === "should" ? "nuisance" : card.stakes;
  const judged = worstPlace(places, settled.live, { stakes, read: context.read, book: context.book });
  if (!judged) return { ...bare, verdict: "not-given", reason: "gave-up", because: "the reading is not a number" };
  return { ...bare, verdict: judged.verdict, judged };
}

/**
 * Least margin of an outcome's row under other numbers, without doubt: for solving how much of a change is enough.
 * Infinity where it no longer bears or nothing is in the way any more; null where it cannot be told.
 */
export function plainMargin(outcome: Outcome, context: EvaluationContext): number | null {
  const { limit, subject, card, element } = outcome;
  const requirement = limit?.[outcome.grade];
  if (!limit || !requirement) return null;
  const measure = context.measures.get(limit.measure?.name ?? card.measure);
  const found = measure?.find(subject, context.scene, limit.measure?.parameters ?? card.parameters);
  if (!found || found.is === "missing" || found.is === "gave-up") return null;
  if (found.is === "does-not-bear") return Infinity;
  const settled = settle(requirement, { subject, element, tables: context.rulebook.tables });
  if (!("live" in settled)) return null;
  return found.places.reduce(
    (least, place) => Math.min(least, leastMargin(place, settled.live, context.read)),
    Infinity,
  );
}

/**
 * Whether any `must` of a card is plainly short under other numbers, doubt left aside: a quick look that passes over
 * the many cards that a change leaves alone. What cannot be told counts as short.
 */
export function plainlyShort(card: Card, subject: Subject, context: EvaluationContext): boolean {
  if (hasCompanions(card)) return true;
  const rows = rowsOf(card, subject, context);
  if (rows.is !== "rows") return false;
  const measure = context.measures.get(card.measure) as Measure;
  const bare = { card, subject, grade: "must", verdict: "met", judged: null, missing: [], measure } as const;
  return rows.rows.some((row) => {
    if (!row.limit.must) return false;
    const margin = plainMargin({ ...bare, ...row }, context);
    return margin === null || margin < 0;
  });
}

/** Order of outcomes, worst first. */
const outcomeOrder: readonly Outcome["verdict"][] = ["not-met", "undecided", "not-given", "met", "does-not-bear"];

/** Whether an outcome is worse than another: a missed must before a missed should, then by verdict, then by probability. */
export function worseOutcome(a: Outcome, b: Outcome): boolean {
  const rank = (outcome: Outcome) =>
    outcomeOrder.indexOf(outcome.verdict) +
    (outcome.grade === "should" && outcome.verdict !== "met" && outcome.verdict !== "does-not-bear" ? 2.5 : 0);
  if (rank(a) !== rank(b)) return rank(a) < rank(b);
  return a.judged !== null && b.judged !== null && isWorse(a.judged, b.judged);
}

/** Elements of one row are one outcome: the worst. */
function foldElements(outcomes: readonly Outcome[]): readonly Outcome[] {
  const byLimit = new Map<string, Outcome>();
  for (const outcome of outcomes) {
    const key = outcome.limit?.id ?? "";
    const before = byLimit.get(key);
    if (!before || worseOutcome(outcome, before)) byLimit.set(key, outcome);
  }
  return [...byLimit.values()];
}

function testCompanion(
  condition: Condition,
  { measure: name, parameters }: Card["companions"][string],
  { subject, context }: Pick<RowQuestion, "subject" | "context">,
): Holds {
  const measure = context.measures.get(name) as Measure;
  const found = measure.find(subject, context.scene, parameters);
  if (found.is === "missing") return found.missing;
  if (found.is === "gave-up") return "perhaps";
  if (found.is !== "found" || "is" in condition) return "no";
  // Of several places the nearest speaks: what overlaps at one corner is not clear because another corner is.
  const values = found.places.map((place) => place.value(context.read));
  const nearest = found.places[values.indexOf(Math.min(...values))];
  return nearest ? placeInBand(condition, nearest, context) : "no";
}

function bandOfProperty(condition: Condition, subject: Subject, context: EvaluationContext): Holds {
  const found = numberOf(condition.of, subject);
  if ("missing" in found) return found.missing;
  if ("is" in condition) return "no";
  // A slope is rise over run; bounds in degrees are compared with its angle.
  const inDegrees = condition.dimension === "angle" && found.quantity.dimension === "slope";
  const value = (read: Read) => (inDegrees ? Math.atan(read(found.quantity)) : read(found.quantity));
  return inBand(condition, spread(value, context.read, context.book));
}
