// A hazard that the plan neither draws nor rules out is asked for once.

import type { Card } from "../model/card.ts";
import type { Finding } from "../model/finding.ts";
import { featureWords, type Plan } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { isDrawn, isHazard } from "../site/hazards.ts";
import { fingerprint } from "./fingerprint.ts";
import { hazards, type OpenNeed } from "./needs.ts";
import { unsaidSentence, whetherThereIs } from "./sentence.ts";

export interface UnsaidContext {
  readonly plan: Plan;
  readonly measure: Measure | undefined;
  readonly stages: readonly string[];
  readonly option: string | null;
}

/** The finding and the need of a safety card whose hazard is neither in the plan nor under `none`; null otherwise. */
export function hazardUnsaid(
  card: Card,
  { plan, measure, stages, option }: UnsaidContext,
): { readonly finding: Finding; readonly need: OpenNeed } | null {
  const { hazard } = card;
  if (!hazard || card.stakes !== "safety" || plan.none.includes(hazard)) return null;
  if (isDrawn(hazard, plan.features)) return null;
  const finding: Finding = {
    rule: card.id,
    verdict: "not-given",
    reason: "unsaid",
    grade: "must",
    stakes: card.stakes,
    stage: stages[0] ?? "",
    stages,
    option,
    features: [],
    found: null,
    wanted: null,
    probability: null,
    sentence: unsaidSentence(card),
    remedies: [],
    cautions: card.cautions,
    defers_to: card.defersTo,
    doubts: [],
    at: [],
    witness: [],
    others: [],
    fingerprint: fingerprint(card.id, [], "unsaid", option),
    reading: measure?.shortName ?? "",
    dimension: card.dimension,
    shown_in: "",
    kinked: false,
    decided_by: null,
  };
  const asks = whetherThereIs(hazard);
  const place = { file: plan.file, path: ["none"] };
  return {
    finding,
    need: {
      path: "none",
      asks,
      unit: "",
      rule: card.id,
      stakes: card.stakes,
      reason: "unsaid",
      place,
      together: { sort: hazards, item: hazard },
    },
  };
}

/** Hazards of which one that is drawn says nothing of others. */
const hiddenOnes: ReadonlySet<string> = new Set(["overhead lines", "buried services"]);

/** Asks for the others of a hazard that is drawn, where the plan does not say that it looked for them; null otherwise. */
export function othersUnsaid(card: Card, plan: Plan): OpenNeed | null {
  const { hazard } = card;
  if (!hazard || !hiddenOnes.has(hazard) || plan.none.includes(`other ${hazard}`)) return null;
  const drawn = [...new Set(plan.features.filter((one) => isHazard(hazard, one)).map(featureWords))];
  if (drawn.length === 0) return null;
  return {
    path: "none",
    asks: `whether there are ${hazard} besides ${drawn.join(", ")}: draw them, or put "other ${hazard}" under none if they were looked for and are not there`,
    unit: "",
    rule: card.id,
    stakes: card.stakes,
    reason: "unsaid",
    place: { file: plan.file, path: ["none"] },
  };
}
