// What: can this job be begun, or does it wait, by way of others, for itself?
// Formula: 1 where no chain of `after` leads from the job back to it; 0 where one does.
// Source: a graph of works has to be free of circles (plain logic).
// Valid: jobs as the plan names them.
// Witness: none.

import type { Feature } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { namesIn } from "../site/days.ts";

export const notInACircle: Measure = {
  name: "not-in-a-circle",
  dimension: "count",
  roles: { job: "a job" },
  parameters: {},
  phrase: "",
  shortName: "can be begun",
  shownIn: "yes or no",
  find: (subject, scene) => {
    const { job } = subject;
    if (!job || namesIn(job, "after").length === 0) return { is: "does-not-bear" };
    const jobs = new Map(scene.standing("jobs").map((one) => [one.name, one]));
    const free = leadsTo(job, jobs) ? 0 : 1;
    return { is: "found", places: [{ key: "after", value: () => free, witness: () => [] }] };
  },
};

/** Whether following `after` from a job comes back to it. */
function leadsTo(job: Feature, jobs: ReadonlyMap<string, Feature>): boolean {
  const seen = new Set<string>();
  const open = [...namesIn(job, "after")];
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    if (name === job.name) return true;
    const next = jobs.get(name);
    if (!next || seen.has(name)) continue;
    seen.add(name);
    open.push(...namesIn(next, "after"));
  }
  return false;
}
