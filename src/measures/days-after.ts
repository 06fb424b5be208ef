// What: how many days lie between the end of an earlier job and the start of this one on the same thing?
// Formula: first day of this job less last day of the other; without dates, the `waits` of this job where it comes straight after.
// Source: the plan's own dates.
// Valid: whole days; only jobs on the same thing, or that this one names under `after`, are looked at.
// Witness: none.

import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace, Measure, Missing } from "../model/reading.ts";
import { endOf, namesIn, shareAThing, startOf } from "../site/days.ts";

const day = 86_400;

export const daysAfter: Measure = {
  name: "days-after",
  dimension: "time",
  roles: { job: "a job" },
  parameters: { earlier: { words: [], default: "" } },
  phrase: "it begins {found} after",
  shortName: "days between",
  shownIn: "days",
  find: (subject, scene, parameters) => {
    const { job } = subject;
    if (!job) return { is: "does-not-bear" };
    const wanted = String(parameters["earlier"]).split(" or ");
    const befores = scene
      .standing("jobs")
      .filter((one) => one !== job && namesIn(one, "does").some((does) => wanted.includes(does)));
    const linked = befores.filter((one) => namesIn(job, "after").includes(one.name) || shareAThing(one, job));
    const gaps = linked.flatMap((before) => gapAfter(before, job, scene.read) ?? []);
    const missing = gaps.flatMap((gap) => ("missing" in gap ? gap.missing : []));
    const places = gaps.flatMap((gap) => ("missing" in gap ? [] : [gap]));
    if (places.length > 0) return { is: "found", places };
    return missing.length > 0 ? { is: "missing", missing } : { is: "does-not-bear" };
  },
};

type Gap = CandidatePlace | { readonly missing: readonly Missing[] };

/** The gap after one earlier job; null where the dates put that job later. */
function gapAfter(before: Feature, job: Feature, read: Read): Gap | null {
  const [end, start] = [endOf(before, read), startOf(job)];
  const where = featureWords(before);
  const named = namesIn(job, "after").includes(before.name);
  if (end !== null && start !== null) {
    if (start < (startOf(before) ?? end)) return null;
    return { key: before.name, value: () => (start - end) * day, where, witness: () => [] };
  }
  const waits = propertyOf(job, "waits");
  if (named && isQuantity(waits)) return { key: before.name, value: (now) => now(waits), where, witness: () => [] };
  const ask = (feature: Feature, property: string, what: string): Missing => ({
    feature,
    property,
    asks: `the day on which ${featureWords(feature)} ${what}`,
    why: "missing",
  });
  return {
    missing: [
      ...(start === null ? [ask(job, "starts", "starts")] : []),
      ...(end === null ? [ask(before, "ends", "ends")] : []),
    ],
  };
}
