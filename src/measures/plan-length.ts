// What: how long is this line on plan?
// Formula: sum of the lengths of its pieces.
// Source: plane geometry.
// Valid: the line as drawn, to the middle of the way.
// Witness: the line.

import type { Measure } from "../model/reading.ts";
import { planLength, pointsOf } from "../site/drain-runs.ts";

export const planLengthOf: Measure = {
  name: "plan-length",
  dimension: "length",
  roles: { way: "anything drawn by a line" },
  parameters: {},
  phrase: "it is {found} long",
  shortName: "length",
  find: (subject) => {
    const { way } = subject;
    if (way?.shape?.form !== "line") return { is: "does-not-bear" };
    const { line } = way.shape;
    return {
      is: "found",
      places: [
        {
          key: "line",
          value: (read) => planLength(line, read),
          witness: (read) => [{ part: "found", form: "line", points: pointsOf(line, read) }],
        },
      ],
    };
  },
};
