// What: how much topsoil is left under this surface?
// Formula: depth of topsoil on the plot - depth stripped for the formation; below 0 where more is stripped.
// Source: the plan.
// Valid: one depth for the whole plot, from holes dug by hand; hollows hold more.
// Witness: none.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { askedFor, missing } from "./asked-for.ts";

export const topsoilLeft: Measure = {
  name: "topsoil-left",
  dimension: "length",
  roles: { surface: "a surface to be built" },
  parameters: {},
  phrase: "{found} of topsoil is left under it",
  shortName: "topsoil left",
  shownIn: "mm",
  find: (subject, scene) => {
    const { surface } = subject;
    const { site } = scene;
    if (!surface || surface.existing || propertyOf(surface, "formation") === undefined) return { is: "does-not-bear" };
    const stripped = propertyOf(surface, "formation.topsoil_stripped");
    const depth = site ? propertyOf(site, "ground.topsoil") : undefined;
    if (!isQuantity(stripped))
      return missing(askedFor(surface, "formation.topsoil_stripped", "the depth of topsoil stripped", "length"));
    if (!isQuantity(depth))
      return missing(askedFor(site ?? surface, "ground.topsoil", "the depth of topsoil", "length"));
    return {
      is: "found",
      places: [{ key: "topsoil", value: (read) => read(depth) - read(stripped), witness: () => [] }],
    };
  },
};
