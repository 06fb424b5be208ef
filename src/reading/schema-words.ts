// What a schema wants, in words.

import { quoted } from "./problem-list.ts";

/** The parts of a JSON Schema that words are made from. */
export interface SchemaPart {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly pattern?: string;
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, SchemaPart>>;
  readonly required?: readonly string[];
  readonly items?: unknown;
  readonly maxItems?: number;
  readonly allOf?: readonly SchemaPart[];
  /** What kind of quantity: a dimension word such as `length` or `slope`. */
  readonly "x-unit"?: string;
  /** Words used elsewhere for the words used here. */
  readonly "x-synonyms"?: Readonly<Record<string, string>>;
  /** What tells the sort of a thing called by such a word: a pond is `water` with `kind: pond`. */
  readonly "x-sorts"?: Readonly<Record<string, string>>;
}

/** Most words of a closed list that are written out. */
const mostListed = 12;

const unitWords: Readonly<Record<string, string>> = {
  length: "a length",
  area: "an area",
  volume: "a volume",
  angle: "an angle",
  slope: "a fall or slope",
  share: "a part of a whole",
  count: "a whole number",
  time: "a length of time",
  speed: "a speed",
  rain: "an intensity of rain",
  flow: "a flow of water",
  mass: "a mass",
  force: "a force",
  pressure: "a pressure",
  density: "a density",
  infiltration: "a rate of soaking away",
  voltage: "a voltage",
  temperature: "a temperature",
};

const typeWords: Readonly<Record<string, string>> = {
  boolean: "true or false",
  number: "a number",
  integer: "a whole number",
  string: "text",
  array: "a list",
  object: "a group of keys and values",
  null: "nothing",
};

/** Types of a schema as a list; empty where it leaves them open. */
export function typesOf(schema: SchemaPart): readonly string[] {
  if (schema.type === undefined) return [];
  return typeof schema.type === "string" ? [schema.type] : schema.type;
}

/** What a schema wants, with examples where it has them: `a length, such as 3.6 or 450 mm`. */
export function wantedWords(schema: SchemaPart): string {
  if (schema.enum !== undefined) return listedWords(schema.enum);
  const unit = schema["x-unit"];
  const kinds = typesOf(schema).map((type) => typeWords[type] ?? type);
  const kind =
    (unit === undefined ? undefined : unitWords[unit]) ?? (kinds.length > 0 ? orList(kinds) : "something else");
  const examples = pickExamples(schema);
  const isPlain = typesOf(schema).join() === "boolean";
  return examples.length === 0 || isPlain ? kind : `${kind}, such as ${orList(examples)}`;
}

/** The words of a closed list: `one of left or right`. */
export function listedWords(allowed: readonly unknown[]): string {
  const words = allowed.map(flowText);
  const more = words.length - mostListed;
  const list = more > 0 ? `${words.slice(0, mostListed).join(", ")} and ${more} more` : orList(words);
  return words.length === 1 ? list : `one of ${list}`;
}

/** An example of each sort; two where they are all of one sort. */
function pickExamples(schema: SchemaPart): readonly string[] {
  const all = schema.examples ?? [];
  const sortOf = (value: unknown) => (Array.isArray(value) ? "list" : typeof value);
  const ofEach = all.filter((value, i) => all.findIndex((other) => sortOf(other) === sortOf(value)) === i);
  return (ofEach.length > 1 ? ofEach : all.slice(0, 2)).map(flowText).filter((example) => example.length <= longest);
}

/** Most letters of an example: a whole card or plan helps nobody in a sentence. */
const longest = 160;

/** The first example of a schema as it would be written, or null. */
export function exampleText(schema: SchemaPart | undefined): string | null {
  const first = schema?.examples?.[0];
  const text = first === undefined ? null : flowText(first);
  return text === null || text.length > longest ? null : text;
}

/** The description of a schema as a clause: no capital, no full stop; null where there is none. */
export function clauseOf(schema: SchemaPart | undefined): string | null {
  const text = schema?.description?.split(/(?<=[a-z])\. /u)[0]?.replace(/\.$/u, "");
  if (text === undefined || text === "") return null;
  return /^[A-Z][a-z ]/u.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** A value as one would write it inside a plan, on one line. */
export function flowText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(", ")}]`;
  if (typeof value === "object" && value !== null) {
    return `{${Object.entries(value)
      .map(([key, inner]) => `${key}: ${flowText(inner)}`)
      .join(", ")}}`;
  }
  return String(value);
}

/** What a value is, in words, short enough for one line: `"2,6"`, `a list of 4`, `nothing`. */
export function gotWords(value: unknown): string {
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  if (typeof value === "object") {
    const keys = Object.keys(value);
    return keys.length === 0 ? "an empty group" : `a group with ${andList(keys.slice(0, 4))}`;
  }
  if (value === "") return "an empty text";
  return typeof value === "string" ? quoted(value) : flowText(value);
}

/** `a`, `a or b`, `a, b or c`. */
export function orList(words: readonly string[]): string {
  return joined(words, "or");
}

/** `a`, `a and b`, `a, b and c`. */
export function andList(words: readonly string[]): string {
  return joined(words, "and");
}

function joined(words: readonly string[], last: string): string {
  const single = [...new Set(words)];
  if (single.length < 2) return single[0] ?? "";
  return `${single.slice(0, -1).join(", ")} ${last} ${single.at(-1) ?? ""}`;
}
