// Days of jobs: when they start and end, and which of them touch the same thing.

import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";

const secondsADay = 86_400;

/** Day number of a date written year-month-day (days since 1 January 1970, proleptic Gregorian); null for anything else. */
export function dayNumber(date: unknown): number | null {
  const match = typeof date === "string" ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) : null;
  if (!match) return null;
  const day = Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3])) / (secondsADay * 1000);
  // The 31st of February is no day.
  return new Date(day * secondsADay * 1000).toISOString().startsWith(match[0]) ? day : null;
}

/** Month, 1 to 12, of a day number. */
export function monthOf(day: number): number {
  return new Date(day * secondsADay * 1000).getUTCMonth() + 1;
}

/** First day of a job, by its `starts`. */
export function startOf(job: Feature): number | null {
  return dayNumber(propertyOf(job, "starts"));
}

/** Last day of a job: its `ends`, or its start and its days; the start where neither is given. */
export function endOf(job: Feature, read: Read): number | null {
  const ends = dayNumber(propertyOf(job, "ends"));
  const starts = startOf(job);
  if (ends !== null || starts === null) return ends;
  const days = propertyOf(job, "days");
  return isQuantity(days) ? starts + Math.max(0, Math.ceil(read(days)) - 1) : starts;
}

/** Names that a property holds, be it one or a list. */
export function namesIn(feature: Feature, property: string): readonly string[] {
  const value = propertyOf(feature, property);
  if (typeof value === "string") return [value];
  return Array.isArray(value) ? value.filter((name): name is string => typeof name === "string") : [];
}

/** Whether two jobs are on the same thing. */
export function shareAThing(a: Feature, b: Feature): boolean {
  const own = namesIn(a, "on");
  return namesIn(b, "on").some((name) => own.includes(name));
}
