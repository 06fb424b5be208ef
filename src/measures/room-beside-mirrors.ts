// What: how much room do the mirrors leave to what stands as high as they are?
// Formula: room round the body on the found path less how far a mirror sticks out, for things higher than the mirrors' underside.
// Source: the search of the manoeuvre (COMPUTED); how far they stick out from the plan, else as the rule says.
// Valid: a mirror is counted along the whole body, which is early for what only the tail comes near.
// Witness: the tightest place with the path.

import { isQuantity, propertyOf, type Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import { foundPath } from "../site/found-path.ts";
import { pathWitness } from "../site/path-witness.ts";
import { tightPlaces } from "../site/tight-places.ts";

/** Property that tells how high each kind is. Kinds that are left out are higher than any mirror, or are lower. */
const heights: Readonly<Record<string, string>> = {
  wall: "height",
  fence: "height",
  hedge: "height",
  heap: "height",
  obstacle: "height",
  building: "eaves",
  tank: "height",
};
const alwaysHigh: ReadonlySet<string> = new Set(["tree", "gate", "building"]);

export const roomBesideMirrors: Measure = {
  name: "room-beside-mirrors",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", beside: "what stands beside its way" },
  parameters: {
    clear: { dimension: "length", default: 0 },
    mirror: { dimension: "length", default: 0 },
    lowest: { dimension: "length", default: 0 },
  },
  phrase: "its mirrors leave {found} to {beside}",
  below: { phrase: "its mirrors overlap {beside} by {found}", wanted: "clear" },
  shortName: "beside the mirrors",
  find: ({ manoeuvre, beside }, scene, parameters) => {
    if (!manoeuvre || !beside || !reachesUp(beside, Number(parameters["lowest"]), scene.read))
      return { is: "does-not-bear" };
    const found = foundPath(manoeuvre, scene, Number(parameters["clear"]));
    if ("not" in found) return found.not;
    // Where even the body has not its room, another rule says so.
    if (found.path.proven < found.path.wanted) return { is: "does-not-bear" };
    const out = sticksOut(manoeuvre, Number(parameters["mirror"]));
    const place = tightPlaces(found.path, scene.read).find(({ key }) => key === beside.name);
    if (!place) return { is: "does-not-bear" };
    const only: CandidatePlace = {
      key: place.key,
      value: (read) => place.room(read) - out(read),
      witness: (read) => pathWitness(found.path, place, read),
    };
    return { is: "found", places: [only] };
  },
};

/** Half of what the mirrors add to the width. */
function sticksOut(manoeuvre: Feature, usual: number): (read: Read) => number {
  const [over, body] = ["driven.width_with_mirrors", "driven.width"].map((name) => propertyOf(manoeuvre, name));
  if (!isQuantity(over) || !isQuantity(body)) return () => usual;
  return (read) => (read(over) - read(body)) / 2;
}

/** Whether a thing stands as high as the mirrors hang; where its height is not said it is taken to. */
function reachesUp(thing: Feature, lowest: number, read: Read): boolean {
  if (alwaysHigh.has(thing.kind)) return true;
  const property = heights[thing.kind];
  const height = property === undefined ? undefined : propertyOf(thing, property);
  return property !== undefined && (!isQuantity(height) || read(height) >= lowest);
}
