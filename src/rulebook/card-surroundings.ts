// What stands around a card: measures, tables, sources and places, and what to do about a name that is none of them.

import type { Measure } from "../model/reading.ts";

/** What the loader needs to know to check a card. */
export interface CardSurroundings {
  readonly measures: ReadonlyMap<string, Measure>;
  readonly knowsTable: (table: string, column: string) => boolean;
  readonly knowsSource: (id: string) => boolean;
  readonly knowsPlace: (name: string) => boolean;
  /** The known one that was most likely meant, or null. */
  readonly near: (what: Entered, written: string) => string | null;
}

/** What a card names that is entered elsewhere. */
export type Entered = "place" | "source" | "column";

/** What to do about a name that is entered nowhere. */
export function hintFor(what: Entered, written: string, { near }: CardSurroundings): string {
  const meant = near(what, written);
  return meant === null ? notEntered[what] : `write ${meant} if that is meant`;
}

const notEntered: Readonly<Record<Entered, string>> = {
  place:
    'write a larger place, or enter yours in a file places.yaml beside your cards, as "marsh county: {parent: england, words: Marsh County}"',
  source:
    'enter it in a file sources.yaml beside your cards, as "marsh-code: {title: Marsh County building code, seen: memory}"',
  column: "a card of your own can take only a table that is there; else write the number",
};
