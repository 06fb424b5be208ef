// What: how wide, or how long, is a parking bay?
// Formula: the bay's number in the plan; else the shorter, or longer, pair of sides of a bay drawn by four corners.
// Source: plane geometry.
// Valid: bays drawn square or nearly so.
// Witness: the side.

import { distance } from "../geometry/point.ts";
import { isQuantity, propertyOf, type Feature } from "../model/plan.ts";
import type { Spot } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Scene } from "../model/reading.ts";
import { liveSpot } from "../site/live-figure.ts";

const corners = 4;

/** The measures `bay-width` and `bay-length`. */
export const baySideMeasures: readonly Measure[] = (["width", "length"] as const).map((which): Measure => ({
  name: `bay-${which}`,
  dimension: "length",
  roles: { bay: "a surface for parking: a bay by its corners, or with `bays`" },
  parameters: {},
  phrase: which === "width" ? "a bay is {found} wide" : "a bay is {found} long",
  shortName: which === "width" ? "width of a bay" : "length of a bay",
  find: ({ bay }, scene) => {
    if (!bay) return { is: "does-not-bear" };
    const stated = propertyOf(bay, `bays.${which}`);
    if (isQuantity(stated))
      return { is: "found", places: [{ key: which, value: (read) => read(stated), witness: () => [] }] };
    if (propertyOf(bay, "bays") === undefined && isSingleBay(bay))
      return { is: "found", places: sides(bay, which, scene) };
    if (propertyOf(bay, "bays") === undefined) return { is: "does-not-bear" };
    const asks = `the ${which} of a bay on surface "${bay.name}"`;
    return {
      is: "missing",
      missing: [{ feature: bay, property: `bays.${which}`, asks, dimension: "length", why: "missing" }],
    };
  },
}));

/** Four corners, and for nothing but parking. */
function isSingleBay(bay: Feature): boolean {
  const uses = propertyOf(bay, "for");
  const only = uses === "parking" || (Array.isArray(uses) && uses.length === 1 && uses[0] === "parking");
  return only && bay.shape?.form === "outline" && bay.shape.outline.length === corners;
}

/** The two shorter sides for the width, the two longer for the length. */
function sides(bay: Feature, which: "width" | "length", { read }: Scene): readonly CandidatePlace[] {
  const outline = bay.shape?.form === "outline" ? bay.shape.outline : [];
  const all = outline.map((from, i): CandidatePlace => {
    const [a, b] = [liveSpot(from), liveSpot(outline[(i + 1) % corners] as Spot)];
    return {
      key: `side ${i + 1}`,
      value: (now) => distance(a(now), b(now)),
      witness: (now) => [{ part: "found", form: "line", points: [a(now), b(now)] }],
    };
  });
  const [first, second] = [all.filter((_, i) => i % 2 === 0), all.filter((_, i) => i % 2 === 1)];
  const size = (pair: readonly CandidatePlace[]) => pair.reduce((sum, side) => sum + side.value(read), 0);
  const shorter = size(first) <= size(second) ? first : second;
  return which === "width" ? shorter : shorter === first ? second : first;
}
