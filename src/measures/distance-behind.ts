// What: how far behind a wall that holds ground back does a load stand?
// Formula: least plan distance from the wall to the load, on the side whose ground the wall holds; 0 and less on the wall itself.
// Source: plane geometry.
// Valid: counted from the drawn line with its thickness; a heel that reaches farther back is closer by as much.
// Witness: the shortest line between them.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { CandidatePlace, Measure } from "../model/reading.ts";
import { groundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";
import { sideOfLine } from "../site/sides.ts";
import { widerFigures } from "../site/wider-stretches.ts";

/** A load farther off than this presses on no wall of a rural plot, metres. */
const reach = 30;

export const distanceBehind: Measure = {
  name: "distance-behind",
  dimension: "length",
  roles: { load: "anything with a shape", wall: "a wall drawn as a line that retains" },
  parameters: {},
  phrase: "it comes within {found} of the back of {wall}",
  shortName: "distance behind the wall",
  find: (subject, scene) => {
    const { load, wall } = subject;
    const its = load && groundFigure(load);
    const back = wall && groundFigure(wall);
    if (!its || !back || propertyOf(wall, "retains") === undefined) return { is: "does-not-bear" };
    const side = propertyOf(wall, "retains.side");
    if (side !== "left" && side !== "right") {
      const asks = `on which side of wall "${wall.name}" the ground is held`;
      return { is: "missing", missing: [{ feature: wall, property: "retains.side", asks, why: "missing" }] };
    }
    const heel = propertyOf(wall, "foundation.heel");
    const figures = [its, ...widerFigures(load, scene.read)];
    const places = figures
      .flatMap((figure, index) =>
        nearPlaces(figure, back, reach, scene.read).map((near) =>
          index === 0 ? near : { ...near, key: `wider ${index} ${near.key}` },
        ),
      )
      .filter((near) => (sideOfLine(wall, near.ends(scene.read)[0], scene.read) ?? side) === side)
      .map((near): CandidatePlace => ({
        key: near.key,
        value: (read) => near.distance(read) - (isQuantity(heel) ? read(heel) : 0),
        witness: (read) => [{ part: "found", form: "line", points: near.ends(read) }],
      }));
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
