// What: how many months of a job fall in a closed season?
// Formula: months that both the job and the season touch, counted once each; by the job's `months`, else by its first and last day.
// Source: the plan's own dates.
// Valid: whole months; a season may run over the turn of the year (10 to 5).
// Witness: none.

import { monthName } from "../model/months.ts";
import { type Feature, featureWords, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { Measure } from "../model/reading.ts";
import { endOf, monthOf, startOf } from "../site/days.ts";

const monthsOfYear = 12;

/** No job lasts longer than this, days; beyond it every month is touched. */
const longest = 366;

export const monthsInSeason: Measure = {
  name: "months-in-season",
  dimension: "count",
  roles: { job: "a job" },
  parameters: { first: { dimension: "count", default: 1 }, last: { dimension: "count", default: monthsOfYear } },
  phrase: "it takes place in {found} of the closed months",
  shortName: "months in the closed season",
  find: (subject, scene, parameters) => {
    const { job } = subject;
    if (!job) return { is: "does-not-bear" };
    const touched = monthsOf(job, scene.read);
    if (!touched) {
      const asks = `in which months ${featureWords(job)} is done`;
      return { is: "missing", missing: [{ feature: job, property: "months", asks, why: "missing" }] };
    }
    const [first, last] = [Number(parameters["first"]), Number(parameters["last"])];
    const closed = (month: number) =>
      first <= last ? month >= first && month <= last : month >= first || month <= last;
    const hit = [...new Set(touched.filter(closed))];
    const where = `${listed(hit)}; closed from ${wordOf(first)} to ${wordOf(last)}`;
    const place = { key: "months", value: () => hit.length, witness: () => [] };
    return { is: "found", places: [hit.length === 0 ? place : { ...place, where }] };
  },
};

const wordOf = (month: number): string => monthName(month) ?? String(month);

/** `May`, `March, April and May`. */
function listed(months: readonly number[]): string {
  const names = [...new Set(months)].map(wordOf);
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

function monthsOf(job: Feature, read: Read): readonly number[] | null {
  const start = startOf(job);
  const end = endOf(job, read);
  if (start !== null && end !== null) {
    const days = Math.min(longest, Math.max(0, end - start));
    return [...new Set(Array.from({ length: days + 1 }, (_, index) => monthOf(start + index)))];
  }
  const months = propertyOf(job, "months");
  if (!Array.isArray(months)) return null;
  const listed = months.flatMap((month) => (isQuantity(month) ? [Math.round(read(month))] : [Number(month)]));
  return listed.filter((month) => month >= 1 && month <= monthsOfYear);
}
