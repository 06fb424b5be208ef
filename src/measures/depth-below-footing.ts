// What: how far does this dig go below the underside of a footing beside it?
// Formula: underside of the footing - bottom of the dig, at the places where they come nearest; below 0 where it stays above.
// Source: plane geometry.
// Valid: levels of one datum, or both depths below level ground.
// Witness: the nearest place.

import type { CandidatePlace, Measure } from "../model/reading.ts";
import { digBottom, footingUnderside, howMuchDeeper } from "../site/dug-depth.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { askedFor } from "./asked-for.ts";

/** Farther than this no dig that people make by themselves reaches a footing, metres. */
const reach = 3;

export const depthBelowFooting: Measure = {
  name: "depth-below-footing",
  dimension: "length",
  roles: { thing: "a run of a drain or an excavation", other: "a building or a wall with its foundation" },
  parameters: { bed: { dimension: "length", default: 0 } },
  phrase: "it goes {found} below the footing of {other}",
  below: { phrase: "it stops {found} above the footing of {other}" },
  shortName: "below the footing",
  find: (subject, scene, parameters) => {
    const { thing, other } = subject;
    const [a, b] = [thing && groundFigure(thing), other && groundFigure(other)];
    if (!thing || !other || !a || !b) return { is: "does-not-bear" };
    const near = nearPlaces(a, b, reach, scene.read);
    if (near.length === 0) return { is: "does-not-bear" };
    const bottom = digBottom(thing, Number(parameters["bed"]), scene);
    const under = footingUnderside(other);
    if ("missing" in bottom) return { is: "missing", missing: bottom.missing };
    if ("missing" in under) return { is: "missing", missing: under.missing };
    const deeper = howMuchDeeper(bottom, under);
    const wanted = askedFor(other, "foundation.underside", "the level of the underside of the foundation", "length");
    if (!deeper) return { is: "missing", missing: [wanted] };
    const places = near.map((place): CandidatePlace => ({
      key: place.key,
      value: (read) => deeper(read, place.ends(read)[0]),
      witness: (read) => [{ part: "found", form: "line", points: place.ends(read) }],
    }));
    return { is: "found", places };
  },
};
