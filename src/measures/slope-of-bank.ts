// What: how steep is the face of this bank at its steepest?
// Formula: the slope stated; else height / distance on plan from crest to toe.
// Source: plane geometry.
// Valid: a straight face from crest to toe; the height the same along it unless levels say otherwise.
// Witness: the line from crest to toe.

import { footOn } from "../geometry/segment.ts";
import { type Feature, isQuantity, isSpot, type Property, propertyOf } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Point } from "../model/reading.ts";
import { heightOfBank } from "../site/bank-height.ts";
import { liveSpot } from "../site/live-figure.ts";
import { askedFor, missing } from "./asked-for.ts";

export const slopeOfBank: Measure = {
  name: "slope-of-bank",
  dimension: "slope",
  roles: { bank: "a bank with its crest and toe" },
  parameters: { shown: { words: ["1 in", "%", "deg"], default: "1 in" } },
  phrase: "its face is {found}",
  shortName: "slope",
  shownIn: "1 in",
  find: (subject) => {
    const { bank } = subject;
    if (bank?.kind !== "bank") return { is: "does-not-bear" };
    const stated = propertyOf(bank, "slope");
    if (isQuantity(stated))
      return { is: "found", places: [{ key: "slope", value: (read) => read(stated), witness: () => [] }] };
    const height = heightOfBank(bank);
    if (!height) return missing(askedFor(bank, "height", "the height", "length"));
    const [crest, toe] = [spotsOf(bank, "crest"), spotsOf(bank, "toe")];
    const places = crest.map((spot, index) => face(spot, index, toe, height));
    return toe.length > 1 ? { is: "found", places } : { is: "does-not-bear" };
  },
};

function spotsOf(bank: Feature, property: string): readonly Spot[] {
  const list = propertyOf(bank, property);
  return Array.isArray(list) ? (list as readonly Property[]).filter(isSpot) : [];
}

function face(spot: Spot, index: number, toe: readonly Spot[], height: (read: Read) => number): CandidatePlace {
  const ends = (read: Read): readonly [Point, Point] => {
    const at = liveSpot(spot)(read);
    const points = toe.map((one) => liveSpot(one)(read));
    const feet = points.slice(1).map((end, k) => footOn([points[k] as Point, end], at));
    const nearest = feet.reduce((best, foot) => (foot.distance < best.distance ? foot : best));
    return [at, nearest.foot];
  };
  return {
    key: `crest ${index}`,
    value: (read) => {
      const [top, bottom] = ends(read);
      return height(read) / Math.hypot(bottom[0] - top[0], bottom[1] - top[1]);
    },
    witness: (read) => [{ part: "found", form: "line", points: ends(read), label: "face" }],
  };
}
