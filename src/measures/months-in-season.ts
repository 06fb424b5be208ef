// What: how many months of a job fall in a closed season?
// Formula: months that both the job and the season touch, counted once each; by the job's `months`, else by its first and last day.
// Source: the plan's own dates.
// Valid: whole months; a season may run over the turn of the year (10 to 5).
// Witness: none.

import { featureWords } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { closedMonths, monthsOfJob, seasonOf, seasonParameters } from "../site/closed-season.ts";

export const monthsInSeason: Measure = {
  name: "months-in-season",
  dimension: "count",
  roles: { job: "a job" },
  parameters: seasonParameters,
  phrase: "it takes place in {found} of the closed months",
  shortName: "months in the closed season",
  find: (subject, scene, parameters) => {
    const { job } = subject;
    if (!job) return { is: "does-not-bear" };
    const touched = monthsOfJob(job, scene.read);
    if (touched) return { is: "found", places: [closedMonths(touched, seasonOf(parameters))] };
    const asks = `in which months ${featureWords(job)} is done`;
    return { is: "missing", missing: [{ feature: job, property: "months", asks, why: "missing" }] };
  },
};
