// A hint for a measure that there is not.

import { nearestWord } from "../reading/nearest-word.ts";

/** Most measures that are named in a hint. */
const mostNamed = 8;
/** Words of a name that are shorter (`of`, `at`) say nothing of what it measures. */
const leastTelling = 4;

/** The measure that was meant, or those of `names` that share a word with it, or some of them all. */
export function nearMeasures(written: string, names: readonly string[]): string {
  const near = nearestWord(written, names);
  if (near !== null) return `write ${near} if that is meant`;
  const alike = names.filter((name) =>
    name.split("-").some((part) => part.length >= leastTelling && written.includes(part)),
  );
  const shown = (alike.length > 0 ? alike : names).slice(0, mostNamed);
  return `take that of a card like yours: ${shown.join(", ")}${shown.length < names.length ? " or another" : ""}`;
}
