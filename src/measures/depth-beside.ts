// What: how far does this dig stay outside the line that runs down at 45 degrees from a footing?
// Formula: clear distance on plan - (underside of the footing - bottom of the dig); below 0 where the dig reaches under it.
// Source: the 45 degree line of the trade (PRACTICE); Approved Document H 2.25 and diagram 8 (MEMORY).
// Valid: a screen; levels of one datum, or both depths below level ground. Soil, water and load on the footing are not seen.
// Witness: the nearest place.

import type { Feature } from "../model/plan.ts";
import type { CandidatePlace, Measure, Missing } from "../model/reading.ts";
import { type Deep, type Deeper, digBottom, footingUnderside, howMuchDeeper } from "../site/dug-depth.ts";
import { groundFigure } from "../site/live-figure.ts";
import { type NearPlace, nearPlaces } from "../site/near-places.ts";
import { askedFor } from "./asked-for.ts";

/** Farther than this no dig that people make by themselves reaches a footing, metres. */
const reach = 3;

export const depthBeside: Measure = {
  name: "depth-beside",
  dimension: "length",
  roles: { thing: "a run of a drain or an excavation", other: "a building or a wall with its foundation" },
  parameters: { bed: { dimension: "length", default: 0 } },
  phrase: "it keeps {found} outside the line that runs down at 45 degrees from the footing of {other}",
  below: {
    phrase: "its bottom lies {found} below the line that runs down at 45 degrees from the footing of {other}",
    wanted: "outside the line",
  },
  shortName: "outside the line",
  find: (subject, scene, parameters) => {
    const { thing: dig, other: footing } = subject;
    const a = dig && groundFigure(dig);
    const b = footing && groundFigure(footing);
    if (!dig || !footing || !a || !b) return { is: "does-not-bear" };
    const near = nearPlaces(a, b, reach, scene.read);
    if (near.length === 0) return { is: "does-not-bear" };
    const bottom = digBottom(dig, Number(parameters["bed"]), scene);
    const under = footingUnderside(footing);
    const missing = [...("missing" in bottom ? bottom.missing : []), ...("missing" in under ? under.missing : [])];
    if ("missing" in bottom || "missing" in under || missing.length > 0) return { is: "missing", missing };
    const deeper = howMuchDeeper(bottom, under);
    if (!deeper) return { is: "missing", missing: [levelOf(dig, footing, under)] };
    return { is: "found", places: near.map((place) => candidate(place, deeper)) };
  },
};

function levelOf(dig: Feature, footing: Feature, under: Deep): Missing {
  return under.level
    ? askedFor(dig, dig.kind === "drain run" ? "inverts" : "bottom", "the levels of the bottom", "length")
    : askedFor(footing, "foundation.underside", "the level of the underside of the foundation", "length");
}

function candidate(near: NearPlace, deeper: Deeper): CandidatePlace {
  return {
    key: near.key,
    // A drain that runs through under a wall is beside its footing by nothing, however far it goes on.
    value: (read) => Math.max(0, near.distance(read)) - deeper(read, near.ends(read)[0]),
    witness: (read) => [{ part: "found", form: "line", points: near.ends(read), label: "beside the footing" }],
  };
}
