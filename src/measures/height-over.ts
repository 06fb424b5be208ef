// What: how much height is clear under what hangs over here?
// Formula: height of the lowest part above the ground: a tree's clearance under its crown, a wire's height, a beam's.
// Source: the plan.
// Valid: where the two overlap on plan (a wire: within the reach given); ground under both taken as level.
// Witness: where they overlap.

import { featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { groundFigure, type LiveFigure, liveSpot, roundFigure } from "../site/live-figure.ts";
import type { Feature } from "../model/plan.ts";
import { nearPlaces } from "../site/near-places.ts";
import { crownAsked, lacksCrown } from "../site/stands.ts";

/** From farther off than this the crown of a tree that nobody has measured is not asked for, metres. */
const widestCrown = 10;

/** Property that tells how high the lowest part of each kind is. */
const underside: Readonly<Record<string, string>> = {
  tree: "clearance_under",
  service: "overhead.height",
  gate: "headroom",
  hedge: "clearance_under",
};

function spreadOf(feature: Feature): LiveFigure | null {
  const radius = propertyOf(feature, "crown.radius");
  if (feature.kind === "tree" && feature.shape?.form === "point" && isQuantity(radius))
    return roundFigure(liveSpot(feature.shape.at), (read) => read(radius));
  return groundFigure(feature);
}

export const heightOver: Measure = {
  name: "height-over",
  dimension: "length",
  roles: { way: "anything with a shape", above: "a tree, a wire, a gate" },
  parameters: { aside: { dimension: "length", default: 0 } },
  phrase: "{found} is clear under {above}",
  below: { phrase: "{above} hangs {found} below the ground", wanted: "clear" },
  shortName: "clear height",
  find: (subject, scene, parameters) => {
    const { way, above } = subject;
    const figure = way && groundFigure(way);
    const spread = above && spreadOf(above);
    const property = above && underside[above.kind];
    if (!figure || !spread || !above || !property) return { is: "does-not-bear" };
    if (above.kind === "service" && propertyOf(above, "overhead") === undefined) return { is: "does-not-bear" };
    const unknown = lacksCrown(above);
    const aside = Number(parameters["aside"]) + (unknown ? widestCrown : 0);
    const near = nearPlaces(figure, spread, aside, scene.read);
    if (near.length === 0) return { is: "does-not-bear" };
    if (unknown) return { is: "missing", missing: [crownAsked(above)] };
    const plain = propertyOf(above, property);
    const height = isQuantity(plain) ? plain : propertyOf(above, `${property}.height`);
    if (!isQuantity(height))
      return {
        is: "missing",
        missing: [
          {
            feature: above,
            property,
            asks: `how high the lowest part of ${featureWords(above)} is above the ground`,
            dimension: "length",
            why: "missing",
          },
        ],
      };
    const [nearest] = [...near].sort(
      (a, b) => a.distance(scene.read) - b.distance(scene.read) || (a.key < b.key ? -1 : 1),
    );
    return {
      is: "found",
      places: [
        {
          key: "lowest",
          value: (read) => read(height),
          witness: (read) => (nearest ? [{ part: "found", form: "point", points: [nearest.ends(read)[1]] }] : []),
        },
      ],
    };
  },
};
