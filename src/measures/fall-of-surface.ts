// What: how steeply does this surface fall?
// Formula: the finished fall; else of every triangle between heights taken on it, or of the ground under it, sqrt(a^2 + b^2).
// Source: plane z = a x + b y + c through three points (COMPUTED).
// Valid: straight between the places where the staff stood; the ground is not guessed beyond the levels.
// Witness: the triangle.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import type { CandidatePlace, Found, Measure } from "../model/reading.ts";
import { groundPatches, levelsOn, type PatchPlane, patchesOf } from "../site/surface-planes.ts";
import { slopeOf } from "../terrain/surface.ts";
import { askedFor, missing } from "./asked-for.ts";

export const fallOfSurface: Measure = {
  name: "fall-of-surface",
  dimension: "slope",
  roles: { surface: "a surface" },
  parameters: { shown: { words: ["1 in", "%", "deg"], default: "1 in" } },
  phrase: "it falls {found}",
  shortName: "fall",
  shownIn: "1 in",
  find: (subject, scene): Found => {
    const { surface } = subject;
    if (!surface?.shape) return { is: "does-not-bear" };
    const finished = propertyOf(surface, "finished.fall");
    if (isQuantity(finished)) return stated(finished);
    if (isQuantity(propertyOf(surface, "finished.level")) && finished === undefined) return level();
    const own = levelsOn(surface);
    const patches = own.length > 0 ? patchesOf(own, scene.read) : groundPatches(surface, scene);
    if (patches.length > 0) return { is: "found", places: patches.map(candidate) };
    if (surface.kind !== "surface") return missing(askedFor(surface, "line", "levels of the ground", "length"));
    return surface.existing
      ? missing(askedFor(surface, "levels", "levels at the corners", "length"))
      : missing(askedFor(surface, "finished.fall", "the finished fall", "slope"));
  },
};

const stated = (fall: Quantity): Found => ({
  is: "found",
  places: [{ key: "finished", value: (read) => Math.abs(read(fall)), witness: () => [] }],
});
const level = (): Found => ({ is: "found", places: [{ key: "level", value: () => 0, witness: () => [] }] });

function candidate({ key, plane, corners }: PatchPlane): CandidatePlace {
  return {
    key,
    value: (read) => {
      const now = plane(read);
      return now ? slopeOf(now) : Number.NaN;
    },
    witness: (read) => [{ part: "found", form: "outline", points: corners(read), label: "fall" }],
  };
}
