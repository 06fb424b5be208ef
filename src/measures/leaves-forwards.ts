// What: does the vehicle come out onto this road forwards?
// Formula: 1 where the last move of the manoeuvre is forwards; 0 where it still goes backwards as it leaves by an end near the road.
// Source: the plan.
// Valid: what is planned; a driver who finds no room to turn backs out all the same.
// Witness: where it leaves.

import type { Feature } from "../model/plan.ts";
import type { Measure, Point, Scene } from "../model/reading.ts";
import { overallLength } from "../motion/vehicle.ts";
import { pointFigure } from "../geometry/figure.ts";
import { nearest } from "../geometry/nearest.ts";
import type { Drive } from "../site/drive.ts";
import { endsInABay } from "../site/drive-ends.ts";
import { figureAt, groundFigure } from "../site/live-figure.ts";
import { drivesAt } from "../site/manoeuvre-states.ts";

/** A way out that ends this near to the edge of a road (m), or nearer, leads onto it: a verge or a footway may lie between. */
const verge = 6;

export const leavesForwards: Measure = {
  name: "leaves-forwards",
  dimension: "count",
  roles: { manoeuvre: "a manoeuvre with its vehicle and its way out", road: "a road that it comes out on" },
  parameters: {},
  phrase: "",
  shortName: "comes out forwards",
  shownIn: "yes or no",
  find: ({ manoeuvre, road }, scene) => {
    if (!manoeuvre || !road || endsInABay(manoeuvre)) return { is: "does-not-bear" };
    const found = drivesAt(manoeuvre, scene).at(-1);
    // What the search lacks is asked for by the rule of room.
    if (found?.is !== "drive") return { is: "does-not-bear" };
    const at = leavesAt(found.drive);
    const length = overallLength(found.drive.plain);
    if (gapTo(road, at, scene) > length + verge) return { is: "does-not-bear" };
    const value = found.drive.lastGear === "forward" ? 1 : 0;
    return {
      is: "found",
      places: [{ key: "way out", value: () => value, witness: () => [{ part: "found", form: "point", points: [at] }] }],
    };
  },
};

/** Where the middle of its rear axle is when it has left. */
const leavesAt = ({ goal }: Drive): Point => [goal.x, goal.y];

function gapTo(road: Feature, at: Point, { read }: Scene): number {
  const live = groundFigure(road);
  if (!live) return Infinity;
  const found = nearest(pointFigure(at), figureAt(live, read));
  return found ? found.distance - live.grow(read) : Infinity;
}
