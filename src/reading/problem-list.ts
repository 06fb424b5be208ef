// Lists of problems: in the order of the file, no two for one cause, and never so many that nobody reads them.

import type { Problem } from "../model/problem.ts";

/**
 * Problems in the order of the file, the first `most` of them, and behind them one that counts the rest.
 * Two problems with one code at one place are one.
 */
export function shortList(problems: readonly Problem[], most: number): readonly Problem[] {
  const ordered = [...problems].sort((a, b) => a.line - b.line || a.column - b.column);
  const seen = new Set<string>();
  const single = ordered.filter((problem) => {
    const place = `${problem.line}:${problem.column}:${problem.code}`;
    if (seen.has(place)) return false;
    seen.add(place);
    return true;
  });
  const next = single[most];
  if (next === undefined) return single;
  const rest = single.length - most;
  return [
    ...single.slice(0, most),
    {
      ...next,
      expected: "a file that reads as meant",
      got: rest === 1 ? "one more problem from this line on" : `${rest} more problems from this line on`,
      hint: "put the problems above right first; several of these may go with them",
    },
  ];
}

/** The user's own text in quotes, on one line and no longer than a line of a report has room for. */
export function quoted(text: string): string {
  const flat = text.replace(/\s+/gu, " ").trim();
  return `"${flat.length > 48 ? `${flat.slice(0, 45)}...` : flat}"`;
}
