// Outcomes of one card at one stage -> groups of those that are told as one, and the stages that each group holds in.

import type { Card } from "../model/card.ts";
import type { Departure } from "../model/plan.ts";
import { departureFor } from "./departures.ts";
import { type Outcome, worseOutcome } from "./evaluate.ts";

/** An outcome of one about-feature and row with the others folded beneath it, and the stages it holds in. */
export interface Folded {
  readonly outcome: Outcome;
  readonly others: readonly Outcome[];
  /** Of those folded, what cannot be decided for want of something in the plan. */
  readonly waiting: readonly Outcome[];
  readonly stages: number[];
  /** What it is about: of entries about the same there may be several, in stages that differ or under departures. */
  readonly key: string;
}

export type Group = Omit<Folded, "stages"> & { readonly part: string };

/** One group per about-feature and row: its worst outcome first. With `report: each` every pair is a group. */
export function foldByAbout(
  card: Card,
  outcomes: readonly Outcome[],
  departures: readonly Departure[],
): readonly Group[] {
  const groups = new Map<string, Outcome[]>();
  for (const outcome of outcomes) {
    if (isQuiet(outcome)) continue;
    const key = keyOf(card, outcome);
    const group = groups.get(key);
    if (group) group.push(outcome);
    else groups.set(key, [outcome]);
  }
  return [...groups].flatMap(([key, group]) =>
    apartByDeparture(group, departures).map((part, index) => ({ ...folded(part), key, part: `${key}\n${index}` })),
  );
}

export const isQuiet = (outcome: Outcome) => outcome.verdict === "does-not-bear";

/** What one finding is about: its feature, with `report: each` the other too, and the row. */
function keyOf(card: Card, { subject, limit }: Outcome): string {
  const other = card.against && card.report === "each" ? subject[card.against.role]?.name : "";
  return `${subject[card.about.role]?.name}\n${other}\n${limit?.id ?? ""}`;
}

/** How many of what findings would be about say nothing in any stage. */
export function onlyQuiet(
  card: Card,
  { told, quiet }: { readonly [of in "told" | "quiet"]: ReadonlySet<Outcome> },
): number {
  const spoken = new Set([...told].map((outcome) => keyOf(card, outcome)));
  return new Set([...quiet].map((outcome) => keyOf(card, outcome)).filter((key) => !spoken.has(key))).size;
}

function folded(group: readonly Outcome[]): Pick<Folded, "outcome" | "others" | "waiting"> {
  const outcome = group.reduce((a, b) => (worseOutcome(b, a) ? b : a));
  const rest = group.filter((one) => one !== outcome);
  return {
    outcome,
    others: rest.filter((one) => one.judged),
    waiting: rest.filter((one) => one.verdict === "not-given"),
  };
}

/** What a departure covers is kept apart from what another covers and from what none does, so that neither hides it. */
function apartByDeparture(
  group: readonly Outcome[],
  departures: readonly Departure[],
): readonly (readonly Outcome[])[] {
  if (departures.length === 0) return [group];
  const parts = new Map<Departure | "open" | "quiet", Outcome[]>();
  for (const outcome of group) {
    const failing = outcome.verdict === "not-met" || outcome.verdict === "undecided";
    const names = Object.values(outcome.subject).map((feature) => feature.name);
    const covered = failing ? departureFor(departures, outcome.card.id, names) : undefined;
    const part = covered ?? (failing || outcome.verdict === "not-given" ? "open" : "quiet");
    parts.set(part, [...(parts.get(part) ?? []), outcome]);
  }
  const [first, ...more] = [...parts].filter(([part]) => part !== "quiet").map(([, outcomes]) => outcomes);
  return [[...(first ?? []), ...(parts.get("quiet") ?? [])], ...more];
}

/** Findings alike in several stages are one. */
export function addStage(folded: Map<string, Folded[]>, group: Group, stage: number): void {
  const kept = folded.get(group.part) ?? [];
  folded.set(group.part, kept);
  const same = kept.find((entry) => entry.outcome === group.outcome);
  if (same) same.stages.push(stage);
  else kept.push({ ...group, stages: [stage] });
}
