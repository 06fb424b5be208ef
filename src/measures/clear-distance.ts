// What: how far apart are two things on plan, nearest edge to nearest edge?
// Formula: least distance of the two figures, signed; below 0 by how deep they overlap; less what either reaches out where asked for.
// Source: plane geometry.
// Valid: plan distances; thickness, width and stem are part of the thing. Heights are ignored.
// Witness: the shortest line between them.

import { featureWords, type Feature, isQuantity, isSpot, propertyOf } from "../model/plan.ts";
import { propertyWords } from "../model/property-words.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Missing } from "../model/reading.ts";
import { groundFigure, type LiveFigure, spotFigure } from "../site/live-figure.ts";
import { lacksWidth } from "../site/trenches.ts";
import { missing, widthOfTrench } from "./asked-for.ts";
import { nearPlaces } from "../site/near-places.ts";

/** How far places are looked for, metres: farther pairs are left to the card's own reach. */
const reach = 300;

export const clearDistance: Measure = {
  name: "clear-distance",
  dimension: "length",
  roles: { thing: "anything with a shape", other: "anything with a shape" },
  parameters: {
    /** A point of the thing by its dotted name (the earth of an energiser), in place of the whole thing. */
    point: { words: [], default: "" },
    /** A length of the other that reaches towards the thing (the outermost wire), where the plan gives it. */
    less: { words: [], default: "" },
    /** A length by which the thing itself reaches out (the crown of a tree), where the plan gives it. */
    spread: { words: [], default: "" },
  },
  phrase: "{found} clear of {other}",
  below: { phrase: "it crosses or lies over {other}", wanted: "clear" },
  shortName: "clear distance",
  find: (subject, scene, parameters) => {
    const { thing, other } = subject;
    const own = thing && figureOf(thing, String(parameters["point"]));
    const its = other && groundFigure(other);
    if (!own || !its) return { is: "does-not-bear" };
    if ("missing" in own) return { is: "missing", missing: own.missing };
    if (lacksWidth(thing)) return missing(widthOfTrench(thing));
    const reaching = reachOf(other, String(parameters["less"]));
    const spreading = reachOf(thing, String(parameters["spread"]));
    const places = nearPlaces(own, its, reach, scene.read).map((near): CandidatePlace => ({
      key: near.key,
      value: (read) => near.distance(read) - reaching(read) - spreading(read),
      ...(near.steepest === undefined ? {} : { steepest: near.steepest + 2 }),
      witness: (read) => [{ part: "found", form: "line", points: near.ends(read) }],
    }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};

/** The whole thing, or one point of it; what is missing where the plan does not give that point. */
function figureOf(thing: Feature, point: string): LiveFigure | { readonly missing: readonly Missing[] } | null {
  if (point === "") return groundFigure(thing);
  const spot = propertyOf(thing, point);
  if (isSpot(spot)) return spotFigure(spot);
  const asks = `where the ${propertyWords(point)} of ${featureWords(thing)} is`;
  return { missing: [{ feature: thing, property: point, asks, why: "missing" }] };
}

function reachOf(whose: Feature, property: string): (read: Read) => number {
  const length = property === "" ? undefined : propertyOf(whose, property);
  return isQuantity(length) ? (read) => read(length) : () => 0;
}
