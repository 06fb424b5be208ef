// Loads the schemas of what people write into one Ajv, strictly. The form of the report is looked at with the report.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";

export interface Schema {
  readonly [keyword: string]: unknown;
}

const folder = new URL("../../schemas", import.meta.url).pathname;

export const schemaFiles: readonly string[] = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".schema.json") && file !== "report.schema.json")
  .sort();

export const schemas: ReadonlyMap<string, Schema> = new Map(
  schemaFiles.map((file) => [file, JSON.parse(readFileSync(join(folder, file), "utf8")) as Schema]),
);

function newAjv(): Ajv2020 {
  const ajv = new Ajv2020({
    allErrors: true,
    verbose: true,
    strict: true,
    strictRequired: false,
    allowUnionTypes: true,
  });
  ajv.addKeyword("x-unit");
  ajv.addKeyword("x-synonyms");
  ajv.addKeyword("x-sorts");
  for (const schema of schemas.values()) ajv.addSchema(schema);
  return ajv;
}

const ajv = newAjv();

/** The validator of a schema file, or of a place in it given as a JSON pointer. */
export function validatorOf(file: string, pointer = ""): ValidateFunction {
  const id = String(schemas.get(file)?.["$id"]);
  const validate = ajv.getSchema(pointer === "" ? id : `${id}#${pointer}`);
  if (validate === undefined) throw new Error(`no schema at ${id}#${pointer}`);
  return validate;
}

/** Errors of a value in short words: where and what. */
export function faultsOf(validate: ValidateFunction, value: unknown): string[] {
  if (validate(value)) return [];
  return (validate.errors ?? []).map(
    (error) => `${error.instancePath} ${error.message ?? ""} ${JSON.stringify(error.params)}`,
  );
}

/** The schema behind an absolute `$ref`. */
export function behind(reference: string): Schema {
  const [id = "", pointer = ""] = reference.split("#");
  const file = id.replace("https://sightrail.invalid/schemas/", "");
  let at: unknown = schemas.get(file);
  for (const step of pointer.split("/").slice(1)) at = (at as Schema)[step.replaceAll("~1", "/").replaceAll("~0", "~")];
  if (at === undefined) throw new Error(`nothing at ${reference}`);
  return at as Schema;
}

/** The first of a schema's examples; those of a kind are mappings. */
export function firstExample(file: string): Readonly<Record<string, unknown>> {
  const examples = (schemas.get(file)?.["examples"] ?? []) as readonly Record<string, unknown>[];
  return examples[0] ?? {};
}
