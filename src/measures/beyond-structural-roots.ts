// What: how far outside the roots that hold the tree up do works stay?
// Formula: distance from the stem less r, r = 0.64 (50 D)^0.42 m, D stem diameter above the root flare (m); r = 1.5 m where D < 0.15 m.
// Source: AS 4970-2009 3.3.5 (READ, an arborists' page); the 2025 edition renames the zones.
// Valid: D to about 1.5 m; roots are taken as spread evenly.
// Witness: the structural zone and the line from the stem to the works.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import { groundFigure, liveSpot, roundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";

const reach = 60;

/** Radius of the structural root zone, metres, of a stem of diameter D metres above the root flare. */
export function structuralRadius(diameter: number): number {
  return diameter < 0.15 ? 1.5 : 0.64 * (50 * diameter) ** 0.42;
}

export const beyondStructuralRoots: Measure = {
  name: "beyond-structural-roots",
  dimension: "length",
  roles: { works: "anything with a shape", tree: "a tree with its stem at the base" },
  parameters: {},
  phrase: "it keeps {found} outside the structural roots of {tree}",
  below: { phrase: "it goes {found} into the structural roots of {tree}", wanted: "outside them" },
  shortName: "clear of structural roots",
  find: (subject, scene) => {
    const { works, tree } = subject;
    const figure = works && groundFigure(works);
    if (!figure || tree?.shape?.form !== "point") return { is: "does-not-bear" };
    const base = propertyOf(tree, "stem_at_base");
    if (!isQuantity(base)) {
      return {
        is: "missing",
        missing: [
          {
            feature: tree,
            property: "stem_at_base",
            asks: `the diameter of the stem of tree "${tree.name}" just above the root flare`,
            dimension: "length",
            why: "missing",
          },
        ],
      };
    }
    const at = liveSpot(tree.shape.at);
    const zone = roundFigure(at, (read) => structuralRadius(read(base)));
    const places = nearPlaces(figure, zone, reach, scene.read).map((near): CandidatePlace => ({
      key: near.key,
      value: near.distance,
      witness: (read) => [
        {
          part: "wanted",
          form: "circle",
          points: [at(read)],
          radius: structuralRadius(read(base)),
          label: "structural roots",
        },
        { part: "found", form: "line", points: near.ends(read) },
      ],
    }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
