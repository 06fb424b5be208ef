// What: how much wider is a bridge, culvert or grid than the vehicle that goes over it?
// Formula: clear width for the traffic less the width of the body.
// Source: the plan.
// Valid: driven over straight; a bend before it takes more.
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure, Missing } from "../model/reading.ts";
import { usesWay, vehicleOf } from "../site/used-by.ts";

export const crossingSpare: Measure = {
  name: "crossing-spare",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", crossing: "a bridge, culvert or grid that it goes over" },
  parameters: {},
  phrase: "{crossing} is {found} wider than the vehicle",
  below: { phrase: "{crossing} is {found} narrower than the vehicle", wanted: "wider" },
  shortName: "wider than the vehicle",
  find: ({ manoeuvre, crossing }, scene) => {
    if (!manoeuvre || !crossing || !usesWay(manoeuvre, crossing, scene)) return { is: "does-not-bear" };
    const vehicle = vehicleOf(manoeuvre, scene);
    if (!vehicle) return { is: "does-not-bear" };
    const [clear, width] = [propertyOf(crossing, "width"), propertyOf(vehicle, "width")];
    if (isQuantity(clear) && isQuantity(width))
      return {
        is: "found",
        places: [{ key: "crossing", value: (read) => read(clear) - read(width), witness: () => [] }],
      };
    const lacking: readonly (Missing | null)[] = [
      isQuantity(clear) ? null : widthOf(crossing, "clear width"),
      isQuantity(width) ? null : widthOf(vehicle, "width"),
    ];
    return { is: "missing", missing: lacking.flatMap((one) => one ?? []) };
  },
};

function widthOf(feature: Feature, words: string): Missing {
  const asks = `the ${words} of ${featureWords(feature)}`;
  return { feature, property: "width", asks, dimension: "length", why: "missing" };
}
