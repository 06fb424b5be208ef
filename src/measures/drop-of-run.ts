// What: how far does this run of a drain drop from its upper to its lower node?
// Formula: invert at the upper node - invert at the lower node; below 0 where it runs uphill.
// Source: plane geometry.
// Valid: levels of one datum.
// Witness: the run.

import type { Measure } from "../model/reading.ts";
import { missingInverts, pointsOf, runOf } from "../site/drain-runs.ts";
import { missing } from "./asked-for.ts";

export const dropOfRun: Measure = {
  name: "drop-of-run",
  dimension: "length",
  roles: { run: "a run of a drain" },
  parameters: {},
  phrase: "it drops {found} from end to end",
  below: { phrase: "it rises {found} from end to end", wanted: "of fall" },
  shortName: "drop",
  shownIn: "mm",
  find: (subject, scene) => {
    const run = runOf(subject["run"], scene);
    if (!run) return { is: "does-not-bear" };
    const { fall, length } = run;
    if (!fall) return missing(...missingInverts(run));
    return {
      is: "found",
      places: [
        {
          key: "run",
          value: (read) => fall(read) * length(read),
          witness: (read) => [{ part: "found", form: "line", points: pointsOf(run.line, read), label: "drops" }],
        },
      ],
    };
  },
};
