// What: how much does a number of one thing leave over beyond a number of another?
// Formula: the thing's own number less the other's.
// Source: the plan.
// Valid: numbers of one dimension, written for the same purpose (a width and what must pass it).
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import { propertyWords } from "../model/property-words.ts";
import type { Dimension } from "../model/quantity.ts";
import type { Measure, Missing } from "../model/reading.ts";

const dimensions: readonly Dimension[] = ["length", "mass"];

/** One measure a dimension: `length-left-over`, `mass-left-over`. */
export const leftOverMeasures: readonly Measure[] = dimensions.map((dimension): Measure => ({
  name: `${dimension}-left-over`,
  dimension,
  roles: { thing: "what has the number", other: "what takes from it" },
  parameters: { own: { words: [], default: "" }, taken: { words: [], default: "" } },
  phrase: "its {own} leaves {found} beyond the {taken} of {other}",
  below: { phrase: "the {taken} of {other} is {found} more than its {own}", wanted: "to spare" },
  shortName: "left over",
  find: ({ thing, other }, _scene, parameters) => {
    if (!thing || !other) return { is: "does-not-bear" };
    const [own, taken] = [String(parameters["own"]), String(parameters["taken"])];
    const [has, takes] = [propertyOf(thing, own), propertyOf(other, taken)];
    if (isQuantity(has) && isQuantity(takes))
      return { is: "found", places: [{ key: own, value: (read) => read(has) - read(takes), witness: () => [] }] };
    const lacking = (feature: Feature, property: string, given: boolean): readonly Missing[] =>
      given
        ? []
        : [
            {
              feature,
              property,
              asks: `the ${propertyWords(property)} of ${featureWords(feature)}`,
              dimension,
              why: "missing",
            },
          ];
    return {
      is: "missing",
      missing: [...lacking(thing, own, isQuantity(has)), ...lacking(other, taken, isQuantity(takes))],
    };
  },
}));
