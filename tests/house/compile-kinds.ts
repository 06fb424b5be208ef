// Compiles the forms of all properties from the schemas: `npx tsx tests/house/compile-kinds.ts` writes `dist/compiled/kinds.json`.

import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Dimension } from "../../src/model/quantity.ts";
import type { Form, KindTable } from "../../src/plan/kind-table.ts";
import { readSchemas } from "./compile-validators.ts";

type Schema = Readonly<Record<string, unknown>>;

const root = fileURLToPath(new URL("../..", import.meta.url));
const common = "https://sightrail.invalid/schemas/common.schema.json#/$defs/";

/** Shared forms that the resolver knows by name. */
const known: Readonly<Record<string, Form>> = {
  level: { form: "number", dimension: "length", level: true },
  bearing: { form: "number", dimension: "angle" },
  point: { form: "point" },
  pair: { form: "point" },
  place: { form: "point" },
  points: { form: "list", of: { form: "point" } },
  outline: { form: "list", of: { form: "point" } },
  offsets: { form: "list", of: { form: "point" } },
  name: { form: "word" },
  reference: { form: "name" },
  references: { form: "name" },
  mesh: { form: "opening" },
  line_name: { form: "word" },
  stage: { form: "word" },
  word_or_words: { form: "word" },
};

/** A direction: a bearing, or the words `towards P2`. */
const heading: Form = { form: "either", forms: [{ form: "number", dimension: "angle" }, { form: "word" }] };

/** Keys of the plan that describe the plot as a whole. */
const plotKeys = ["ground", "rain", "earth"];

/** Every property form of every kind, and of the plot as the kind `site`. */
export function kindsFrom(folder: string): KindTable {
  const schemas = new Map([...readSchemas(folder).values()].map((schema) => [schema.$id, schema as Schema]));
  const at = (reference: string): Schema => {
    const [id = "", pointer = ""] = reference.split("#");
    const steps = pointer.split("/").filter((step) => step !== "");
    return steps.reduce<Schema>((node, step) => (node[step] ?? {}) as Schema, schemas.get(id) ?? {});
  };
  const table: Record<string, Readonly<Record<string, Form>>> = {};
  for (const [id, schema] of schemas) {
    const kind = /\/features\/([a-z_]+)\.schema\.json$/.exec(id)?.[1];
    if (kind !== undefined) table[kind] = formsOf(schema, at);
  }
  const keys = at("https://sightrail.invalid/schemas/plan.schema.json#/$defs/keys")["properties"] as Record<
    string,
    Schema
  >;
  table["site"] = Object.fromEntries(
    plotKeys.flatMap((key) => (keys[key] === undefined ? [] : [[key, formOf(keys[key], key, at)]])),
  );
  return table;
}

type At = (reference: string) => Schema;

/** The forms of the properties of an object schema, with those it refers to. */
function formsOf(schema: Schema, at: At): Readonly<Record<string, Form>> {
  const parts = [schema, ...((schema["allOf"] ?? []) as Schema[])];
  const own = parts.flatMap((part) => Object.entries((part["properties"] ?? {}) as Record<string, Schema>));
  const referred = parts.flatMap((part) =>
    typeof part["$ref"] === "string" ? Object.entries(formsOf(at(part["$ref"]), at)) : [],
  );
  return Object.fromEntries([...referred, ...own.map(([key, inner]) => [key, formOf(inner, key, at)] as const)]);
}

function formOf(schema: Schema, key: string, at: At): Form {
  if (key === "heading" && schema["x-unit"] === undefined) return heading;
  const reference = schema["$ref"];
  if (typeof reference === "string" && reference.startsWith(common)) {
    const form = known[reference.slice(common.length)];
    if (form !== undefined) return form;
  }
  const unit = schema["x-unit"];
  if (typeof reference === "string") {
    const form = formOf(at(reference), key, at);
    if (form.form !== "number" || typeof unit !== "string") return form;
    return { ...form, dimension: unit as Dimension };
  }
  const several = [...((schema["oneOf"] ?? []) as Schema[]), ...((schema["anyOf"] ?? []) as Schema[])].filter(saysForm);
  if (several.length > 0) return either(several.map((one) => formOf({ ...one }, key, at)));
  return plainForm(schema, key, at);
}

/** Whether a branch says what form a value has, and not only which keys it needs. */
function saysForm(schema: Schema): boolean {
  return "type" in schema || "$ref" in schema || "enum" in schema || "const" in schema || "properties" in schema;
}

function plainForm(schema: Schema, key: string, at: At): Form {
  const types = [schema["type"] ?? []].flat() as string[];
  const forms: Form[] = [];
  const unit = schema["x-unit"];
  const branches = branchForms(schema, key, at);
  if (typeof unit === "string" && (types.includes("number") || types.includes("string") || types.includes("integer"))) {
    // A number that may not carry a unit (a latitude in degrees) is taken as it stands.
    const bare = unit === "angle" && !types.includes("string");
    forms.push({ form: "number", dimension: bare ? "count" : (unit as Dimension) });
  }
  if (types.includes("boolean")) forms.push({ form: "flag" });
  if (types.includes("object")) forms.push(objectForm(schema, at));
  if (types.includes("array") && schema["items"] !== undefined)
    forms.push({ form: "list", of: formOf(schema["items"] as Schema, key, at) });
  if (forms.length === 0 || (types.includes("string") && unit === undefined)) forms.push(...branches);
  if (types.includes("string") && unit === undefined && branches.length === 0) forms.push({ form: "word" });
  if (forms.length === 0 && (types.includes("number") || types.includes("integer")))
    forms.push({ form: "number", dimension: "count" });
  return either(forms.length === 0 ? [{ form: "word" }] : forms);
}

/** Forms of `if`, `then`, `else` and `allOf` branches. */
function branchForms(schema: Schema, key: string, at: At): readonly Form[] {
  const branches = [schema, ...((schema["allOf"] ?? []) as Schema[])].flatMap((part) => [part["then"], part["else"]]);
  return branches.flatMap((branch) => {
    if (typeof branch !== "object" || branch === null) return [];
    const part = branch as Schema;
    if (part["items"] !== undefined && part["type"] === undefined) {
      const items = formOf(part["items"] as Schema, key, at);
      return [items.form === "word" || items.form === "name" ? items : ({ form: "list", of: items } as const)];
    }
    return saysForm(part)
      ? [formOf(part, key, at)]
      : part["enum"] !== undefined || part["minLength"] !== undefined
        ? [{ form: "word" } as const]
        : [];
  });
}

function objectForm(schema: Schema, at: At): Form {
  const open = schema["additionalProperties"];
  if (schema["properties"] === undefined && typeof open === "object" && open !== null)
    return { form: "map", of: formOf(open as Schema, "", at) };
  return { form: "group", properties: formsOf(schema, at) };
}

function either(forms: readonly Form[]): Form {
  const unique = [...new Map(forms.map((form) => [JSON.stringify(form), form])).values()];
  return unique.length === 1 ? (unique[0] as Form) : { form: "either", forms: unique };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const file = join(root, "dist/compiled/kinds.json");
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, JSON.stringify(kindsFrom(join(root, "schemas"))));
}
