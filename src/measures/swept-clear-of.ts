// What: how far does the ground that a vehicle covers keep from people, wires and the like?
// Formula: least distance on plan from the outline swept by the body on the found path, and by a trailer's, to the thing; below 0 inside it.
// Source: the search of the manoeuvre (COMPUTED).
// Valid: the path that was found, driven as drawn; a driver strays, and a load sticks out.
// Witness: the edge of the ground covered, as far as it lies near, and the nearest two points.

import { union } from "../geometry/overlay.ts";
import { polygonOf } from "../geometry/polygon.ts";
import { sweptOutline } from "../motion/swept-outline.ts";
import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import { foundPath } from "../site/found-path.ts";
import { groundFigure, type LiveFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { trailerOutlines } from "../site/trailer-outlines.ts";
import { ringNear } from "../site/stretch-near.ts";

/** Things farther off than this are not looked at, m. */
const reach = 30;

export const sweptClearOf: Measure = {
  name: "swept-clear-of",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", other: "anything with a shape that the vehicle should keep off" },
  parameters: { clear: { dimension: "length", default: 0 }, less: { words: [], default: "" } },
  phrase: "it comes within {found} of {other}",
  below: { phrase: "it overlaps {other} by {found}", wanted: "clear" },
  shortName: "from where it drives",
  find: ({ manoeuvre, other }, scene, parameters) => {
    const thing = other && groundFigure(other);
    if (!manoeuvre || !thing) return { is: "does-not-bear" };
    const found = foundPath(manoeuvre, scene, Number(parameters["clear"]));
    if ("not" in found) return found.not;
    const { drive, arcs } = found.path;
    const behind = drive.trailer ? trailerOutlines(drive.trailer.plain, drive.start, arcs).covered : [];
    const rings = [...sweptOutline(drive.plain, drive.start, arcs).rings, ...behind];
    const covered = union(rings.map((ring) => polygonOf(ring))) ?? [];
    const sideways = propertyOf(other, String(parameters["less"]));
    const places = covered.flatMap(({ outline }, index) => {
      const figure: LiveFigure = {
        chains: [{ points: outline.map((point) => (read: Read) => drive.carried(read).to(point)), ends: "closed" }],
        solid: true,
        grow: () => 0,
      };
      return nearPlaces(figure, thing, reach, scene.read).map((near): CandidatePlace => ({
        key: `${index} ${near.key}`,
        value: (read) => near.distance(read) - (isQuantity(sideways) ? read(sideways) : 0),
        witness: (read) => [
          { part: "thing", form: "line", points: ringNear(outline, near.ends(read)[0]) },
          { part: "found", form: "line", points: near.ends(read) },
        ],
      }));
    });
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
