// What: how steep is this way along its length, at its steepest?
// Formula: rise over run between levels along it; else of the ground under its middle line, triangle by triangle.
// Source: plane geometry.
// Valid: straight between the places where the staff stood; the ground is not guessed beyond the levels.
// Witness: the steepest stretch.

import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure, Missing } from "../model/reading.ts";
import { planLength } from "../site/drain-runs.ts";
import { groundSlopes, stepsAlong } from "../site/way-slopes.ts";
import { askedFor, missing } from "./asked-for.ts";

export const slopeAlong: Measure = {
  name: "slope-along",
  dimension: "slope",
  roles: { way: "a track, path, strip, ramp or route drawn by its middle line" },
  parameters: { shown: { words: ["1 in", "%", "deg"], default: "1 in" } },
  phrase: "it is {found} at its steepest",
  shortName: "slope",
  shownIn: "1 in",
  find: (subject, scene): Found => {
    const { way } = subject;
    if (way?.shape?.form !== "line") return { is: "does-not-bear" };
    const whole = wholeRise(way);
    if (whole) return { is: "found", places: [steepness(whole)] };
    const steps = stepsAlong(way, scene.read);
    const places = steps.length > 0 ? steps : groundSlopes(way, scene, "along");
    return places.length > 0 ? { is: "found", places: places.map(steepness) } : missing(levelsAlong(way));
  },
};

/** A way is as hard to climb as to go down. */
const steepness = (place: CandidatePlace): CandidatePlace => ({
  ...place,
  value: (read) => Math.abs(place.value(read)),
});

/** Slope from end to end where the plan gives the rise, both levels, or the finished fall. */
function wholeRise(way: Feature): CandidatePlace | null {
  const number = (property: string) => {
    const quantity = propertyOf(way, property);
    return isQuantity(quantity) ? (read: Read) => read(quantity) : null;
  };
  const [rise, bottom, top, fall] = [number("rise"), number("bottom"), number("top"), number("finished.fall")];
  const line = way.shape?.form === "line" ? way.shape.line : [];
  const witness = () => [];
  if (fall) return { key: "finished", value: fall, witness };
  if (rise) return { key: "whole", value: (read) => rise(read) / planLength(line, read), witness };
  if (!bottom || !top) return null;
  return { key: "whole", value: (read) => (top(read) - bottom(read)) / planLength(line, read), witness };
}

function levelsAlong(way: Feature): Missing {
  if (way.kind === "ramp" || way.kind === "steps")
    return askedFor(way, "rise", "the height from bottom to top", "length");
  return askedFor(way, way.kind === "surface" ? "levels" : "line", "levels along the middle", "length");
}
