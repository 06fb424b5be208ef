// What: how steep is this way across, at its steepest?
// Formula: the crossfall that the plan states; else that of the ground square to the middle line, triangle by triangle.
// Source: plane geometry.
// Valid: straight between the places where the staff stood; the ground is not guessed beyond the levels.
// Witness: the stretch.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { CandidatePlace, Found, Measure } from "../model/reading.ts";
import { groundSlopes } from "../site/way-slopes.ts";
import { askedFor, missing } from "./asked-for.ts";

export const slopeAcross: Measure = {
  name: "slope-across",
  dimension: "slope",
  roles: { way: "a track, path, strip or ramp drawn by its middle line" },
  parameters: { shown: { words: ["1 in", "%", "deg"], default: "%" } },
  phrase: "it falls {found} across",
  shortName: "crossfall",
  shownIn: "%",
  find: (subject, scene): Found => {
    const { way } = subject;
    if (way?.shape?.form !== "line") return { is: "does-not-bear" };
    for (const property of ["finished.crossfall", "crossfall"]) {
      const stated = propertyOf(way, property);
      if (isQuantity(stated))
        return {
          is: "found",
          places: [{ key: "stated", value: (read) => Math.abs(read(stated)), witness: () => [] }],
        };
    }
    const places = way.kind === "ramp" ? [] : groundSlopes(way, scene, "across");
    if (places.length > 0) return { is: "found", places: places.map(steepness) };
    return missing(
      askedFor(way, way.kind === "surface" ? "finished.crossfall" : "crossfall", "the crossfall", "slope"),
    );
  },
};

/** A way is as hard to keep on whichever side is the lower. */
const steepness = (place: CandidatePlace): CandidatePlace => ({
  ...place,
  value: (read) => Math.abs(place.value(read)),
});
