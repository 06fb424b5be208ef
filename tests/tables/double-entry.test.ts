// The data of the trade, checked against itself: the bibliography, the places, the reference tables, and the second entry
// of every published limit (tests/tables/limits), which was made from the sources and not from the cards.

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { parse } from "yaml";
import type { Dimension } from "../../src/model/quantity.ts";
import { baseUnit, parseQuantity } from "../../src/model/units.ts";

type Data = Record<string, unknown>;
interface Entry {
  readonly id: string;
  readonly sense: string;
  readonly grade: string;
  readonly bound: unknown;
  readonly where: string;
  readonly label: string;
}

const root = new URL("../..", import.meta.url).pathname;
const read = (path: string): Data => parse(readFileSync(root + path, "utf8")) as Data;
const yamlIn = (folder: string): string[] => readdirSync(root + folder).filter((name) => name.endsWith(".yaml"));
const seenWords = ["read", "read second-hand", "memory", "computed", "none"];
const senses = ["at_least", "at_most", "between"];
const dimensions = Object.keys(baseUnit) as Dimension[];

const sources = read("rules/sources.yaml") as Record<string, Record<string, string>>;
const places = read("rules/places.yaml") as Record<string, { parent: string | null }>;
const areas = readdirSync(root + "rules", { withFileTypes: true }).flatMap((entry) =>
  entry.isDirectory() && entry.name !== "tables" ? [entry.name] : [],
);

/** Every row of the second entry, by source. */
const book = new Map<string, Entry[]>();
for (const name of yamlIn("tests/tables/limits")) {
  const file = read(`tests/tables/limits/${name}`);
  const rows = (file["rows"] as Data[]).map((row) => {
    const sense = senses.find((word) => word in row) ?? "none";
    return {
      id: String(row["id"]),
      sense,
      grade: String(row["grade"]),
      bound: row[sense],
      where: String(row["where"]),
      label: String(row["label"]),
    };
  });
  const source = String(file["source"]);
  book.set(source, [...(book.get(source) ?? []), ...rows]);
}

/** Whether two bounds are the same number in some dimension that both can be read in. */
function same(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((value, index) => same(value, b[index]));
  if (isTimes(a) && isTimes(b)) {
    const bounds = ["up_to", "down_to"].every(
      (key) => (a[key] === undefined && b[key] === undefined) || same(a[key], b[key]),
    );
    return bounds && same(a["times"], b["times"]);
  }
  return dimensions.some((dimension) => {
    const [first, second] = [parseQuantity(plain(a), dimension), parseQuantity(plain(b), dimension)];
    return first.ok && second.ok && Math.abs(first.value - second.value) <= 1e-9 * Math.max(1, Math.abs(first.value));
  });
}
const isTimes = (value: unknown): value is Data => typeof value === "object" && value !== null && "times" in value;
const plain = (value: unknown): unknown =>
  typeof value === "string" && /^-?\d+(\.\d+)?$/.test(value) ? Number(value) : value;

test("every source says how it is known, and a page that was read has a date", () => {
  for (const [id, source] of Object.entries(sources)) {
    expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(seenWords, id).toContain(source["seen"]);
    expect(source["title"], id).toBeTypeOf("string");
    if (source["seen"]?.startsWith("read")) expect(source["date"], id).toMatch(/^2026-\d\d(-\d\d)?$/);
  }
});

test("the chain of every place ends at anywhere", () => {
  for (const name of Object.keys(places)) {
    const passed = new Set<string>();
    for (let at: string | null = name; at !== null && at !== "anywhere"; at = places[at]?.parent ?? null) {
      expect(passed.has(at), `${name} comes round to ${at}`).toBe(false);
      expect(places[at], `${name}: ${at}`).toBeDefined();
      passed.add(at);
    }
  }
});

test("every cell of a reference table is a number with a known source and no better label than it", () => {
  for (const name of yamlIn("rules/tables")) {
    const table = read(`rules/tables/${name}`);
    const columns = table["columns"] as Record<string, { dimension: Dimension }>;
    for (const [key, row] of Object.entries(table["rows"] as Record<string, Data>)) {
      for (const [column, cell] of Object.entries(row) as [string, Data][]) {
        const at = `${name} ${key} ${column}`;
        const dimension = columns[column]?.dimension ?? "voltage";
        expect(parseQuantity(cell["value"], dimension).ok, at).toBe(true);
        if (cell["plus_minus"] !== undefined) expect(parseQuantity(cell["plus_minus"], dimension).ok, at).toBe(true);
        expect(sources[String(cell["source"])]?.["seen"], at).toBe(cell["label"]);
      }
    }
  }
});

test("every row of the second entry reads, with a known source and place", () => {
  for (const [source, rows] of book) {
    for (const row of rows) {
      const at = `${source} ${row.id}`;
      expect(senses, at).toContain(row.sense);
      expect(["must", "should"], at).toContain(row.grade);
      expect(Object.keys(places), at).toContain(row.where);
      expect(row.label, at).toBe(sources[source]?.["seen"]);
      expect(same(row.bound, row.bound), `${at}: ${JSON.stringify(row.bound)}`).toBe(true);
    }
  }
});

test("every published number of a card stands in the second entry too", () => {
  const missing: string[] = [];
  for (const area of areas) {
    for (const name of yamlIn(`rules/${area}`).filter((file) => !file.endsWith(".cases.yaml"))) {
      const limits = (read(`rules/${area}/${name}`)["limits"] ?? []) as Data[];
      for (const limit of limits) missing.push(...unmatched(`${area}/${name} ${String(limit["id"])}`, limit));
    }
  }
  expect(missing).toEqual([]);
});

/** The bounds of one row of a card that its source's second entry does not hold; practice without a publisher has none. */
function unmatched(at: string, limit: Data): string[] {
  const source = limit["source"];
  if (typeof source !== "string" || source === "trade-practice" || source === "own-calculation") return [];
  return ["must", "should"].flatMap((grade) =>
    Object.entries((limit[grade] ?? {}) as Data).flatMap(([sense, bound]) => {
      if (typeof bound === "object" && bound !== null && ("table" in bound || "plan" in bound)) return [];
      const found = (book.get(source) ?? []).some(
        (row) => row.sense === sense && row.where === limit["where"] && same(row.bound, bound),
      );
      return found
        ? []
        : [`${at}: ${grade} ${sense} ${JSON.stringify(bound)} of ${source} in ${String(limit["where"])}`];
    }),
  );
}
