// A rulebook as plain data and back, so that a start reads no card anew: everything in base units, every check made.

import type { Card, Rulebook, Source, Table } from "../model/card.ts";

/** A rulebook that can be written as JSON. Lists of pairs stand for its maps. */
export interface PackedRulebook {
  readonly cards: readonly Card[];
  readonly tables: readonly (Omit<Table, "rows"> & { readonly rows: readonly (readonly [string, TableRow])[] })[];
  readonly sources: readonly Source[];
  readonly places: readonly (readonly [string, string])[];
  readonly placeNames: Rulebook["placeNames"];
}

type TableRow = Table["rows"] extends ReadonlyMap<string, infer Row> ? Row : never;

/** The rulebook as plain data. */
export function packRulebook({ cards, tables, sources, places, placeNames }: Rulebook): PackedRulebook {
  return {
    cards,
    tables: [...tables.values()].map((table) => ({ ...table, rows: [...table.rows] })),
    sources: [...sources.values()],
    places: [...places],
    placeNames,
  };
}

/** The rulebook that was packed. */
export function unpackRulebook({ cards, tables, sources, places, placeNames }: PackedRulebook): Rulebook {
  return {
    cards,
    tables: new Map(tables.map((table) => [table.name, { ...table, rows: new Map(table.rows) }])),
    sources: new Map(sources.map((source) => [source.id, source])),
    places: new Map(places),
    placeNames,
  };
}
