// The schemas as plain forms for `keepsTo`: references by number, and nothing that only a reader or an editor needs.

import type { Form } from "../../src/reading/keeps-to.ts";

type Schema = Readonly<Record<string, unknown>>;

/** Words that say nothing about which data fit. */
const silent: ReadonlySet<string> = new Set([
  "$schema",
  "$id",
  "$defs",
  "$comment",
  "title",
  "description",
  "examples",
  "x-unit",
  "x-synonyms",
  "x-sorts",
]);

const plainWords: ReadonlySet<string> = new Set([
  "pattern",
  "minLength",
  "minimum",
  "maximum",
  "exclusiveMinimum",
  "minItems",
  "maxItems",
  "uniqueItems",
  "required",
  "dependentRequired",
  "minProperties",
  "maxProperties",
]);

/** Forms of the schemas in their order; each schema carries its own absolute `$id`. */
export function formsOf(schemas: readonly Schema[]): readonly Form[] {
  const places = new Map(schemas.map((schema, i) => [String(schema["$id"]), i]));
  return schemas.map((schema) => formOf(schema, places));
}

/** The form of a schema. Throws where it uses a word that `keepsTo` does not know: then the build stops. */
function formOf(schema: Schema, places: ReadonlyMap<string, number>): Form {
  if (typeof schema !== "object")
    throw new Error(`a schema that is ${String(schema)} is not known to src/reading/keeps-to.ts`);
  if ("const" in schema && "enum" in schema) throw new Error("a schema has const and enum; one is enough");
  const entries = Object.entries(schema).flatMap(([word, value]): [string, unknown][] => {
    if (silent.has(word)) return [];
    if (plainWords.has(word)) return [[word, value]];
    return [wordOf(word, value, places)];
  });
  return Object.fromEntries(entries) as Form;
}

function wordOf(word: string, value: unknown, places: ReadonlyMap<string, number>): [string, unknown] {
  const inner = (one: unknown) => formOf(one as Schema, places);
  switch (word) {
    case "$ref":
      return [word, placeOf(String(value), places)];
    case "type":
      return [word, [value].flat()];
    case "const":
      return ["enum", plainValues([value])];
    case "enum":
      return [word, plainValues(value as readonly unknown[])];
    case "properties":
      return [word, Object.fromEntries(Object.entries(value as object).map(([key, one]) => [key, inner(one)]))];
    case "allOf":
    case "anyOf":
    case "oneOf":
      return [word, (value as readonly unknown[]).map(inner)];
    case "additionalProperties":
      return [word, typeof value === "boolean" ? value : inner(value)];
    case "items":
    case "propertyNames":
    case "not":
    case "if":
    case "then":
    case "else":
      return [word, inner(value)];
    default:
      throw new Error(`the schema word "${word}" is not known to src/reading/keeps-to.ts`);
  }
}

function placeOf(id: string, places: ReadonlyMap<string, number>): number {
  const place = places.get(id);
  if (place === undefined) throw new Error(`no schema ${id}`);
  return place;
}

function plainValues(values: readonly unknown[]): readonly unknown[] {
  if (values.some((value) => typeof value === "object" && value !== null))
    throw new Error("a list of values holds a group: src/reading/keeps-to.ts compares plain values only");
  return values;
}
