// Words for keys that are missing, unknown or too many, and for choices between forms.

import { kinds } from "../model/kinds.ts";
import type { Path } from "../model/path.ts";
import type { ProblemCode } from "../model/problem.ts";
import type { FaultWords } from "./closed-words.ts";
import { nearestWord } from "./nearest-word.ts";
import type { SchemaFault } from "./schema-faults.ts";
import { andList, clauseOf, exampleText, flowText, gotWords, orList } from "./schema-words.ts";
import type { SchemaPart } from "./schema-words.ts";

/** Most known keys that are listed in a hint. */
const mostListed = 10;

export interface KeyWords extends FaultWords {
  readonly code: ProblemCode;
}

/** A key that stands where it is not known. `missing` are the keys that are wanted there and absent. */
export function unknownKeyWords(key: string, fault: SchemaFault, missing: ReadonlySet<string>): KeyWords {
  const { error, schema } = fault;
  const group = (typeof error.data === "object" && error.data !== null ? error.data : {}) as Record<string, unknown>;
  const known = Object.keys(schema.properties ?? {});
  const absent = known.filter((word) => !Object.hasOwn(group, word));
  const meant = meantKey(key, { absent: [...new Set([...missing, ...absent])], synonyms: schema["x-synonyms"] });
  const got = `the key ${gotWords(key)}`;
  if (meant !== null) {
    const lack = missing.has(meant) ? ", which is missing" : "";
    const hint = runTogether(key) ?? `write ${meantHint(meant, key, { value: group[key], schema })}`;
    return { code: "unknown-key", expected: `"${meant}"${lack}`, got, hint };
  }
  return { code: "unknown-key", expected: expectedKeys(known), got, hint: unknownKeyHint(key, { group, known }) };
}

/** The key to write, with what tells its sort, and with a name between where what stands under it has none. */
function meantHint(
  meant: string,
  key: string,
  { value, schema }: { readonly value: unknown; readonly schema: SchemaPart },
): string {
  const sort = nearestWord(key, [], schema["x-sorts"] ?? {});
  const told = sort === null ? meant : `${meant}, with ${sort} in each`;
  // Things stand under names of their own: a kind whose value holds anything but groups lacks them.
  const isKind = Object.hasOwn(kinds, meant) && typeof value === "object" && value !== null && !Array.isArray(value);
  const bare = isKind
    ? Object.entries(value).find(([, inner]) => typeof inner !== "object" || Array.isArray(inner))
    : null;
  return bare ? `${told}, and give the thing a name: ${meant}: {my ${key}: {${bare[0]}: ...}}` : told;
}

/** The absent key that was meant, where one is near enough. */
export function meantKey(
  key: string,
  { absent, synonyms }: { readonly absent: readonly string[]; readonly synonyms: SchemaPart["x-synonyms"] },
): string | null {
  // `run 18` and `run:18` are a key and its value, run together.
  const stem = /^([A-Za-z_]+)(?: [-+]?\d|:\S)/u.exec(key)?.[1];
  if (stem !== undefined && absent.includes(stem)) return stem;
  return nearestWord(key, absent, synonyms ?? {});
}

function expectedKeys(known: readonly string[]): string {
  if (known.length === 0) return "no further key here";
  return known.length > mostListed ? "a key that is known here" : orList(known.map((word) => `"${word}"`));
}

function unknownKeyHint(
  key: string,
  { group, known }: { readonly group: Readonly<Record<string, unknown>>; readonly known: readonly string[] },
): string {
  if (/^[-+]?\d[\d.,]*$/u.test(key))
    return "a key cannot be a number; if it is the rest of a decimal comma, write a point";
  const together = group[key] === null ? runTogether(key) : null;
  if (together !== null) return together;
  const given = nearestWord(key, known);
  if (given !== null) return `${given} is given already; leave ${key} out`;
  return known.includes("note") ? "leave it out, or put it in words under note" : "leave it out";
}

/** A key and its value written without colon or without a space, such as `run 18` and `run:18`: how to write them. */
function runTogether(key: string): string | null {
  const parts = /^([A-Za-z_]+) ([-+]?\d.*)$/u.exec(key) ?? /^([A-Za-z_][\w ]*):(\S.*)$/u.exec(key);
  return parts === null ? null : `write "${parts[1]}: ${parts[2]}"`;
}

/** A key that is wanted and absent. */
export function missingKeyWords(key: string, { path, schema }: SchemaFault): KeyWords {
  const property = schema.properties?.[key];
  const example = exampleText(property) ?? exampleOf(key, schema);
  const clause = clauseOf(property);
  const write = example === null ? `add ${key}` : `write for instance "${key}: ${example}"`;
  return {
    code: "missing-key",
    expected: `the key "${key}"`,
    got: `${ownerWords(path)} without it`,
    hint: clause === null ? write : `${write} (${clause})`,
  };
}

