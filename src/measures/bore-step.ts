// What: how much wider is the pipe that takes this run than the run itself?
// Formula: bore of the next drain - bore of this one; below 0 where the pipe shrinks on its way down.
// Source: the plan.
// Valid: bores given the same way, both nominal or both inside.
// Witness: the joint.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure, Missing, Point } from "../model/reading.ts";
import { takersOf } from "../site/drain-joints.ts";
import { runOf } from "../site/drain-runs.ts";
import { askedFor } from "./asked-for.ts";

export const boreStep: Measure = {
  name: "bore-step",
  dimension: "length",
  roles: { run: "a run of a drain" },
  parameters: {},
  phrase: "the pipe that takes it is {found} wider",
  below: { phrase: "the pipe that takes it is {found} narrower" },
  shortName: "wider by",
  shownIn: "mm",
  find: (subject, scene) => {
    const run = runOf(subject["run"], scene);
    const onward = run
      ? takersOf(run, (kind) => scene.standing(kind)).filter(({ feature }) => feature.kind === "drain")
      : [];
    if (!run || onward.length === 0) return { is: "does-not-bear" };
    const { spot } = run.lower;
    const wanted = [run.drain, ...onward.map(({ feature }) => feature)].flatMap((drain): readonly Missing[] =>
      isQuantity(propertyOf(drain, "bore")) ? [] : [askedFor(drain, "bore", "the bore", "length")],
    );
    const own = propertyOf(run.drain, "bore");
    if (wanted.length > 0 || !isQuantity(own)) return { is: "missing", missing: wanted };
    return {
      is: "found",
      places: onward.flatMap(({ feature, words }) => {
        const next = propertyOf(feature, "bore");
        return isQuantity(next)
          ? [
              {
                key: feature.name,
                where: `into ${words}`,
                value: (read: typeof scene.read) => read(next) - read(own),
                witness: (read: typeof scene.read) =>
                  [{ part: "found", form: "point", points: [[read(spot.east), read(spot.north)] as Point] }] as const,
              },
            ]
          : [];
      }),
    };
  },
};
