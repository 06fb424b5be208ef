// What: what does the plan say a number of this thing is?
// Formula: the number itself.
// Source: the plan.
// Valid: what was written, with its doubt; it is as true as whoever wrote it.
// Witness: none.

import { featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import { askWords } from "../model/property-words.ts";
import type { Dimension } from "../model/quantity.ts";
import type { Measure } from "../model/reading.ts";

const dimensions: readonly Dimension[] = [
  "length",
  "slope",
  "share",
  "count",
  "mass",
  "time",
  "pressure",
  "area",
  "volume",
  "speed",
  "angle",
  "infiltration",
];

/** One measure a dimension: `stated-length`, `stated-slope` ... Parameter `property` is the dotted name. */
export const statedMeasures: readonly Measure[] = dimensions.map((dimension): Measure => ({
  name: `stated-${dimension}`,
  dimension,
  roles: { thing: "anything that has the property" },
  parameters: {
    property: { words: [], default: "" },
    shown: { words: ["m", "mm", "%", "1 in", "deg", "days", "h", "t", "kg", ""], default: "" },
  },
  phrase: "its {property} is {found}",
  shortName: "what the plan says",
  find: (subject, _scene, parameters) => {
    const thing = subject["thing"];
    const property = String(parameters["property"]);
    if (!thing) return { is: "does-not-bear" };
    const number = propertyOf(thing, property);
    if (isQuantity(number))
      return { is: "found", places: [{ key: property, value: (read) => read(number), witness: () => [] }] };
    return {
      is: "missing",
      missing: [
        {
          feature: thing,
          property,
          asks: askWords(property, featureWords(thing)),
          dimension,
          why: "missing",
        },
      ],
    };
  },
}));