/** A key that another key asks for. */
export function dependentWords({ error, path, schema }: SchemaFault): KeyWords {
  const key = String(error.params["missingProperty"]);
  const example = exampleText(schema.properties?.[key]);
  const asking = String(error.params["property"]);
  return {
    code: "missing-key",
    expected: `the key "${key}" beside "${asking}"`,
    got: `${ownerWords(path)} without it`,
    hint: `add ${example === null ? key : `"${key}: ${example}"`}, or leave "${asking}" out`,
  };
}

function ownerWords(path: Path): string {
  const name = path.findLast((step) => typeof step === "string");
  const last = path.at(-1);
  if (last === undefined) return "a file";
  if (typeof last === "number") return name === undefined ? `entry ${last + 1}` : `entry ${last + 1} of "${name}"`;
  return `"${last}"`;
}

/** The lists of keys that each branch of a choice wants; null where a branch wants anything else. */
export function keyChoice(fault: SchemaFault): readonly (readonly string[])[] | null {
  const branches = fault.error.schema;
  if (!Array.isArray(branches)) return null;
  const lists: (readonly string[])[] = [];
  for (const branch of branches as readonly SchemaPart[]) {
    if (branch.required === undefined || Object.keys(branch).length !== 1) return null;
    lists.push(branch.required);
  }
  return lists;
}

/** Keys that would complete a choice: those of the branches begun, or of all where none is begun. */
export function lackingKeys(
  fault: SchemaFault,
  choice: readonly (readonly string[])[],
): readonly (readonly string[])[] {
  const group = fault.error.data ?? {};
  const begun = choice.filter((keys) => keys.some((key) => Object.hasOwn(group, key)));
  return (begun.length > 0 ? begun : choice).map((keys) => keys.filter((key) => !Object.hasOwn(group, key)));
}

/** Words for a choice between keys: none is complete, or more than one is. */
export function keyChoiceWords(fault: SchemaFault, choice: readonly (readonly string[])[]): KeyWords {
  const group = fault.error.data ?? {};
  const complete = choice.filter((keys) => keys.every((key) => Object.hasOwn(group, key)));
  if (complete.length > 1) {
    const shared = (key: string) => complete.every((keys) => keys.includes(key));
    const forms = complete.map((keys) => keysWords(keys.filter((key) => !shared(key))));
    return {
      code: "contradiction",
      expected: `only one of ${orList(forms)}`,
      got: andList(forms),
      hint: "keep the one that is meant and leave the others out",
    };
  }
  const lacking = lackingKeys(fault, choice);
  const examples = nearestExamples(fault.schema, group);
  const [[first = "", second] = []] = lacking;
  const alone = second === undefined ? exampleOf(first, fault.schema) : null;
  const one = lacking.length === 1 ? `add ${lacking[0]?.join(" and ") ?? ""}` : "add one of them";
  return {
    code: "missing-key",
    expected: `the key ${orList(lacking.map(keysWords))}`,
    got: `${ownerWords(fault.path)} without it`,
    hint:
      examples.length > 0
        ? `write for instance ${orList(examples)}`
        : alone === null
          ? one
          : `write for instance "${first}: ${alone}"`,
  };
}

/** A value of a key, from the examples of the group that it stands in. */
function exampleOf(key: string, { examples }: SchemaPart): string | null {
  for (const example of examples ?? []) {
    if (typeof example !== "object" || example === null || !Object.hasOwn(example, key)) continue;
    const text = flowText((example as Readonly<Record<string, unknown>>)[key]);
    if (text.length <= longestExample) return text;
  }
  return null;
}

/** Most examples of a choice between keys, and most letters of one. */
const mostExamples = 2;
const longestExample = 80;

/** Examples of a choice, those first that share most keys with what is written. */
function nearestExamples(schema: SchemaPart, group: object): readonly string[] {
  const shared = (example: unknown): number =>
    typeof example === "object" && example !== null
      ? Object.keys(example).filter((key) => Object.hasOwn(group, key)).length
      : 0;
  return (schema.examples ?? [])
    .toSorted((a, b) => shared(b) - shared(a))
    .map(flowText)
    .filter((text) => text.length <= longestExample)
    .slice(0, mostExamples);
}

function keysWords(keys: readonly string[]): string {
  return keys.map((key) => `"${key}"`).join(" with ");
}
