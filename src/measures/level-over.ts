// What: how far does a level of one thing stand above a level of another?
// Formula: own level - the other's level, both reduced to the plan's datum.
// Source: the plan's levels.
// Valid: water in the ground mostly, not always, follows the surface: a level is a hint of which way it flows.
// Witness: none.

import { featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import { askWords } from "../model/property-words.ts";
import type { Measure, Missing } from "../model/reading.ts";

export const levelOver: Measure = {
  name: "level-over",
  dimension: "length",
  roles: { thing: "anything with the level", other: "anything with the level" },
  parameters: { own: { words: [], default: "level" }, its: { words: [], default: "level" } },
  phrase: "it lies {found} above {other}",
  below: { phrase: "it lies {found} below {other}", wanted: "above it" },
  shortName: "height above",
  find: (subject, _scene, parameters) => {
    const { thing, other } = subject;
    if (!thing || !other) return { is: "does-not-bear" };
    const asked = [
      { feature: thing, property: String(parameters["own"]) },
      { feature: other, property: String(parameters["its"]) },
    ];
    const [upper, lower] = asked.map(({ feature, property }) => propertyOf(feature, property));
    if (isQuantity(upper) && isQuantity(lower))
      return {
        is: "found",
        places: [{ key: "levels", value: (read) => read(upper) - read(lower), witness: () => [] }],
      };
    const missing = asked
      .filter(({ feature, property }) => !isQuantity(propertyOf(feature, property)))
      .map(({ feature, property }): Missing => ({
        feature,
        property,
        asks: askWords(property, featureWords(feature)),
        dimension: "length",
        why: "missing",
      }));
    return { is: "missing", missing };
  },
};
