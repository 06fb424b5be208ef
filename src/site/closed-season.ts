// Months of work against months in which it may not be done.

import { monthName } from "../model/months.ts";
import { type Feature, isQuantity, type Property, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { CandidatePlace } from "../model/reading.ts";
import { endOf, monthOf, startOf } from "./days.ts";

const monthsOfYear = 12;

/** No job lasts longer than this, days; beyond it every month is touched. */
const longest = 366;

/** A closed season by its first and last month, 1 to 12; it may run over the turn of the year (10 to 5). */
export interface Season {
  readonly first: number;
  readonly last: number;
}

/** The season that a measure's parameters name. */
export function seasonOf(parameters: Readonly<Record<string, unknown>>): Season {
  return { first: Number(parameters["first"]), last: Number(parameters["last"]) };
}

/** What a measure of months takes: the first and the last closed month; the whole year where left out. */
export const seasonParameters = {
  first: { dimension: "count", default: 1 },
  last: { dimension: "count", default: monthsOfYear },
} as const;

/** The one place of a reading of months: how many of those touched are closed, and which. */
export function closedMonths(touched: readonly number[], { first, last }: Season): CandidatePlace {
  const closed = (month: number) => (first <= last ? month >= first && month <= last : month >= first || month <= last);
  const hit = [...new Set(touched.filter(closed))];
  const place = { key: "months", value: () => hit.length, witness: () => [] };
  return hit.length === 0
    ? place
    : { ...place, where: `${listed(hit)}; closed from ${wordOf(first)} to ${wordOf(last)}` };
}

const wordOf = (month: number): string => monthName(month) ?? String(month);

/** `May`, `March, April and May`. */
function listed(months: readonly number[]): string {
  const names = [...new Set(months)].map(wordOf);
  return names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** Months that a job touches: by its first and last day, else by its `months`; null where it gives neither. */
export function monthsOfJob(job: Feature, read: Read): readonly number[] | null {
  const start = startOf(job);
  const end = endOf(job, read);
  if (start !== null && end !== null) {
    const days = Math.min(longest, Math.max(0, end - start));
    return [...new Set(Array.from({ length: days + 1 }, (_, index) => monthOf(start + index)))];
  }
  return monthsIn(propertyOf(job, "months"), read);
}

/** Months of a list, 1 to 12; null where it is none. */
export function monthsIn(list: Property | undefined, read: Read): readonly number[] | null {
  if (!Array.isArray(list)) return null;
  const numbers = list.flatMap((month) => (isQuantity(month) ? [Math.round(read(month))] : [Number(month)]));
  return numbers.filter((month) => month >= 1 && month <= monthsOfYear);
}
