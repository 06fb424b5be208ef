// What: how far is it across a round place?
// Formula: its diameter.
// Source: the plan.
// Valid: surfaces drawn as circles.
// Witness: the circle.

import type { Measure } from "../model/reading.ts";
import { liveSpot } from "../site/live-figure.ts";

export const circleAcross: Measure = {
  name: "circle-across",
  dimension: "length",
  roles: { place: "a surface drawn as a circle" },
  parameters: {},
  phrase: "it is {found} across",
  shortName: "across",
  find: ({ place }) => {
    if (place?.shape?.form !== "circle") return { is: "does-not-bear" };
    const { centre, across } = place.shape;
    return {
      is: "found",
      places: [
        {
          key: "across",
          value: (read) => read(across),
          witness: (read) => [
            { part: "found", form: "circle", points: [liveSpot(centre)(read)], radius: read(across) / 2 },
          ],
        },
      ],
    };
  },
};
