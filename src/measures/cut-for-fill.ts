// What: how much of the earth that this surface needs as fill comes out of its own cut?
// Formula: cut x rolled volume for one dug / fill, between the ground and the formation under all layers.
// Source: volumes are plane geometry on the levelled ground; the factor is that of the soil the plan names, else the card's.
// Valid: where levels reach under all of it; topsoil and what is unfit to fill with are not taken off.
// Witness: none.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Found, Measure } from "../model/reading.ts";
import { earthworksOf } from "../site/earthworks.ts";

/** Less fill or cut than this part of the surface's area by 1 m is none: dressing, not moving earth (method). */
const dressing = 0.02;

export const cutForFill: Measure = {
  name: "cut-for-fill",
  dimension: "share",
  roles: { surface: "a surface to be built, with its finished level" },
  parameters: {
    rolled_for_dug: { dimension: "count", default: 1 },
    /** Standard doubt of that factor, as a share. */
    doubt: { dimension: "share", default: 0 },
  },
  phrase: "its cut gives {found} of the fill it needs",
  shortName: "cut for fill",
  shownIn: "%",
  find: ({ surface }, scene, parameters): Found => {
    const works = surface ? earthworksOf(surface, scene.levels, scene.read) : null;
    const now = works?.volumes(scene.read) ?? null;
    if (!works || !now || works.notKnown > dressing * works.area) return { is: "does-not-bear" };
    if (Math.min(now.cut, now.fill) < dressing * works.area) return { is: "does-not-bear" };
    const own = scene.site ? propertyOf(scene.site, "rolled_for_dug") : undefined;
    const usual = Number(parameters["rolled_for_dug"]);
    const factor = (read: typeof scene.read) => (isQuantity(own) ? read(own) : usual);
    const usualDoubt = isQuantity(own) ? 0 : Number(parameters["doubt"]);
    const value = (read: typeof scene.read): number => {
      const volumes = works.volumes(read);
      return volumes ? (factor(read) * volumes.cut) / volumes.fill : Number.NaN;
    };
    const share = value(scene.read);
    const methodU = share * Math.hypot(usualDoubt, works.roughU / now.cut, works.roughU / now.fill);
    return { is: "found", places: [{ key: "volumes", value, methodU, witness: () => [] }] };
  },
};
