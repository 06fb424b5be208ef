// Wells that nobody has drawn: one that is drawn says nothing of a neighbour's, nor of an old one under the yard.

import type { Card, Limit } from "../model/card.ts";
import { type Feature, featureWords, type Plan, propertyOf, roleAndProperty } from "../model/plan.ts";
import { isHazard } from "../site/hazards.ts";
import type { OpenNeed } from "./needs.ts";
import { testProperty } from "./test-property.ts";

const wells = "wells";
const otherWells = "other wells";
/** More things than this are not told by name. */
const mostNamed = 3;

interface WellsQuestion {
  readonly cards: readonly Card[];
  readonly plan: Plan;
  readonly chains: readonly (readonly string[])[];
}

/** A rule that keeps something of the plan away from wells, and how far in metres. */
interface Keeps {
  readonly card: Card;
  readonly things: readonly Feature[];
  readonly reach: number;
}

/**
 * Asks once for wells besides those drawn, where something of the plan must keep away from wells, with the largest
 * published distance that stands at its places; nothing where no well is drawn (the rules themselves ask then) or where
 * `other wells` were looked for.
 */
export function otherWellsNeeds({ cards, plan, chains }: WellsQuestion): readonly OpenNeed[] {
  const drawn = [...new Set(plan.features.filter((one) => isHazard(wells, one)).map(featureWords))];
  if (drawn.length === 0 || plan.none.includes(otherWells)) return [];
  const keeping = cards.flatMap((card) => keepsFrom(card, plan.features, chains) ?? []);
  if (keeping.length === 0) return [];
  const reach = Math.ceil(Math.max(...keeping.map((one) => one.reach)));
  const asks = `whether there are wells, boreholes or springs besides ${drawn.join(", ")} within ${reach} m of ${named(keeping)}, a neighbour's too: draw them, or put "${otherWells}" under none if they were looked for and are not there`;
  return keeping.map(({ card }) => ({
    path: "none",
    asks,
    unit: "",
    rule: card.id,
    stakes: card.stakes,
    reason: "unsaid",
    place: { file: plan.file, path: ["none"] },
  }));
}

function named(keeping: readonly Keeps[]): string {
  const things = [...new Set(keeping.flatMap((one) => one.things).map(featureWords))];
  if (things.length > mostNamed) return "what can foul water";
  const [last = "", ...before] = things.toReversed();
  return before.length === 0 ? last : `${before.toReversed().join(", ")} or ${last}`;
}

function keepsFrom(card: Card, features: readonly Feature[], chains: WellsQuestion["chains"]): Keeps | null {
  if (!card.against) return null;
  const kindOfOther = `${card.against.role}.kind`;
  const rows = card.limits.filter(
    (limit) =>
      chains.some((chain) => chain.includes(limit.where)) &&
      limit.when.some(
        (one) => one.of === kindOfOther && "is" in one && Array.isArray(one.is) && one.is.includes("well"),
      ),
  );
  const pairs = features
    .filter((feature) => card.about.kinds.includes(feature.kind))
    .flatMap((feature) => rows.filter((row) => bears(row, card.about.role, feature)).map((row) => ({ feature, row })));
  if (pairs.length === 0) return null;
  const reach = Math.max(...pairs.map(({ row }) => farthest(row)));
  return Number.isFinite(reach) && reach > 0 ? { card, things: pairs.map(({ feature }) => feature), reach } : null;
}

/** Whether nothing that is said of the thing itself keeps the row from speaking of it. */
function bears(limit: Limit, role: string, feature: Feature): boolean {
  const list = limit.forEach && propertyOf(feature, roleAndProperty(limit.forEach)[1]);
  if (limit.forEach && list === undefined) return false;
  const said = [list].flat();
  return limit.when.every((condition) => {
    if (condition.of === "each") return "is" in condition && [condition.is].flat().some((word) => said.includes(word));
    if (roleAndProperty(condition.of)[0] !== role) return true;
    return testProperty(condition, { [role]: feature }, { inBand: () => "perhaps" }) !== "no";
  });
}

/** The farthest distance that a row asks for, in metres. */
function farthest({ must, should }: Limit): number {
  return Math.max(
    0,
    ...[must, should].map((wanted) =>
      wanted?.sense === "at_least" && wanted.bound.from === "number" ? wanted.bound.value : 0,
    ),
  );
}
