// Places as the plan writes them -> as the tree of places calls them.

import type { Rulebook } from "../model/card.ts";

/**
 * The words of a plan for its places, as the tree of places calls them: capitals, hyphens and a leading "the" make no difference, and the
 * words of a sentence will do (`Portugal`, `the United States`). What is not in the tree stays as it is written, to be told.
 */
export function knownPlaces(written: readonly string[], { places, placeNames }: Rulebook): readonly string[] {
  const byWords = new Map<string, string>();
  for (const name of places.keys()) byWords.set(plain(placeNames[name] ?? name), name);
  for (const name of ["anywhere", ...places.keys()]) byWords.set(plain(name), name);
  return [...new Set(written.map((one) => byWords.get(plain(one)) ?? one))];
}

const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[\s_-]+/gu, " ")
    .trim()
    .replace(/^the /u, "");
