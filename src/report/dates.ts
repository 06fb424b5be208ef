// Dates as they are said.

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
];

/** `2027-05-01` -> `1 May 2027`; anything else stays as it was written. */
export function dateWords(date: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const month = months[Number(match?.[2]) - 1];
  return match && month ? `${Number(match[3])} ${month} ${match[1]}` : date.replace(/[^\p{L}\p{N} ./-]/gu, "");
}
