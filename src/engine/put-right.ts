// What would put a finding right, and which other rules the change would break.

import type { Card } from "../model/card.ts";
import type { RemedyFound } from "../model/finding.ts";
import type { Feature } from "../model/plan.ts";
import type { Subject } from "../model/reading.ts";
import { evaluate, type EvaluationContext, type Outcome, plainlyShort } from "./evaluate.ts";
import { solveRemedies } from "./remedies.ts";
import { extentOf, type SubjectFinder } from "./select.ts";
import type { StageView } from "./stages.ts";

/** The rest of the check that a remedy is held against, at one stage. */
export interface PutRight {
  readonly cards: readonly Card[];
  readonly finders: ReadonlyMap<StageView, SubjectFinder>;
  readonly base: Omit<EvaluationContext, "scene">;
  readonly view: StageView;
  /** All features of the plan, of all stages. */
  readonly features: readonly Feature[];
}

/** Remedies of an outcome, each with the rules that it would break. */
export function remediesOf(outcome: Outcome, about: PutRight): readonly RemedyFound[] {
  const { base, view } = about;
  const context: EvaluationContext = { ...base, scene: view.scene };
  return solveRemedies(outcome, {
    context,
    features: about.features,
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
): readonly string[] {
  const now: EvaluationContext = { ...base, scene: view.scene };
  const finder = finders.get(view);
  const extent = extentOf(becomes, then.read);
  const changed = (subject: Subject): Subject =>
    Object.fromEntries(Object.entries(subject).map(([role, feature]) => [role, feature === was ? becomes : feature]));
  const failing = cards.filter((card) => {
    const subjects = finder?.having(card, was, extent) ?? [];
    return subjects.some(
      (subject) =>
        plainlyShort(card, changed(subject), then) &&
        fails(evaluate(card, changed(subject), then)) &&
        !fails(evaluate(card, subject, now)),
    );
  });
  return failing.map((card) => card.title.charAt(0).toLowerCase() + card.title.slice(1));
}

const fails = (outcomes: readonly Outcome[]) =>
  outcomes.some((outcome) => outcome.verdict === "not-met" && outcome.grade === "must");
