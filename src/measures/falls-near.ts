// What: how far from a tree that comes down, or looks as if it might, does a thing stand?
// Formula: least distance on plan from the stem to the thing.
// Source: plane geometry; the plan says which trees go and what is seen of them.
// Valid: a tree falls no farther than it is tall on level ground; down a slope it slides on.
// Witness: the shortest line between them.

import { type Feature, propertyOf } from "../model/plan.ts";
import type { CandidatePlace, Measure, Scene } from "../model/reading.ts";
import { namesIn } from "../site/days.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";

/** No tree reaches farther, metres. */
const reach = 80;

/** Words under `condition` that tell of nothing amiss. */
const soundWords = /^(?:sound|good|fine|healthy|well|no(?:ne|thing)?\b.*)$/i;

const bringsDown: ReadonlySet<unknown> = new Set(["fell", "take down", "clear"]);

export const fallsNear: Measure = {
  name: "falls-near",
  dimension: "length",
  roles: { thing: "a tree", other: "what it can fall on" },
  parameters: {},
  phrase: "it stands {found} from {other}",
  shortName: "distance from the tree",
  find: ({ thing, other }, scene) => {
    const own = thing && groundFigure(thing);
    const its = other && groundFigure(other);
    if (!own || !its || !(comesDown(thing, scene) || looksBad(thing))) return { is: "does-not-bear" };
    const places = nearPlaces(own, its, reach, scene.read).map((near): CandidatePlace => ({
      key: near.key,
      value: near.distance,
      witness: (read) => [{ part: "found", form: "line", points: near.ends(read) }],
    }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};

/** Whether the plan takes it away, or a job brings it down. */
function comesDown(tree: Feature, scene: Scene): boolean {
  if (tree.until !== null && tree.superseded !== true) return true;
  return scene
    .standing("job")
    .some((job) => bringsDown.has(propertyOf(job, "does")) && namesIn(job, "on").includes(tree.name));
}

/** Whether something amiss is seen of it: dead wood, fungus, a lean, a hollow. */
function looksBad(tree: Feature): boolean {
  const condition = propertyOf(tree, "condition");
  return typeof condition === "string" && condition.trim() !== "" && !soundWords.test(condition.trim());
}
