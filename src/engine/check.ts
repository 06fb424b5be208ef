// The check: every card on every subject at every stage, folded, judged, worded and gathered.

import type { Card, Rulebook } from "../model/card.ts";
import type { Deciding, Finding, Need, Verdict } from "../model/finding.ts";
import type { Place, Position } from "../model/path.ts";
import { type Feature, type Plan, propertyOf } from "../model/plan.ts";
import type { Problem } from "../model/problem.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure, Subject } from "../model/reading.ts";
import { alikeMerged } from "./alike-merged.ts";
import { compose, type ComposeContext, decidingOf } from "./compose.ts";
import { type ReadRequirement, withDepartures, withLocalLimits } from "./departures.ts";
import { evaluate, type EvaluationContext, type Outcome } from "./evaluate.ts";
import { addStage, foldByAbout, type Folded, type Group, isQuiet, onlyQuiet } from "./fold.ts";
import { gatherNeeds, needsOf, type OpenNeed } from "./needs.ts";
import { otherWellsNeeds } from "./other-wells.ts";
import { remediesOf } from "./put-right.ts";
import { chainOf } from "./rows.ts";
import { type Lie, lieOf, type SubjectFinder, subjectFinder } from "./select.ts";
import { readPlain } from "./spread.ts";
import { isAlike, rememberer, type StageView, stageViews } from "./stages.ts";
import { type PlacedProblem, unknownWords } from "./unknown-words.ts";
import { hazardUnsaid, othersUnsaid } from "./unsaid.ts";
import { wholeOf } from "../site/parts.ts";
import { byWeight, countVerdicts } from "./weigh.ts";

export interface CheckRequest {
  readonly plan: Plan;
  readonly rulebook: Rulebook;
  readonly measures: ReadonlyMap<string, Measure>;
  readonly asOf: string;
  readonly places: readonly string[];
  /** Indexes of the stages to check. */
  readonly stages: readonly number[];
  readonly option: string | null;
  readonly locate: (place: Place) => Position;
  readonly readRequirement: ReadRequirement;
  readonly parts: (standing: readonly Feature[], read: Read, stage: number) => readonly Feature[];
  readonly remedies: boolean | "plain";
}

export interface Checked {
  readonly findings: readonly Finding[];
  readonly needs: readonly Need[];
  /** Of every undecided finding, how its doubt is made up. */
  readonly deciding: readonly Deciding[];
  readonly rules: readonly {
    readonly rule: string;
    readonly title: string;
    readonly counts: Readonly<Record<Verdict, number>>;
  }[];
  /** Features that no rule looks at, in words. */
  readonly notLookedAt: readonly string[];
  readonly problems: readonly Problem[];
}

/** Runs all cards on a plan. Pure: the same request gives the same answer. */
export function check(request: CheckRequest): Checked {
  const { plan, rulebook } = request;
  const read = readPlain(plan.numbers);
  const { cards, problems } = withLocalLimits(rulebook.cards, plan, request.readRequirement);
  const chains =
    request.places.length > 0 ? request.places.map((place) => chainOf(place, rulebook.places)) : [["anywhere"]];
  const views = stageViews(plan, request.stages, read, (standing, stage) => request.parts(standing, read, stage));
  const lies = new Map<Feature, Lie | null>();
  const lie = (feature: Feature) => {
    const known = lies.get(feature);
    if (known !== undefined) return known;
    const made = lieOf(feature, read);
    lies.set(feature, made);
    return made;
  };
  const base = { rulebook, measures: request.measures, book: plan.numbers, read, chains, none: plan.none };
  const run: Run = {
    request,
    cards,
    views,
    finders: findersOf(views, (view) => subjectFinder(view.standing, lie, read)),
    base,
    compose: {
      rulebook,
      book: plan.numbers,
      read,
      stages: plan.stages,
      option: request.option,
      locate: request.locate,
    },
  };
  const perCard = cards.map((card) => checkCard(card, run));
  const findings = withDepartures(
    perCard.flatMap((result) => result.findings),
    plan.departures,
    request.asOf,
  );
  const ofRule = new Map<string, Finding[]>(cards.map((card) => [card.id, []]));
  for (const finding of findings) ofRule.get(finding.rule)?.push(finding);
  return {
    findings: byWeight(findings),
    needs: gatherNeeds(
      [...perCard.flatMap((result) => result.open), ...otherWellsNeeds({ cards, plan, chains })],
      request.locate,
    ),
    deciding: perCard.flatMap((result) => result.deciding),
    notLookedAt: unlooked(cards, plan.features),
    problems: [...unknownWords(plan, rulebook, request.places), ...problems].map((problem) =>
      located(problem, request.locate),
    ),
    rules: cards.map((card, index) => ({
      rule: card.id,
      title: card.title,
      counts: countVerdicts(ofRule.get(card.id) ?? [], perCard[index]?.notBearing ?? 0),
    })),
  };
}

function located({ place, ...rest }: PlacedProblem, locate: CheckRequest["locate"]): Problem {
  return { ...rest, file: place.file, ...locate(place) };
}

