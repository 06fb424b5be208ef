// What: how long is the stretch of drain that must be rodded from one opening to the next?
// Formula: length on plan from the last chamber above to the chamber or end below.
// Source: plane geometry.
// Valid: openings that the plan shows; asked at the run that ends the stretch.
// Witness: the stretch.

import type { Feature } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { type DrainRun, drainRuns, pointsOf, runOf } from "../site/drain-runs.ts";
import { askedFor, missing } from "./asked-for.ts";

export const roddingLength: Measure = {
  name: "rodding-length",
  dimension: "length",
  roles: { run: "a run of a drain" },
  parameters: {},
  phrase: "{found} lies between its openings",
  shortName: "between openings",
  find: (subject, scene) => {
    const run = runOf(subject["run"], scene);
    if (!run) return { is: "does-not-bear" };
    const runs = drainRuns(run.drain, (kind) => scene.standing(kind));
    const index = runs.findIndex((one) => one.name === run.name);
    const opens = run.lower.feature !== null || index === runs.length - 1;
    if (!opens) return { is: "does-not-bear" };
    const stretch = stretchTo(runs, index);
    const nameless = [stretch[0]?.upper.feature, run.lower.feature].filter(
      (feature): feature is Feature => feature?.kind === "chamber" && feature.properties["kind"] === undefined,
    );
    if (nameless.length > 0)
      return missing(...nameless.map((feature) => askedFor(feature, "kind", "the kind of opening")));
    return {
      is: "found",
      places: [
        {
          key: "stretch",
          value: (read) => stretch.reduce((sum, one) => sum + one.length(read), 0),
          witness: (read) =>
            stretch.map((one) => ({ part: "found", form: "line", points: pointsOf(one.line, read) }) as const),
        },
      ],
    };
  },
};

/** Runs from the last opening above up to run `index`. */
function stretchTo(runs: readonly DrainRun[], index: number): readonly DrainRun[] {
  const above = runs.slice(0, index).findLastIndex((one) => one.lower.feature !== null);
  return runs.slice(above + 1, index + 1);
}
