// What would put a finding right, and which other rules the change would break.

import type { Card } from "../model/card.ts";
import type { RemedyFound } from "../model/finding.ts";
import { type Feature, featureWords } from "../model/plan.ts";
import type { Subject } from "../model/reading.ts";
import { evaluate, type EvaluationContext, type Outcome, plainlyShort, worseOutcome } from "./evaluate.ts";
import { solveRemedies } from "./remedies.ts";
import { numbersOf } from "./sentence.ts";
import type { Spoiled } from "./spoiled.ts";
import { lieOf, type SubjectFinder } from "./select.ts";
import type { StageView } from "./stages.ts";

/** The rest of the check that a remedy is held against, at one stage. */
export interface PutRight {
  readonly cards: readonly Card[];
  readonly finders: ReadonlyMap<StageView, SubjectFinder>;
  readonly base: Omit<EvaluationContext, "scene">;
  readonly view: StageView;
  /** All features of the plan, of all stages. */
  readonly features: readonly Feature[];
  /** Whether changes are looked for that take a search of paths, seconds for each. */
  readonly searches: boolean;
}

/** Remedies of an outcome, each with the rules that it would break. */
export function remediesOf(outcome: Outcome, about: PutRight): readonly RemedyFound[] {
  const { base, view } = about;
  const context: EvaluationContext = { ...base, scene: view.scene };
  return solveRemedies(outcome, {
    context,
    features: about.features,
    searches: about.searches,
    wouldFail: (read, changed) =>
      spoiled({ ...context, read, scene: { ...view.scene, read } }, { was: changed, becomes: changed }, about),
    wouldFailWith: (variant, was, becomes) => spoiled({ ...context, ...variant }, { was, becomes }, about),
  });
}

/** Rules that are not failing now and would fail in the changed plan, looking only at subjects the changed thing plays in. */
function spoiled(
  then: EvaluationContext,
  { was, becomes }: { readonly was: Feature; readonly becomes: Feature },
  { cards, finders, base, view }: PutRight,
): readonly Spoiled[] {
  const now: EvaluationContext = { ...base, scene: view.scene };
  const finder = finders.get(view);
  const lie = lieOf(becomes, then.read);
  const changed = (subject: Subject): Subject =>
    Object.fromEntries(Object.entries(subject).map(([role, feature]) => [role, feature === was ? becomes : feature]));
  return cards.flatMap((card) => {
    const subjects = finder?.having(card, was, lie) ?? [];
    const failing = subjects.flatMap((subject) => {
      if (!plainlyShort(card, changed(subject), then)) return [];
      const failed = failures(evaluate(card, changed(subject), then));
      return failed.length === 0 || failures(evaluate(card, subject, now)).length > 0 ? [] : failed;
    });
    if (failing.length === 0) return [];
    const worst = failing.reduce((a, b) => (worseOutcome(b, a) ? b : a));
    const title = card.title.charAt(0).toLowerCase() + card.title.slice(1);
    return [{ title, words: spoiledWords(worst, becomes, then) }];
  });
}

/** `tree "oak": 2.10 m clear of ...; at least 3.00 m is wanted`, with the name of what it is about where another thing was changed. */
function spoiledWords(outcome: Outcome, changed: Feature, { read }: EvaluationContext): string {
  const about = outcome.subject[outcome.card.about.role];
  const whose = about && about.name !== changed.name ? featureWords(about) : "";
  return [whose, numbersOf(outcome, read)].filter((part) => part !== "").join(": ");
}

const failures = (outcomes: readonly Outcome[]) =>
  outcomes.filter((outcome) => outcome.verdict === "not-met" && outcome.grade === "must");
