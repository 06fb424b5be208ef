// What: at what angle do the two tapes that hold this peg cut?
// Formula: the angle at the peg between the pegs it was taped from: atan2(|a x b|, a . b).
// Source: plane geometry.
// Valid: of several tapes the two that cut nearest to square.
// Witness: the two tapes.

import { isSpot, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure, Point } from "../model/reading.ts";
import { liveSpot } from "../site/live-figure.ts";

export const cutAngle: Measure = {
  name: "cut-angle",
  dimension: "angle",
  roles: { peg: "a peg of the survey" },
  parameters: {},
  phrase: "its tapes cut at {found}",
  shortName: "cut of the tapes",
  shownIn: "deg",
  find: (subject) => {
    const { peg } = subject;
    const ends = peg ? [propertyOf(peg, "tie_from"), propertyOf(peg, "tie_to")].filter((end) => isSpot(end)) : [];
    const [one, two] = ends;
    if (!peg || peg.shape?.form !== "point" || !one || !two) return { is: "does-not-bear" };
    const [here, from, to] = [liveSpot(peg.shape.at), liveSpot(one), liveSpot(two)];
    const value = (read: Read) => angleAt(here(read), from(read), to(read));
    return {
      is: "found",
      places: [
        {
          key: "cut",
          value,
          where: `from ${one.name ?? "one peg"} and ${two.name ?? "another"}`,
          witness: (read) => [{ part: "found", form: "line", points: [from(read), here(read), to(read)] }],
        },
      ],
    };
  },
};

function angleAt(here: Point, a: Point, b: Point): number {
  const [ax, ay, bx, by] = [a[0] - here[0], a[1] - here[1], b[0] - here[0], b[1] - here[1]];
  return Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
}
