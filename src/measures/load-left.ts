// What: how much more can the ground carry than the vehicle that uses it weighs, and than its heaviest axle?
// Formula: the mass, or axle load, that the surface or crossing is known to carry, less that of the vehicle as it comes.
// Source: the plan.
// Valid: as true as whoever said what it carries; the strength of a bridge is an engineer's.
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure, Missing, Scene, Subject } from "../model/reading.ts";
import { usesWay, vehicleOf } from "../site/used-by.ts";

const roles = { manoeuvre: "a manoeuvre", way: "a surface or crossing that it uses" };

/** The vehicle of a manoeuvre, where it uses a way; null where it does not. */
function driverOn({ manoeuvre, way }: Subject, scene: Scene): Feature | null {
  const vehicle = manoeuvre && vehicleOf(manoeuvre, scene);
  return vehicle && way && usesWay(manoeuvre, way, scene) ? vehicle : null;
}

export const axleLeft: Measure = {
  name: "axle-left",
  dimension: "mass",
  roles,
  parameters: {},
  phrase: "{way} is known to carry {found} more than its heaviest axle",
  below: { phrase: "its heaviest axle weighs {found} more than {way} is known to carry" },
  shortName: "axle load left",
  find: (subject, scene) => {
    const vehicle = driverOn(subject, scene);
    const { way } = subject;
    if (!vehicle || !way) return { is: "does-not-bear" };
    const property = way.kind === "crossing" ? "axle_load" : "carries.axle";
    const [carries, weighs] = [propertyOf(way, property), propertyOf(vehicle, "axle_load")];
    // Where neither is known the question of the whole mass is asked, and this one after it.
    if (!isQuantity(carries) && !isQuantity(weighs)) return { is: "does-not-bear" };
    if (isQuantity(carries) && isQuantity(weighs))
      return {
        is: "found",
        places: [{ key: "axle", value: (read) => read(carries) - read(weighs), witness: () => [] }],
      };
    const lacks = isQuantity(carries)
      ? lack(vehicle, "axle_load", "heaviest axle load of")
      : lack(way, property, "axle load that can be carried by");
    return { is: "missing", missing: [lacks] };
  },
};

export const loadLeft: Measure = {
  name: "load-left",
  dimension: "mass",
  roles,
  parameters: {},
  phrase: "{way} is known to carry {found} more than the vehicle weighs",
  below: { phrase: "the vehicle weighs {found} more than {way} is known to carry" },
  shortName: "load left",
  find: (subject, scene) => {
    const vehicle = driverOn(subject, scene);
    const { way } = subject;
    if (!vehicle || !way) return { is: "does-not-bear" };
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
