// What: is there a channel across the foot of this ramp, where it comes down to the building?
// Formula: 1 where the ramp names a channel; 0 where its foot comes within the distance asked of the building and it names none.
// Source: the plan.
// Valid: ramps drawn from the bottom to the top; a ramp that comes down elsewhere does not bear.
// Witness: the foot.

import { propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { groundFigure, liveSpot, roundFigure } from "../site/live-figure.ts";
import { nearPlaces } from "../site/near-places.ts";

export const drainedFoot: Measure = {
  name: "drained-foot",
  dimension: "count",
  roles: { ramp: "a ramp", building: "a building" },
  parameters: { within: { dimension: "length", default: 2 } },
  phrase: "",
  shortName: "channel at the foot",
  shownIn: "yes or no",
  find: (subject, scene, parameters) => {
    const { ramp, building } = subject;
    const figure = building && groundFigure(building);
    const foot = ramp?.shape?.form === "line" ? ramp.shape.line[0] : undefined;
    if (!ramp || !figure || !foot) return { is: "does-not-bear" };
    const at = roundFigure(liveSpot(foot), () => 0);
    if (nearPlaces(at, figure, Number(parameters["within"]), scene.read).length === 0) return { is: "does-not-bear" };
    const named = typeof propertyOf(ramp, "channel") === "string";
    return {
      is: "found",
      places: [
        {
          key: "foot",
          value: () => (named ? 1 : 0),
          witness: (read) => [{ part: "found", form: "point", points: [liveSpot(foot)(read)] }],
        },
      ],
    };
  },
};
