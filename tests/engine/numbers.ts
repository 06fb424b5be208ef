// A small number book for tests, a seeded generator, and normal draws.

import type { Cause, NumberBook, Quantity } from "../../src/model/quantity.ts";

export { seeded } from "../seeded.ts";

/** One number with its own standard uncertainty, or with sways over several causes. */
export type Entry =
  | readonly [value: number, u: number]
  | { readonly value: number; readonly sway: Readonly<Record<number, number>> };

/** Builds a book; every plain entry gets a cause of its own. Causes named in sways are numbered from 1000. */
export function bookOf(entries: readonly Entry[]): {
  readonly book: NumberBook;
  readonly quantities: readonly Quantity[];
} {
  const place = { file: "test", path: [] };
  const causes: Cause[] = [];
  const cause = (id: number, u: number): Cause => ({
    id,
    sort: "survey",
    words: `number ${id}`,
    place,
    u,
    dimension: "length",
  });
  const sways = entries.map((entry, id) => {
    if ("sway" in entry) return new Map(Object.entries(entry.sway).map(([key, part]) => [Number(key), part]));
    causes[id] = cause(id, entry[1]);
    return new Map(entry[1] > 0 ? [[id, entry[1]]] : []);
  });
  const values = entries.map((entry) => ("sway" in entry ? entry.value : entry[0]));
  return {
    book: { values, sways, places: entries.map(() => place), causes },
    quantities: entries.map((_, id) => ({ id, dimension: "length" })),
  };
}

/** Standard normal draws (Box and Muller 1958). */
export function normalDraws(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
