// One number or word that a measure would have to know, as a question to the plan.

import { type Feature, featureWords } from "../model/plan.ts";
import type { Dimension } from "../model/quantity.ts";
import type { Found, Missing } from "../model/reading.ts";
import { askedOf } from "../site/parts.ts";

/** Asks for a property of a feature; `what` is its name in words: `the level of the damp course`. */
export function askedFor(feature: Feature, property: string, what: string, dimension?: Dimension): Missing {
  const whole = askedOf(feature);
  return {
    feature: whole,
    property,
    asks: `${what} of ${featureWords(whole)}`,
    ...(dimension ? { dimension } : {}),
    why: "missing",
  };
}

/** The answer of a measure that cannot be found without them. */
export function missing(...wanted: readonly Missing[]): Found {
  return { is: "missing", missing: wanted };
}

/** The width of a trench, which tells where its edges are. */
export function widthOfTrench(trench: Feature): Missing {
  return askedFor(trench, "width", "the width", "length");
}
