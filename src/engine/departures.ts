// Agreed departures and the owner's own limits: what the plan says about rules.

import type { Card, Requirement } from "../model/card.ts";
import type { Finding } from "../model/finding.ts";
import type { Departure, Plan } from "../model/plan.ts";
import { isCalled } from "../site/parts.ts";

/** Turns a raw `must:`/`should:` of the plan into a requirement in the card's dimension; null where it cannot be read. */
export type ReadRequirement = (raw: unknown, card: Card) => Requirement | null;

/** Cards with the plan's own limits standing before every published row. */
export function withLocalLimits(cards: readonly Card[], plan: Plan, read: ReadRequirement): readonly Card[] {
  if (plan.localLimits.length === 0) return cards;
  return cards.map((card) => {
    const local = plan.localLimits.find((limit) => limit.rule === card.id);
    const grades = local?.grades as { must?: unknown; should?: unknown } | undefined;
    const must = grades?.must === undefined ? null : read(grades.must, card);
    const should = grades?.should === undefined ? null : read(grades.should, card);
    if (!local || !(must ?? should)) return card;
    const standing =
      local.standing === "law" || local.standing === "standard" || local.standing === "guidance"
        ? local.standing
        : "your own wish";
    const row = {
      id: "your-entry",
      where: "anywhere",
      when: [],
      standing,
      clause: local.from,
      ...(must ? { must } : {}),
      ...(should ? { should } : {}),
    } as const;
    return { ...card, limits: [row] };
  });
}

/** Lays the plan's departures over the findings they cover. An expired one is printed and counts as a failure. */
export function withDepartures(
  findings: readonly Finding[],
  departures: readonly Departure[],
  asOf: string,
): readonly Finding[] {
  return findings.map((finding) => {
    if (finding.verdict !== "not-met" && finding.verdict !== "undecided") return finding;
    const departure = departures.find((entry) => entry.rule === finding.rule && covers(entry, finding));
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

/** A departure covers a finding when every feature it names, or a part of that, plays a role in it. */
function covers(departure: Departure, finding: Finding): boolean {
  return (
    departure.features.length > 0 &&
    departure.features.every((name) => finding.features.some((feature) => isCalled(feature.name, name)))
  );
}
