// What: how far do the wheels keep from something in the ground that may not bear them?
// Formula: least distance from the four wheel tracks of the found path, a tyre's width wide, to the thing's edge; below 0 over it.
// Source: the search of the manoeuvre (COMPUTED).
// Valid: the path that was found, driven as drawn; a driver strays by a hand's breadth at least.
// Witness: the wheel track and the thing.

import { sweptOutline } from "../motion/swept-outline.ts";
import { tyrePatchWidth } from "../motion/vehicle.ts";
import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import { foundPath } from "../site/found-path.ts";
import { groundFigure, type LiveFigure, liveSpot, roundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { stretchNear } from "../site/stretch-near.ts";

/** Things farther off than this are not looked at, m. */
const reach = 3;

export const wheelsClearOf: Measure = {
  name: "wheels-clear-of",
  dimension: "length",
  roles: { manoeuvre: "a manoeuvre", under: "a chamber, tank or soakaway" },
  parameters: { clear: { dimension: "length", default: 0 } },
  phrase: "its wheels keep {found} from {under}",
  below: { phrase: "its wheels go {found} onto {under}", wanted: "clear" },
  shortName: "wheels to edge",
  find: ({ manoeuvre, under }, scene, parameters) => {
    const thing = under && extentOf(under);
    if (!manoeuvre || !thing) return { is: "does-not-bear" };
    const found = foundPath(manoeuvre, scene, Number(parameters["clear"]));
    if ("not" in found) return found.not;
    const { drive, arcs } = found.path;
    const places = sweptOutline(drive.plain, drive.start, arcs).wheelTracks.flatMap((track, wheel) => {
      const line: LiveFigure = {
        chains: [{ points: track.map((point) => (read: Read) => drive.carried(read).to(point)), ends: "open" }],
        solid: false,
        grow: () => tyrePatchWidth,
      };
      return nearPlaces(line, thing, reach, scene.read).map((near): CandidatePlace => ({
        key: `${wheel} ${near.key}`,
        value: near.distance,
        witness: (read) => [
          { part: "thing", form: "line", points: stretchNear(track, near.ends(read)[0]) },
          { part: "found", form: "line", points: near.ends(read) },
        ],
      }));
    });
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};

/** The ground a thing takes: its outline, or a round of its width. */
function extentOf(feature: Feature): LiveFigure | null {
  const across = propertyOf(feature, "across");
  if (feature.shape?.form === "point" && isQuantity(across))
    return roundFigure(liveSpot(feature.shape.at), (read) => read(across) / 2);
  return groundFigure(feature);
}
