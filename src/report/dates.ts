// Dates as they are said.

import { monthName } from "../model/months.ts";

/** `2027-05-01` -> `1 May 2027`; anything else stays as it was written. */
export function dateWords(date: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const month = monthName(Number(match?.[2]));
  return match && month ? `${Number(match[3])} ${month} ${match[1]}` : date.replace(/[^\p{L}\p{N} ./-]/gu, "");
}
