// What: how far does one number of a thing stand above another?
// Formula: upper - lower, both lengths or levels of the same thing.
// Source: the plan.
// Valid: both numbers counted from the same datum.
// Witness: none.

import { featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import { askWords } from "../model/property-words.ts";
import type { Measure, Missing } from "../model/reading.ts";

export const difference: Measure = {
  name: "difference",
  dimension: "length",
  roles: { thing: "anything that has both" },
  parameters: {
    upper: { words: [], default: "" },
    lower: { words: [], default: "" },
    shown: { words: ["m", "mm"], default: "m" },
  },
  phrase: "its {upper} is {found} above its {lower}",
  below: { phrase: "its {upper} is {found} below its {lower}", wanted: "above it" },
  shortName: "difference of level",
  find: (subject, _scene, parameters) => {
    const thing = subject["thing"];
    if (!thing) return { is: "does-not-bear" };
    const names = [String(parameters["upper"]), String(parameters["lower"])];
    const [upper, lower] = names.map((name) => propertyOf(thing, name));
    if (isQuantity(upper) && isQuantity(lower))
      return {
        is: "found",
        places: [{ key: names.join("-"), value: (read) => read(upper) - read(lower), witness: () => [] }],
      };
    const missing = names.flatMap((property): readonly Missing[] =>
      isQuantity(propertyOf(thing, property))
        ? []
        : [
            {
              feature: thing,
              property,
              asks: askWords(property, featureWords(thing)),
              dimension: "length",
              why: "missing",
            },
          ],
    );
    return { is: "missing", missing };
  },
};
