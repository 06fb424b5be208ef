// Agreed departures and the owner's own limits: what the plan says about rules.

import type { Card, Limit, Requirement } from "../model/card.ts";
import type { Finding } from "../model/finding.ts";
import type { Departure, LocalLimit, Plan } from "../model/plan.ts";
import type { ProblemCode } from "../model/problem.ts";
import { isCalled } from "../site/parts.ts";
import { ownersRow } from "./rows.ts";
import type { PlacedProblem } from "./unknown-words.ts";

/** Turns a raw `must:`/`should:` of the plan into a requirement in the card's dimension; complains where it cannot be read. */
export type ReadRequirement = (raw: unknown, card: Card, complain: Refuse) => Requirement | null;
export type Refuse = (expected: string, got: string, hint: string) => void;

/** Cards with the owner's own limits, and what cannot be taken as it is written. */
export interface OwnLimits {
  readonly cards: readonly Card[];
  readonly problems: readonly PlacedProblem[];
}

/**
 * Cards with the plan's own limits standing before every published row. A limit that is only wished for (`should`)
 * stands beside what must be met, not in its place; one that cannot be read leaves the published rows as they are.
 */
export function withLocalLimits(cards: readonly Card[], plan: Plan, read: ReadRequirement): OwnLimits {
  const problems: PlacedProblem[] = [];
  const changed = cards.map((card) => {
    const local = plan.localLimits.find((limit) => limit.rule === card.id);
    const row = local && ownRow(local, card, { read, problems });
    if (!row) return card;
    return { ...card, limits: row.must ? [row] : [row, ...card.limits.flatMap(withoutWish)] };
  });
  return { cards: changed, problems };
}

interface OwnWork {
  readonly read: ReadRequirement;
  readonly problems: PlacedProblem[];
}

/** The row of an owner's entry; null with a problem where a part of it cannot be taken. */
function ownRow(local: LocalLimit, card: Card, { read, problems }: OwnWork): Limit | null {
  const before = problems.length;
  const grade = (key: "must" | "should"): Requirement | null => {
    const raw = (local.grades as Partial<Record<typeof key, unknown>>)[key];
    const path = [...local.place.path, key];
    if (raw === undefined) return null;
    const tell = (code: ProblemCode, expected: string, got: string, hint: string) =>
      problems.push({ code, place: { file: local.place.file, path }, expected, got, hint });
    const wanted = read(raw, card, (expected, got, hint) => tell("wrong-unit", expected, got, hint));
    const turned = wanted && turnedRound(wanted, card);
    if (turned) tell("contradiction", `${turned}, as rule ${card.id} has it`, wanted.sense, `write ${turned} instead`);
    return wanted;
  };
  const must = grade("must");
  const should = grade("should");
  if (problems.length > before || !(must ?? should)) return null;
  return {
    id: ownersRow,
    where: "anywhere",
    when: [],
    standsFor: card.limits,
    standing: standingOf(local.standing),
    clause: local.from,
    ...(must ? { must } : {}),
    ...(should ? { should } : {}),
  };
}

function standingOf(word: string): Limit["standing"] {
  return word === "law" || word === "standard" || word === "guidance" ? word : "your own wish";
}

/** The sense that every published row of the rule's own measure has, where this one has the opposite. */
function turnedRound({ sense }: Requirement, card: Card): "at_least" | "at_most" | null {
  const rows = card.limits.filter((limit) => !limit.measure).flatMap(({ must, should }) => [must, should]);
  const senses = new Set(rows.flatMap((requirement) => (requirement ? [requirement.sense] : [])));
  const opposite = sense === "at_least" ? "at_most" : sense === "at_most" ? "at_least" : null;
  return opposite !== null && senses.size === 1 && senses.has(opposite) ? opposite : null;
}

function withoutWish(limit: Limit): readonly Limit[] {
  const { should: _, ...rest } = limit;
  return rest.must ? [rest] : [];
}

/** Lays the plan's departures over the findings they cover. An expired one is printed and counts as a failure. */
export function withDepartures(
  findings: readonly Finding[],
  departures: readonly Departure[],
  asOf: string,
): readonly Finding[] {
  return findings.map((finding) => {
    if (finding.verdict !== "not-met" && finding.verdict !== "undecided") return finding;
    const names = finding.features.map((feature) => feature.name);
    const departure = departureFor(departures, finding.rule, names);
    if (!departure) return finding;
    const expired = departure.review < asOf;
    const beneath = {
      verdict: finding.verdict,
      agreed_by: departure.agreedBy,
      because: departure.because,
      review: departure.review,
      expired,
    };
    return { ...finding, verdict: "departure" as const, beneath };
  });
}

/** The departure that covers a rule on features: every feature that it names, or a part of that, plays a role. */
export function departureFor(
  departures: readonly Departure[],
  rule: string,
  names: readonly string[],
): Departure | undefined {
  return departures.find(
    (entry) =>
      entry.rule === rule &&
      entry.features.length > 0 &&
      entry.features.every((called) => names.some((name) => isCalled(name, called))),
  );
}
