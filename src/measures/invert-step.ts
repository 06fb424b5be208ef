// What: how far does the end of this run lie above the invert of what takes its water?
// Formula: invert at the lower node - invert of the next drain, tank or outfall there; below 0 where water must climb.
// Source: plane geometry.
// Valid: levels of one datum; where two numbers are given for one joint.
// Witness: the joint.

import type { Measure, Point } from "../model/reading.ts";
import { takersOf } from "../site/drain-joints.ts";
import { runOf } from "../site/drain-runs.ts";

export const invertStep: Measure = {
  name: "invert-step",
  dimension: "length",
  roles: { run: "a run of a drain" },
  parameters: {},
  phrase: "the step down at its end is {found}",
  below: { phrase: "there is a step up of {found} at its end", wanted: "down" },
  shortName: "step down",
  shownIn: "mm",
  find: (subject, scene) => {
    const run = runOf(subject["run"], scene);
    const invert = run?.lower.own;
    if (!run || !invert) return { is: "does-not-bear" };
    const { spot } = run.lower;
    const places = takersOf(run, (kind) => scene.standing(kind)).flatMap((taker) => {
      const taken = taker.invert;
      if (!taken) return [];
      return [
        {
          key: taker.feature.name,
          where: `into ${taker.words}`,
          value: (read: typeof scene.read) => read(invert) - taken(read),
          witness: (read: typeof scene.read) =>
            [{ part: "found", form: "point", points: [[read(spot.east), read(spot.north)] as Point] }] as const,
        },
      ];
    });
    return places.length > 0 ? { is: "found", places } : { is: "does-not-bear" };
  },
};
