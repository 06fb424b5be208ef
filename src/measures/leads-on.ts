// What: does the water of this run come out somewhere the plan shows?
// Formula: 1 where its lower end is a chamber, tank, soakaway, field or outfall, or another drain or water takes it there; else 0.
// Source: the plan.
// Valid: asked of the last run of a drain; what takes the water further on is looked at by itself.
// Witness: the end.

import { propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { takersOf } from "../site/drain-joints.ts";
import { drainRuns, runOf } from "../site/drain-runs.ts";

export const leadsOn: Measure = {
  name: "leads-on",
  dimension: "count",
  roles: { run: "a run of a drain" },
  parameters: {},
  phrase: "",
  shortName: "leads on",
  shownIn: "yes or no",
  find: (subject, scene) => {
    const run = runOf(subject["run"], scene);
    if (!run) return { is: "does-not-bear" };
    const runs = drainRuns(run.drain, (kind) => scene.standing(kind));
    if (runs.at(-1)?.name !== run.name) return { is: "does-not-bear" };
    const named = propertyOf(run.drain, "leads_to");
    const elsewhere = typeof named === "string" && scene.standing().some((feature) => feature.name === named);
    const takers = takersOf(run, (kind) => scene.standing(kind)).filter(({ feature }) => !isBlind(feature, scene));
    const { spot } = run.lower;
    return {
      is: "found",
      places: [
        {
          key: "end",
          value: () => (elsewhere || takers.length > 0 ? 1 : 0),
          witness: (read) => [{ part: "found", form: "point", points: [[read(spot.east), read(spot.north)]] }],
        },
      ],
    };
  },
};

/** A chamber out of which nothing leads. */
function isBlind(
  feature: { readonly kind: string; readonly name: string },
  scene: Parameters<Measure["find"]>[1],
): boolean {
  if (feature.kind !== "chamber") return false;
  const onward = scene.standing("drains").some((drain) => {
    const line = drain.shape?.form === "line" ? drain.shape.line : [];
    return line.slice(0, -1).some((spot) => spot.name === feature.name);
  });
  const chamber = scene.standing("chambers").find((one) => one.name === feature.name);
  return !onward && (chamber === undefined || propertyOf(chamber, "leads_to") === undefined);
}
