// What: how much does this run of a drain fall?
// Formula: (invert at the upper node - invert at the lower node) / length on plan; the stated fall where inverts lack.
// Source: plane geometry; usual booking of drains (PRACTICE).
// Valid: a straight gradient from node to node; what lies between two nodes was not levelled.
// Witness: the run.

import type { Measure } from "../model/reading.ts";
import { missingInverts, pointsOf, runOf } from "../site/drain-runs.ts";
import { missing } from "./asked-for.ts";

export const fallOfRun: Measure = {
  name: "fall-of-run",
  dimension: "slope",
  roles: { run: "a run of a drain" },
  parameters: { shown: { words: ["1 in", "%"], default: "1 in" } },
  phrase: "its fall is {found}",
  shortName: "fall",
  shownIn: "1 in",
  find: (subject, scene) => {
    const run = runOf(subject["run"], scene);
    if (!run) return { is: "does-not-bear" };
    const { fall } = run;
    if (!fall) return missing(...missingInverts(run));
    const witness = (read: typeof scene.read) =>
      [{ part: "found", form: "line", points: pointsOf(run.line, read), label: "falls" }] as const;
    return { is: "found", places: [{ key: "run", value: fall, witness }] };
  },
};
