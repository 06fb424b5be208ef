// What: how much height is left over the vehicle under what hangs over its way?
// Formula: height of the lowest part above the ground less the height of the vehicle (raised, over the ground on which it raises its body).
// Source: the plan.
// Valid: the ground that the manoeuvre uses; ground under both taken as level. Wires are never judged by this.
// Witness: the point where it hangs nearest.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure, Missing, Scene } from "../model/reading.ts";
import { groundFigure, type LiveFigure, liveSpot, roundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { crownAsked, lacksCrown } from "../site/stands.ts";
import { tipsOn } from "../site/tips-on.ts";
import { goesThrough, groundNames, vehicleOf } from "../site/used-by.ts";

/** Property that tells how high the lowest part of each kind is. */
const underside: Readonly<Record<string, string>> = {
  tree: "clearance_under",
  hedge: "clearance_under",
  gate: "headroom",
  obstacle: "underside",
};

/** From farther off than this the crown of a tree that nobody has measured is not asked for, metres. */
const widestCrown = 10;

export const headroomSpare: Measure = {
  name: "headroom-spare",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", above: "a tree, hedge, gate or obstacle over its way" },
  parameters: {},
  phrase: "{found} is left over the vehicle under {above}",
  below: { phrase: "{above} is {found} too low for the vehicle", wanted: "to spare" },
  shortName: "height left over",
  find: ({ manoeuvre, above }, scene) => {
    const property = above && underside[above.kind];
    const vehicle = manoeuvre && vehicleOf(manoeuvre, scene);
    if (!manoeuvre || !above || !property || !vehicle || !isOver(manoeuvre, above, scene))
      return { is: "does-not-bear" };
    if (lacksCrown(above)) return { is: "missing", missing: [crownAsked(above)] };
    const height = propertyOf(above, property);
    // A gate or a post that says nothing of what is above it has open sky.
    if (!isQuantity(height) && (above.kind === "gate" || above.kind === "obstacle")) return { is: "does-not-bear" };
    const tall = isRaisedUnder(manoeuvre, above, scene) ? "height_raised" : "height";
    const own = propertyOf(vehicle, tall);
    if (isQuantity(height) && isQuantity(own))
      return { is: "found", places: [{ key: "lowest", value: (read) => read(height) - read(own), witness: () => [] }] };
    const missing: readonly (Missing | null)[] = [
      isQuantity(height) ? null : lack(above, property, "height of the lowest part"),
      isQuantity(own) ? null : lack(vehicle, tall, tall === "height" ? "height" : "height with its body up"),
    ];
    return { is: "missing", missing: missing.flatMap((one) => one ?? []) };
  },
};

function lack(feature: Feature, property: string, words: string): Missing {
  return { feature, property, asks: `the ${words} of ${featureWords(feature)}`, dimension: "length", why: "missing" };
}

/** It is tall where it raises its body; on the rest of its way it drives with it down. */
function isRaisedUnder(manoeuvre: Feature, above: Feature, scene: Scene): boolean {
  if (propertyOf(manoeuvre, "raises") !== true) return false;
  const spread = spreadOf(above);
  const reach = lacksCrown(above) ? widestCrown : 0;
  return tipsOn(manoeuvre, scene).some((ground) => {
    const figure = groundFigure(ground);
    return figure !== null && spread !== null && nearPlaces(figure, spread, reach, scene.read).length > 0;
  });
}

function isOver(manoeuvre: Feature, above: Feature, scene: Scene): boolean {
  if (above.kind === "gate") return goesThrough(manoeuvre, above, scene);
  const spread = spreadOf(above);
  const used = groundNames(manoeuvre);
  const reach = lacksCrown(above) ? widestCrown : 0;
  return (
    spread !== null &&
    scene.standing("surfaces").some((surface) => {
      const figure = used.includes(surface.name) ? groundFigure(surface) : null;
      return figure !== null && nearPlaces(figure, spread, reach, scene.read).length > 0;
    })
  );
}

function spreadOf(feature: Feature): LiveFigure | null {
  const radius = propertyOf(feature, "crown.radius");
  if (feature.kind === "tree" && feature.shape?.form === "point" && isQuantity(radius))
    return roundFigure(liveSpot(feature.shape.at), (read) => read(radius));
  return groundFigure(feature);
}
