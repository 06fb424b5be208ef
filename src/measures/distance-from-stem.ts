// What: how near do works come to the middle of a tree's stem?
// Formula: least plan distance from the stem's centre to the works, below 0 where the stem stands within them.
// Source: BS 5837:2012 4.6.1 and AS 4970-2009 3.2 measure their zones from the centre of the stem (MEMORY).
// Valid: one circle round one centre; stems standing apart are one circle round the point given as `at`.
// Witness: the line from stem to works, and the stem.

import type { CandidatePlace, Measure } from "../model/reading.ts";
import { groundFigure, spotFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";

/** No zone of any published rule is wider than this, metres (veteran trees: 15 x 2.5 m of stem). */
const reach = 60;

export const distanceFromStem: Measure = {
  name: "distance-from-stem",
  dimension: "length",
  roles: { works: "anything with a shape", tree: "a tree" },
  parameters: {},
  phrase: "it comes within {found} of the stem of {tree}",
  below: { phrase: "the stem of {tree} stands {found} inside it", wanted: "from it" },
  shortName: "distance from stem",
  find: (subject, scene) => {
    const { works, tree } = subject;
    if (!works || tree?.shape?.form !== "point") return { is: "does-not-bear" };
    const figure = groundFigure(works);
    if (!figure) return { is: "does-not-bear" };
    const stem = spotFigure(tree.shape.at);
    const places = nearPlaces(figure, stem, reach, scene.read).map((near): CandidatePlace => ({
      key: near.key,
      value: near.distance,
      ...(near.steepest === undefined ? {} : { steepest: near.steepest }),
      witness: (read) => [{ part: "found", form: "line", points: near.ends(read) }],
    }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
