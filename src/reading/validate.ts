// Runs a compiled schema check over a read file and tells its errors in plain words, one for one cause.

import type { Path } from "../model/path.ts";
import type { Problem } from "../model/problem.ts";
import type { FaultWords } from "./closed-words.ts";
import { keyChoiceWords } from "./key-faults.ts";
import { badNameWords, isNamePattern, otherKeyWords } from "./name-words.ts";
import { shortList } from "./problem-list.ts";
import { sortFaults } from "./schema-faults.ts";
import type { SchemaError, SchemaFault } from "./schema-faults.ts";
import { gotWords, orList, wantedWords } from "./schema-words.ts";
import type { SchemaPart } from "./schema-words.ts";
import type { SourceText } from "./source-text.ts";
import { isKeyFault, tellKeys } from "./tell-keys.ts";
import type { Told } from "./tell-keys.ts";
import { valueWords } from "./value-faults.ts";

/** Most problems told of one file. */
const mostProblems = 50;

/** A check compiled from a JSON Schema, made to tell every error and to carry schema and data with it. */
export interface Validator {
  (data: unknown): boolean;
  errors?: readonly SchemaError[] | null;
}

/** Problems with the paths of what must be passed over because of them. */
export interface Validated {
  readonly problems: readonly Problem[];
  readonly broken: readonly Path[];
}

/**
 * Problems of a file against its schema. What was left out in reading is not told again. A key that is unknown and one
 * that is missing are one problem where the one is a slip of the other.
 */
export function validate(check: Validator, document: SourceText): readonly Problem[] {
  return validated(check, document).problems;
}

/** As `validate`, with the paths that a reader of the data has to pass over; a fault of the whole file breaks none. */
export function validated(check: Validator, document: SourceText): Validated {
  if (check(document.data)) return { problems: [], broken: [] };
  const faults = sortFaults(check.errors ?? [], document.data);
  const told = [...tellKeys(faults, document), ...tellValues(faults, document)];
  const open = told.filter((one) => document.isSpoiled?.(one.path) !== true);
  const problems = open.map(({ path, what, code, expected, got, hint }): Problem => {
    return { code, file: document.file, ...document.locate(path, what), expected, got, hint };
  });
  return {
    problems: shortList(problems, mostProblems),
    broken: told.map(({ path }) => path).filter((path) => path.length > 0),
  };
}

/** Tells values that are not what is wanted: one problem for one value. */
function tellValues(faults: readonly SchemaFault[], document: SourceText): readonly Told[] {
  const told = new Map<string, Told>();
  for (const fault of faults) {
    if (isKeyFault(fault)) continue;
    for (const one of tellValue(fault, document)) {
      const place = JSON.stringify([one.path, one.what]);
      if (!told.has(place)) told.set(place, one);
    }
  }
  return [...told.values()];
}

function tellValue(fault: SchemaFault, document: SourceText): readonly Told[] {
  const { error, path } = fault;
  switch (error.keyword) {
    case "propertyNames":
      return [tellName(fault)];
    case "oneOf":
    case "anyOf":
      return tellChoice(fault, document);
    case "minProperties":
    case "maxProperties":
    case "not":
    case "false schema":
      return [{ path, what: "key", code: "contradiction", ...plainWords(fault) }];
    default:
      return [{ path, what: "value", ...valueWords(fault) }];
  }
}

function plainWords(fault: SchemaFault): FaultWords {
  const { error, schema } = fault;
  const barred = error.keyword === "not" ? (error.schema as SchemaPart | undefined)?.required : undefined;
  if (barred !== undefined)
    return keyChoiceWords(
      fault,
      barred.map((key) => [key]),
    );
  const count = Number(error.params["limit"]);
  const atLeast = error.keyword === "minProperties";
  const expected = Number.isNaN(count)
    ? wantedWords(schema)
    : `${atLeast ? "at least" : "at most"} ${count} ${count === 1 ? "key" : "keys"}`;
  return {
    expected,
    got: gotWords(error.data),
    hint: atLeast ? "add what is missing, or leave it out" : count > 1 ? "leave some out" : "leave it out",
  };
}

/** A key that cannot be a name, or that is none of a list. */
function tellName({ error, path, within }: SchemaFault): Told {
  const key = String(error.params["propertyName"]);
  const at: Path = [...path, key];
  const [cause] = within;
  if (cause?.error.keyword === "enum") return { path: at, what: "key", ...valueWords(cause), code: "unknown-key" };
  const isName = cause === undefined || isNamePattern(cause.schema.pattern);
  return {
    path: at,
    what: "key",
    code: "bad-name",
    ...(isName ? badNameWords(key) : otherKeyWords(key, cause.schema)),
  };
}

/**
 * A choice of which no branch fits. A branch that wants another sort of value was not meant; of the rest, the faults
 * that lie deepest tell most. Where every branch wants another sort, they are told together.
 */
function tellChoice(fault: SchemaFault, document: SourceText): readonly Told[] {
  const { error, path, within } = fault;
  const otherSorts = new Set(within.filter((one) => one.error.keyword === "type").map((one) => one.schema));
  const meant = within.filter((one) => one.path.length > path.length || !otherSorts.has(one.schema));
  const deepest = Math.max(...meant.map((one) => one.path.length));
  const causes = meant.filter((one) => one.path.length === deepest);
  const keys = tellKeys(causes, document);
  if (keys.length > 0) return keys.slice(0, 1);
  if (causes.length > 0) return tellValues(causes, document).slice(0, 1);
  const [only, ...more] = within;
  if (only !== undefined && more.length === 0) return tellValue(only, document);
  const expected = orList(within.map((one) => wantedWords(one.schema)));
  const words = { expected, got: gotWords(error.data), hint: "choose one of these forms" };
  return [{ path, what: "value", code: "wrong-type", ...words }];
}
