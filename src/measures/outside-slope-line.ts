// What: how far does a dig stay outside the line that slopes from its bottom up to what stands beside it?
// Formula: d - k max(0, t - f), d clear distance on plan (m), t depth of the dig (m), f depth of the other's foundation (m; 0 where not given), k run over rise.
// Source: the 45 degree line beside footings, common practice of the trade (PRACTICE); plane geometry.
// Valid: level ground; firm drained soil at k = 1. In wet, loose or filled ground the line is flatter.
// Witness: the shortest line between them.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import { groundFigure } from "../site/live-figure.ts";
import { lacksWidth } from "../site/trenches.ts";
import { missing, widthOfTrench } from "./asked-for.ts";
import { nearPlaces } from "../site/near-places.ts";

/** No dig of a rural plot undermines from farther off, metres. */
const reach = 40;

/**
 * Whether a trench is not to be measured against a thing: the footing beside a drain is measured run by run, with its
 * levels, and what a drain or service leads to is what it is dug for.
 */
function isAnswered({ kind, partOf }: Feature, other: Feature): boolean {
  if (kind !== "trench" || !partOf) return false;
  if (partOf.kind === "drain" && (other.kind === "building" || other.kind === "wall")) return true;
  const through = partOf.shape?.form === "line" ? partOf.shape.line.map(({ name }) => name) : [];
  const served = [propertyOf(partOf, "leads_to"), propertyOf(partOf, "feeds")].flat();
  return [...through, ...served].includes(other.name);
}

export const outsideSlopeLine: Measure = {
  name: "outside-slope-line",
  dimension: "length",
  roles: { dig: "a dig or a trench with its depth", other: "anything with a shape" },
  parameters: { run: { dimension: "count", default: 1 }, depth: { words: [], default: "depth" } },
  phrase: "it stays {found} outside the line that slopes from its bottom up to {other}",
  below: { phrase: "it goes {found} inside the line that slopes from its bottom up to {other}", wanted: "outside it" },
  shortName: "outside the sloping line",
  find: (subject, scene, parameters) => {
    const { dig, other } = subject;
    const own = dig && groundFigure(dig);
    const its = other && groundFigure(other);
    if (!own || !its) return { is: "does-not-bear" };
    const property = String(parameters["depth"]);
    if (isAnswered(dig, other)) return { is: "does-not-bear" };
    if (lacksWidth(dig)) return missing(widthOfTrench(dig));
    const depth = propertyOf(dig, property);
    if (!isQuantity(depth)) {
      const asks = `how deep ${featureWords(dig)} is dug`;
      return { is: "missing", missing: [{ feature: dig, property, asks, dimension: "length", why: "missing" }] };
    }
    const founded = propertyOf(other, "foundation.depth");
    const below = (read: Read) => Math.max(0, read(depth) - (isQuantity(founded) ? read(founded) : 0));
    const run = Number(parameters["run"]);
    const places = nearPlaces(own, its, reach, scene.read).map((near): CandidatePlace => ({
      key: near.key,
      value: (read) => near.distance(read) - run * below(read),
      witness: (read) => [{ part: "found", form: "line", points: near.ends(read) }],
    }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
