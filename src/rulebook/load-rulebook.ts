// The rulebook: cards, tables, bibliography and places, from data with positions. Knows only the declarations of measures.

import type { Card, Rulebook, Seen, Source, Table, TableValue } from "../model/card.ts";
import type { Path, Position } from "../model/path.ts";
import type { Problem, WithProblems } from "../model/problem.ts";
import type { Dimension } from "../model/quantity.ts";
import type { Measure } from "../model/reading.ts";
import { parseQuantity } from "../model/units.ts";
import { nearestWord } from "../reading/nearest-word.ts";
import { isData } from "./bounds.ts";
import type { CardSurroundings, Entered } from "./card-surroundings.ts";
import { readCard } from "./read-card.ts";

/** One file of the rulebook as data, with a way back to its lines. */
export interface RuleFile {
  readonly file: string;
  /** `fences/jumped-from-wall` for a card, the table's name for a table. */
  readonly id: string;
  readonly data: unknown;
  readonly locate: (path: Path) => Position;
}

/** The files of a rulebook, sorted by what they are. */
export interface RuleFiles {
  readonly cards: readonly RuleFile[];
  readonly tables: readonly RuleFile[];
  readonly sources: readonly RuleFile[];
  readonly places: readonly RuleFile[];
}

/** Loads everything; what is wrong with a card leaves out that card only. */
export function loadRulebook(files: RuleFiles, measures: ReadonlyMap<string, Measure>): WithProblems<Rulebook> {
  const problems: Problem[] = [];
  const shared = {
    tables: new Map(files.tables.map((file) => [file.id, readTable(file, problems)])),
    sources: new Map(files.sources.flatMap((file) => readSources(file))),
    places: new Map(files.places.flatMap((file) => readPlaces(file))),
    placeNames: Object.assign({}, ...files.places.map(readPlaceNames)) as Rulebook["placeNames"],
  };
  const read = loadCards(files.cards, shared, measures);
  return { value: { cards: read.value, ...shared }, problems: [...problems, ...read.problems] };
}

/** Cards read against the tables, sources and places of a rulebook, sorted by their ids. */
export function loadCards(
  files: readonly RuleFile[],
  { tables, sources, places }: Pick<Rulebook, "tables" | "sources" | "places">,
  measures: ReadonlyMap<string, Measure>,
): WithProblems<readonly Card[]> {
  const problems: Problem[] = [];
  const around: CardSurroundings = {
    measures,
    knowsTable: (table, column) => knowsColumn(tables.get(table), column),
    knowsSource: (id) => sources.has(id),
    knowsPlace: (name) => name === "anywhere" || places.has(name),
    near: (what, written) => nearestWord(written, namesOf(what, { tables, sources, places })),
  };
  const cards = new Map<string, Card>();
  for (const file of files) {
    const before = problems.length;
    const complain = complaintsInto(problems, file);
    const card = readCard(file.id, file.file, file.data, around, complain);
    if (card && problems.length === before) cards.set(card.id, card);
  }
  return { value: [...cards.values()].sort((a, b) => (a.id < b.id ? -1 : 1)), problems };
}

function namesOf(
  what: Entered,
  { tables, sources, places }: Pick<Rulebook, "tables" | "sources" | "places">,
): readonly string[] {
  if (what === "source") return [...sources.keys()];
  if (what === "place") return ["anywhere", ...places.keys()];
  return [...tables.values()].flatMap(({ name, rows }) => {
    const columns = new Set([...rows.values()].flatMap((row) => Object.keys(row)));
    return [...columns].map((column) => `${name}.${column}`);
  });
}

function complaintsInto(problems: Problem[], file: RuleFile) {
  return (path: Path, expected: string, got: string, hint: string): void => {
    const { line, column } = file.locate(path);
    problems.push({ code: "bad-card", file: file.file, line, column, expected, got, hint });
  };
}

function knowsColumn(table: Table | undefined, column: string): boolean {
  if (!table) return false;
  for (const row of table.rows.values()) if (Object.hasOwn(row, column)) return true;
  return false;
}

function readTable(file: RuleFile, problems: Problem[]): Table {
  const data = isData(file.data) ? file.data : {};
  const columns = isData(data["columns"]) ? data["columns"] : {};
  const rows = new Map<string, Record<string, TableValue>>();
  const complain = complaintsInto(problems, file);
  for (const [key, row] of Object.entries(isData(data["rows"]) ? data["rows"] : {})) {
    const values: Record<string, TableValue> = {};
    for (const [column, cell] of Object.entries(isData(row) ? row : {})) {
      const dimension = dimensionOf(columns[column]);
      if (dimension)
        values[column] = readCell(cell, dimension, ["rows", key, column], complain) ?? {
          value: Number.NaN,
          u: 0,
          source: "",
        };
    }
    rows.set(key, values);
  }
  return { name: file.id, dimension: dimensionOf(Object.values(columns)[0]) ?? "length", rows };
}

function dimensionOf(column: unknown): Dimension | null {
  const word = isData(column) ? column["dimension"] : column;
  return typeof word === "string" && !["word", "words", "text"].includes(word) ? (word as Dimension) : null;
}

function readCell(
  cell: unknown,
  dimension: Dimension,
  path: Path,
  complain: (path: Path, expected: string, got: string, hint: string) => void,
): TableValue | null {
  const raw = isData(cell) ? cell["value"] : cell;
  const parsed = parseQuantity(raw, dimension);
  if (!parsed.ok) {
    complain(path, parsed.expected, JSON.stringify(raw) ?? "nothing", parsed.hint);
    return null;
  }
  const spread = isData(cell) && cell["plus_minus"] !== undefined ? parseQuantity(cell["plus_minus"], dimension) : null;
  const half = parsed.plusMinus ?? (spread?.ok ? spread.value : 0);
  return {
    value: parsed.value,
    u: half / 2,
    source: isData(cell) && typeof cell["source"] === "string" ? cell["source"] : "",
  };
}

function readSources(file: RuleFile): [string, Source][] {
  const data = isData(file.data) ? file.data : {};
  const entries = isData(data["sources"]) ? data["sources"] : data;
  return Object.entries(entries).flatMap(([id, entry]) =>
    isData(entry) ? [[id, sourceOf(id, entry)] as [string, Source]] : [],
  );
}

const plainText = (value: unknown): string =>
  typeof value === "string" || typeof value === "number" ? String(value) : "";

function sourceOf(id: string, entry: Readonly<Record<string, unknown>>): Source {
  const word = (key: string) => (entry[key] === undefined ? {} : { [key]: plainText(entry[key]) });
  return {
    id,
    title: plainText(entry["title"]) || id,
    seen: (entry["seen"] ?? "memory") as Seen,
    ...word("publisher"),
    ...word("edition"),
    ...word("address"),
    ...word("date"),
    ...word("note"),
  };
}

function readPlaces(file: RuleFile): [string, string][] {
  const data = isData(file.data) ? file.data : {};
  const entries = isData(data["places"]) ? data["places"] : data;
  return Object.entries(entries).flatMap(([name, entry]) => {
    if (name === "anywhere") return [];
    const parent = isData(entry) ? entry["parent"] : entry;
    return [[name, typeof parent === "string" ? parent : "anywhere"] as [string, string]];
  });
}

function readPlaceNames(file: RuleFile): Readonly<Record<string, string>> {
  const data = isData(file.data) ? file.data : {};
  const named = Object.entries(data).flatMap(([name, entry]) =>
    isData(entry) && typeof entry["words"] === "string" ? [[name, entry["words"]] as const] : [],
  );
  return Object.fromEntries(named);
}
