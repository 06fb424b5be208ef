// Names of the months.

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** Name of a month by its number from 1; undefined for other numbers. */
export function monthName(month: number): string | undefined {
  return months[month - 1];
}