interface Run {
  readonly request: CheckRequest;
  readonly cards: readonly Card[];
  readonly views: readonly StageView[];
  readonly finders: ReadonlyMap<StageView, SubjectFinder>;
  readonly base: Omit<EvaluationContext, "scene">;
  readonly compose: ComposeContext;
}

interface CardResult {
  readonly findings: readonly Finding[];
  readonly open: readonly OpenNeed[];
  readonly deciding: readonly Deciding[];
  readonly notBearing: number;
}

function checkCard(card: Card, run: Run): CardResult {
  const unsaid = unsaidOf(card, run);
  if (unsaid) return { findings: [unsaid.finding], open: [unsaid.need], deciding: [], notBearing: 0 };
  const folded = new Map<string, Folded[]>();
  const [told, quiet] = [new Set<Outcome>(), new Set<Outcome>()];
  const remember = rememberer();
  let [before, groups]: [readonly Outcome[], readonly Group[]] = [[], []];
  let subjects: readonly Subject[] = [];
  for (const [k, view] of run.views.entries()) {
    const last = run.views[k - 1];
    if (last && isAlike(view, last)) {
      for (const group of groups) addStage(folded, group, view.stage);
      continue;
    }
    const finder = run.finders.get(view);
    if (!last || finder !== run.finders.get(last)) subjects = finder?.all(card) ?? [];
    const context: EvaluationContext = { ...run.base, scene: view.scene };
    const outcomes = subjects.flatMap((subject) => remember(subject, view, () => evaluate(card, subject, context)));
    if (!isSameList(outcomes, before)) {
      for (const outcome of outcomes) (isQuiet(outcome) ? quiet : told).add(outcome);
      groups = foldByAbout(card, outcomes, run.request.plan.departures);
      before = outcomes;
    }
    for (const group of groups) addStage(folded, group, view.stage);
  }
  const bearing = [...folded.values()].flat();
  const notBearing = onlyQuiet(card, { told, quiet });
  const composed = bearing.map((entry) =>
    compose(entry.outcome, { ...entry, remedies: remediesFor(entry, run) }, run.compose),
  );
  const findings = alikeMerged(
    composed,
    bearing.map(({ key }) => key),
    run.request.plan.stages,
  );
  const deciding = bearing.flatMap(({ outcome }, k) => decidingOf(outcome, composed[k] as Finding) ?? []);
  const open = bearing.flatMap(({ outcome, waiting }) =>
    [outcome, ...waiting].flatMap((one) => (one.verdict === "not-given" ? needsOf(one) : [])),
  );
  const others = bearing.length > 0 ? othersUnsaid(card, run.request.plan) : null;
  return {
    findings,
    open: others ? [...open, others] : open,
    deciding,
    notBearing: bearing.length > 0 ? notBearing : Math.max(1, notBearing),
  };
}

/** Stages in which the same stands share one finder. */
function findersOf(
  views: readonly StageView[],
  finderOf: (view: StageView) => SubjectFinder,
): ReadonlyMap<StageView, SubjectFinder> {
  const made = new Map<string, SubjectFinder>();
  return new Map(
    views.map((view) => {
      const content = view.content("*");
      const finder = made.get(content) ?? finderOf(view);
      made.set(content, finder);
      return [view, finder];
    }),
  );
}

/** Features of kinds that no card is about or against, nor about a part of, one line a kind. A trailer is looked at where it is towed. */
function unlooked(cards: readonly Card[], features: readonly Feature[]): readonly string[] {
  const named = cards.flatMap((card) => [...card.about.kinds, ...(card.against?.kinds ?? [])]);
  const kinds = new Set(named.flatMap((kind) => [kind, wholeOf[kind] ?? kind]));
  const words = new Map<string, Set<string>>();
  const towed = new Set(features.map((feature) => propertyOf(feature, "with_trailer")));
  for (const feature of features) {
    if (kinds.has(feature.kind) || kinds.has("everything") || towed.has(feature.name)) continue;
    words.set(feature.kind, (words.get(feature.kind) ?? new Set()).add(feature.name));
  }
  return [...words].map(([kind, names]) => `${kind} ${[...names].map((name) => `"${name}"`).join(", ")}`);
}

function unsaidOf(card: Card, { request, views }: Run): ReturnType<typeof hazardUnsaid> {
  const stages = views.map((view) => request.plan.stages[view.stage] ?? "");
  return hazardUnsaid(card, {
    plan: request.plan,
    measure: request.measures.get(card.measure),
    stages,
    option: request.option,
  });
}

/** Remedies are solved when they are first asked for: a report that tells a few of many alike findings need not solve them all. */
function remediesFor({ outcome, stages }: Folded, run: Run): () => Finding["remedies"] {
  const view = run.views.find((candidate) => candidate.stage === stages[0]);
  const { plan, remedies: asked } = run.request;
  if (!asked || !view || (outcome.verdict !== "not-met" && outcome.verdict !== "undecided")) return noRemedies;
  return () => remediesOf(outcome, { ...run, view, features: plan.features, searches: asked !== "plain" });
}

const noRemedies = (): Finding["remedies"] => [];

const isSameList = <T>(some: readonly T[], others: readonly T[]) =>
  some.length === others.length && some.every((one, k) => one === others[k]);
