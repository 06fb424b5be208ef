// What: how far outside the edge of a tree's crown do works stay?
// Formula: distance from the stem's centre to the works, less the crown's radius; below 0 under the crown.
// Source: DIN 18920 and RAS-LP 4 count from the crown's edge (READ, yearbook of tree care 2021 and a site handbook).
// Valid: a round crown; the doubt of its radius is the plan's.
// Witness: the crown's edge and the line from it to the works.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import { groundFigure, liveSpot, roundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";

const reach = 60;

export const distanceFromCrown: Measure = {
  name: "distance-from-crown",
  dimension: "length",
  roles: { works: "anything with a shape", tree: "a tree with a crown" },
  parameters: {},
  phrase: "it keeps {found} outside the edge of the crown of {tree}",
  below: { phrase: "it lies {found} inside the edge of the crown of {tree}", wanted: "outside it" },
  shortName: "distance from crown",
  find: (subject, scene) => {
    const { works, tree } = subject;
    if (!works || tree?.shape?.form !== "point") return { is: "does-not-bear" };
    const figure = groundFigure(works);
    const radius = propertyOf(tree, "crown.radius");
    if (!figure) return { is: "does-not-bear" };
    if (!isQuantity(radius)) {
      return {
        is: "missing",
        missing: [
          {
            feature: tree,
            property: "crown.radius",
            asks: `the radius of the crown of tree "${tree.name}"`,
            dimension: "length",
            why: "missing",
          },
        ],
      };
    }
    const at = liveSpot(tree.shape.at);
    const crown = roundFigure(at, (read) => read(radius), 1);
    const places = nearPlaces(figure, crown, reach, scene.read).map((near): CandidatePlace => ({
      key: near.key,
      value: near.distance,
      ...(near.steepest === undefined ? {} : { steepest: near.steepest }),
      witness: (read) => [
        { part: "thing", form: "circle", points: [at(read)], radius: read(radius), label: "crown" },
        { part: "found", form: "line", points: near.ends(read) },
      ],
    }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
