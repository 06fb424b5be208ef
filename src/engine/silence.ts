// What a plan leaves unsaid: every answer is tried, and it is asked only where the answer would change the verdict.

import type { Missing } from "../model/reading.ts";
import type { Outcome } from "./evaluate.ts";
import { nothingSupposed, type Supposed } from "./test-property.ts";

/** Outcomes of one subject under what is supposed to have been said. */
export type EvaluateAs = (supposed: Supposed) => readonly Outcome[];
export type IsWorse = (a: Outcome, b: Outcome) => boolean;

/** More silences than this on one subject are asked about without trying what each answer would do. */
const mostTried = 4;

/**
 * Outcomes with the plan's silences tried out: where every answer is met, or every answer fails, nothing is asked and
 * the least favourable (met) or the most favourable (failing) stands; else the plan is asked.
 */
export function withSilences(
  evaluateAs: EvaluateAs,
  isWorse: IsWorse,
  supposed: Supposed = nothingSupposed,
): readonly Outcome[] {
  const outcomes = evaluateAs(supposed);
  const asking = outcomes.find((outcome) => silenceIn(outcome) !== undefined);
  const silence = asking && silenceIn(asking);
  if (!asking || !silence || supposed.size >= mostTried) return outcomes;
  const branches = silence.silence.answers.map((answer) =>
    withSilences(evaluateAs, isWorse, new Map([...supposed, [silence.silence.of, answer]])),
  );
  return folded(branches, { asking, silence, isWorse });
}

type Silent = Missing & { readonly silence: NonNullable<Missing["silence"]> };

function silenceIn({ missing }: Outcome): Silent | undefined {
  return missing.find((one): one is Silent => one.silence !== undefined);
}

interface Asked {
  readonly asking: Outcome;
  readonly silence: Silent;
  readonly isWorse: IsWorse;
}

function folded(branches: readonly (readonly Outcome[])[], { asking, silence, isWorse }: Asked): readonly Outcome[] {
  const worst = branches.map((outcomes) => outcomes.reduce((a, b) => (isWorse(b, a) ? b : a)));
  const classes = new Set(worst.map(classOf));
  const [only] = classes;
  if (classes.size === 1 && (only !== "open" || sameAsked(worst))) {
    const better = (a: number, b: number) => isWorse(worst[b] as Outcome, worst[a] as Outcome);
    const chosen = [...branches.keys()].reduce((a, b) => ((only === "fine" ? better(a, b) : better(b, a)) ? b : a));
    return branches[chosen] ?? [];
  }
  const grade = worst.every((one) => classOf(one) === "fine" || one.grade === "should") ? "should" : "must";
  const further = worst.flatMap((one) => (one.verdict === "not-given" ? one.missing : []));
  const { silence: _, ...missing } = silence;
  const whole: Outcome = {
    ...asking,
    limit: null,
    grade,
    reason: "missing",
    missing: unique([{ ...missing, tried: true }, ...further]),
  };
  return [whole, ...inAll(branches)];
}

/** How a subject stands: nothing against it, short of a must or of a should, or open. */
function classOf({ verdict, grade }: Outcome): "fine" | "open" | "must" | "should" {
  if (verdict === "met" || verdict === "does-not-bear") return "fine";
  return verdict === "not-given" ? "open" : grade;
}

/** Whether all wait for the same, so that the answer decides nothing yet. */
function sameAsked(outcomes: readonly Outcome[]): boolean {
  const asked = outcomes.map(({ missing }) => JSON.stringify(missing.map(({ asks }) => asks).sort()));
  return new Set(asked).size === 1;
}

/** Outcomes that stand whatever is answered. */
function inAll(branches: readonly (readonly Outcome[])[]): readonly Outcome[] {
  const [first, ...others] = branches;
  return (first ?? []).filter(
    (one) =>
      one.limit !== null &&
      others.every((outcomes) =>
        outcomes.some(({ limit, verdict }) => limit?.id === one.limit?.id && verdict === one.verdict),
      ),
  );
}

function unique(missing: readonly Missing[]): readonly Missing[] {
  const known = new Map(missing.map((one) => [`${one.feature.name}\n${one.property}`, one]));
  return [...known.values()];
}
