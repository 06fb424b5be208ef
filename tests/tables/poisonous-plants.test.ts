// The card of poisonous trees names every plant of the table, under the column that speaks of it, and no other.

import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parse } from "yaml";

const root = new URL("../..", import.meta.url).pathname;
const read = (path: string) => parse(readFileSync(root + path, "utf8")) as Record<string, unknown>;

interface Row {
  readonly id: string;
  readonly when: { readonly each?: readonly string[] };
}

it.each([
  ["stock", ["known-fence", "known-animals"]],
  ["horse", ["horses-fence", "horses"]],
  ["some", ["oak-fence", "oak-animals"]],
])("plants that poison %s", (column, ids) => {
  const rows = read("rules/tables/poisonous-plants.yaml")["rows"] as Record<string, Record<string, unknown>>;
  const plants = Object.keys(rows).filter((plant) => column in (rows[plant] ?? {}));
  const limits = read("rules/trees/poisons-stock.yaml")["limits"] as readonly Row[];
  for (const id of ids) {
    expect(limits.find((row) => row.id === id)?.when.each?.toSorted()).toEqual(plants.toSorted());
  }
});
