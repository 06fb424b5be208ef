// What: how much more can the ground carry than the vehicle that uses it weighs?
// Formula: the mass that the surface or crossing is known to carry, less the mass of the vehicle as it comes.
// Source: the plan.
// Valid: as true as whoever said what it carries; the strength of a bridge is an engineer's.
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure, Missing } from "../model/reading.ts";
import { groundNames, vehicleOf } from "../site/used-by.ts";

export const loadLeft: Measure = {
  name: "load-left",
  dimension: "mass",
  roles: { manoeuvre: "a manoeuvre", way: "a surface or crossing that it uses" },
  parameters: {},
  phrase: "{way} is known to carry {found} more than the vehicle weighs",
  below: { phrase: "the vehicle weighs {found} more than {way} is known to carry" },
  shortName: "load left",
  find: ({ manoeuvre, way }, scene) => {
    const vehicle = manoeuvre && vehicleOf(manoeuvre, scene);
    const used = manoeuvre ? groundNames(manoeuvre) : [];
    const on = way && propertyOf(way, "on");
    const names = way ? [way.name, ...(typeof on === "string" ? [on] : [])] : [];
    if (!vehicle || !way || !names.some((name) => used.includes(name))) return { is: "does-not-bear" };
    const property = way.kind === "crossing" ? "load" : "carries.mass";
    const [carries, weighs] = [propertyOf(way, property), propertyOf(vehicle, "mass")];
    if (isQuantity(carries) && isQuantity(weighs))
      return {
        is: "found",
        places: [{ key: "load", value: (read) => read(carries) - read(weighs), witness: () => [] }],
      };
    const missing: readonly (Missing | null)[] = [
      isQuantity(carries) ? null : lack(way, property, "load that can be carried by"),
      isQuantity(weighs) ? null : lack(vehicle, "mass", "mass of"),
    ];
    return { is: "missing", missing: missing.flatMap((one) => one ?? []) };
  },
};

function lack(feature: Feature, property: string, words: string): Missing {
  return { feature, property, asks: `the ${words} ${featureWords(feature)}`, dimension: "mass", why: "missing" };
}
