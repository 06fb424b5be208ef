// One number or word that a measure would have to know, as a question to the plan.

import { type Feature, featureWords } from "../model/plan.ts";
import type { Dimension } from "../model/quantity.ts";
import type { Found, Missing } from "../model/reading.ts";

/** Asks for a property of a feature; `what` is its name in words: `the level of the damp course`. */
export function askedFor(feature: Feature, property: string, what: string, dimension?: Dimension): Missing {
  return {
    feature: feature.partOf ?? feature,
    property,
    asks: `${what} of ${featureWords(feature.partOf ?? feature)}`,
    ...(dimension ? { dimension } : {}),
    why: "missing",
  };
}

/** The answer of a measure that cannot be found without them. */
export function missing(...wanted: readonly Missing[]): Found {
  return { is: "missing", missing: wanted };
}
