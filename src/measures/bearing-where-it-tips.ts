// What: what is the bearing value of the soil where a vehicle raises its body, boom or loader?
// Formula: the ground's own CBR, else the least of its readings, else the least of those of the plot.
// Source: the plan.
// Valid: read in the wet season, under the layers; where an axle load or mass is known to be carried, the rules on loads speak.
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import type { Measure } from "../model/reading.ts";
import { tipsOn } from "../site/tips-on.ts";

export const bearingWhereItTips: Measure = {
  name: "bearing-where-it-tips",
  dimension: "share",
  roles: { manoeuvre: "a manoeuvre that raises a body, boom or loader", ground: "a surface" },
  parameters: {},
  phrase: "the soil under {ground} bears a CBR of {found}",
  shortName: "bearing value of the soil",
  shownIn: "%",
  find: ({ manoeuvre, ground }, scene) => {
    if (!manoeuvre || !ground || propertyOf(manoeuvre, "raises") !== true) return { is: "does-not-bear" };
    if (!tipsOn(manoeuvre, scene).includes(ground) || isKnownToCarry(ground)) return { is: "does-not-bear" };
    const read = [
      propertyOf(ground, "formation.cbr"),
      propertyOf(ground, "formation.cbr_readings"),
      scene.site ? propertyOf(scene.site, "ground.cbr") : undefined,
    ]
      .map((value) => [value].flat().filter(isQuantity))
      .find((readings): readings is Quantity[] => readings.length > 0);
    if (read)
      return {
        is: "found",
        places: read.map((one, k) => ({ key: `reading ${k}`, value: (of) => of(one), witness: () => [] })),
      };
    const asks = `the bearing value (CBR) of the soil under ${featureWords(ground)}, read in the wet season, or what axle it is known to carry`;
    return {
      is: "missing",
      missing: [{ feature: ground, property: "formation.cbr", asks, dimension: "share", why: "missing" }],
    };
  },
};

function isKnownToCarry(ground: Feature): boolean {
  return ["carries.axle", "carries.mass"].some((property) => isQuantity(propertyOf(ground, property)));
}
