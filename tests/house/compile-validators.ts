// Compiles the schemas to plain JavaScript: `npx tsx tests/house/compile-validators.ts` writes `dist/compiled/validators.js`.
// One check for each file at the top of `schemas/`, named after it (`plan.schema.json` gives `plan`).

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import standaloneCode from "ajv/dist/standalone/index.js";
import { Ajv2020 } from "ajv/dist/2020.js";
import { build } from "esbuild";
import { formsOf } from "./compile-forms.ts";

interface Schema {
  /** Absolute; of a file that gives none or a relative one, by its path. */
  readonly $id: string;
  readonly [keyword: string]: unknown;
}

const root = fileURLToPath(new URL("../..", import.meta.url));
/** Where the schemas say that they live; nothing is fetched from there. */
const home = "https://sightrail.invalid/schemas/";
/** Keywords that say nothing about data: a file of these alone is a store of shared forms. */
const silentKeywords: ReadonlySet<string> = new Set(["$schema", "$id", "$defs", "$comment", "title", "description"]);

/** Schema files by their path below `folder`. */
export function readSchemas(folder: string): ReadonlyMap<string, Schema> {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) =>
    file.endsWith(".schema.json"),
  );
  return new Map(
    files.sort().map((file) => {
      const schema = JSON.parse(readFileSync(join(folder, file), "utf8")) as Partial<Schema>;
      return [file, { ...schema, $id: new URL(schema.$id ?? "", home + file.replaceAll("\\", "/")).href }];
    }),
  );
}

/** The name of the check of a file: `site-notes.schema.json` gives `siteNotes`. */
export function checkName(file: string): string {
  return file.replace(/\.schema\.json$/u, "").replace(/[-_](\w)/gu, (_, letter: string) => letter.toUpperCase());
}

/** Names and ids of the schemas that get a check of their own. */
export function checkIds(schemas: ReadonlyMap<string, Schema>): Readonly<Record<string, string>> {
  const own = [...schemas].filter(
    ([file, schema]) => !/[\\/]/u.test(file) && Object.keys(schema).some((keyword) => !silentKeywords.has(keyword)),
  );
  return Object.fromEntries(own.map(([file, schema]) => [checkName(file), schema.$id]));
}

/**
 * Every form that a `$ref` points at, as a schema of its own, with references to match. Compiled in place, a form would
 * be compiled once more for each file that refers to it: four times the code.
 */
export function withFormsApart(schemas: ReadonlyMap<string, Schema>): readonly Schema[] {
  const targets = new Set<string>();
  for (const schema of schemas.values()) noteTargets(schema, schema.$id, targets);
  const apart: Schema[] = [];
  for (const { $defs, ...rest } of schemas.values()) {
    apart.push(takenApart(rest, `${rest.$id}#`, { targets, apart }) as Schema);
    takenApart({ $defs }, `${rest.$id}#`, { targets, apart });
  }
  return apart;
}

function noteTargets(part: unknown, id: string, targets: Set<string>): void {
  if (typeof part !== "object" || part === null) return;
  for (const [key, value] of Object.entries(part)) {
    if (key === "$ref" && typeof value === "string") targets.add(new URL(value, id).href);
    else noteTargets(value, id, targets);
  }
}

/** A copy of a part, with references in the place of the parts that are referred to; those go to `apart`. */
function takenApart(
  part: unknown,
  place: string,
  split: { readonly targets: ReadonlySet<string>; readonly apart: Schema[] },
): unknown {
  if (Array.isArray(part)) return part.map((item, i) => takenApart(item, `${place}/${i}`, split));
  if (typeof part !== "object" || part === null) return part;
  const copy = Object.fromEntries(
    Object.entries(part).map(([key, value]) => {
      if (key === "$ref" && typeof value === "string") return [key, ownId(new URL(value, place).href)];
      return [key, takenApart(value, `${place}/${key}`, split)];
    }),
  );
  if (!split.targets.has(place)) return copy;
  split.apart.push({ ...copy, $id: ownId(place) });
  return { $ref: ownId(place) };
}

/** `.../plan.schema.json/$defs/keys` for `.../plan.schema.json#/$defs/keys`. */
function ownId(place: string): string {
  return place.replace("#", "");
}

/** The compiler: every error is told, with its schema and data. */
export function newCompiler(schemas: ReadonlyMap<string, Schema>): Ajv2020 {
  return new Ajv2020({
    schemas: [...withFormsApart(schemas)],
    allErrors: true,
    verbose: true,
    messages: false,
    inlineRefs: false,
    strict: true,
    strictRequired: false,
    strictTypes: false,
    code: { source: true, esm: true },
    keywords: ["x-unit", "x-synonyms", "x-sorts"],
  });
}

/** Source of an ES module that exports one check for each name (all of them where none are given). */
export function checksSource(schemas: ReadonlyMap<string, Schema>, names?: readonly string[]): string {
  const ids = Object.entries(checkIds(schemas)).filter(([name]) => names === undefined || names.includes(name));
  const source = standaloneCode.default(newCompiler(schemas), Object.fromEntries(ids));
  return (
    withSchemasAside(source.replace(/vErrors\.concat\((validate\d+)\.errors\)/gu, "joined(vErrors, $1.errors)")) +
    joined
  );
}

/**
 * The schemas that errors carry, as one text that is read when the first error is told: half of the source is these,
 * and a good plan needs none of them, so a start need not read them as code.
 */
function withSchemasAside(source: string): string {
  const texts: string[] = [];
  const parts = source.split(/(?=\bconst schema\d+ = )/u).map((part) => {
    const head = /^const schema\d+ = /u.exec(part)?.[0];
    const json = head === undefined ? null : leadingJson(part.slice(head.length));
    if (head === undefined || json === null) return part;
    const number = Number(/\d+/u.exec(head)?.[0]);
    texts[number] = json;
    return part.slice(head.length + json.length + 1);
  });
  const code = parts
    .join("")
    .replace(/\bschema(\d+)\b/gu, (whole, number: string) =>
      texts[Number(number)] === undefined ? whole : `aside(${number})`,
    );
  const list = `[${Array.from(texts, (text) => text ?? "null").join(",")}]`;
  return `${code}
let schemasAside;
function aside(number) {
  schemasAside ??= JSON.parse(${JSON.stringify(list)});
  return schemasAside[number];
}
`;
}

/** The JSON value that a text begins with, up to its closing bracket; null where it begins with none. */
function leadingJson(text: string): string | null {
  let depth = 0;
  for (let i = 0, quoted = false; i < text.length; i++) {
    const letter = text[i];
    if (quoted) {
      if (letter === "\\") i += 1;
      else if (letter === '"') quoted = false;
    } else if (letter === '"') quoted = true;
    else if (letter === "{" || letter === "[") depth += 1;
    else if (letter === "}" || letter === "]") {
      depth -= 1;
      if (depth === 0) return text.slice(0, i + 1);
    } else if (depth === 0) return null;
  }
  return null;
}

/**
 * The compiler joins lists of errors by copying both, once for each feature; with thousands of faulty features that takes
 * seconds. Appending to the first takes none.
 */
const joined = `
function joined(all, more) {
  for (const one of more) all.push(one);
  return all;
}
`;

/** The source as one file: the few runtime parts of ajv that it needs are bundled with it. */
export async function bundled(source: string, format: "esm" | "cjs" = "esm"): Promise<string> {
  const result = await build({
    stdin: { contents: source, resolveDir: root, loader: "js" },
    bundle: true,
    write: false,
    format,
    platform: "node",
    target: "node20",
    minify: true,
    legalComments: "none",
  });
  return result.outputFiles[0]?.text ?? "";
}

/**
 * The checks that the program needs when it runs: whether a file keeps to its schema is found by walking the forms, and
 * only for one that does not are the compiled checks loaded, which can tell every fault. They are a megabyte of code.
 */
export function quickSource(schemas: ReadonlyMap<string, Schema>, names: readonly string[]): string {
  const apart = withFormsApart(schemas);
  const ids = checkIds(schemas);
  const exported = names.map((name) => {
    const place = apart.findIndex((schema) => schema.$id === ids[name]);
    return `export const ${name} = check("${name}", ${place});\n`;
  });
  return `import { createRequire } from "node:module";
import { keepsTo } from "./src/reading/keeps-to.ts";
const load = createRequire(import.meta.url);
const text = ${JSON.stringify(JSON.stringify(formsOf(apart)))};
let forms;
function check(name, place) {
  return function own(data) {
    forms ??= JSON.parse(text);
    own.errors = null;
    if (keepsTo(forms, forms[place], data)) return true;
    const tell = load("./${faultChecks}")[name];
    const keeps = tell(data);
    own.errors = tell.errors;
    return keeps;
  };
}
${exported.join("")}`;
}

/** The compiled checks that tell faults; stands beside whatever file the quick ones are bundled into. */
export const faultChecks = "fault-checks.cjs";

/** Checks that the program needs when it runs; the others are for our own files and stand apart. */
const atRunTime: readonly string[] = ["plan", "part", "card", "sources", "places"];

/** Names that `src/reading/validators.d.ts` declares. */
function declaredNames(): readonly string[] {
  const text = readFileSync(join(root, "src/reading/validators.d.ts"), "utf8");
  return [...text.matchAll(/export declare const (\w+)/gu)].map((match) => match[1] ?? "");
}

async function main(): Promise<void> {
  const schemas = readSchemas(join(root, "schemas"));
  const names = Object.keys(checkIds(schemas));
  const declared = declaredNames();
  const absent = declared.filter((name) => !names.includes(name));
  // A schema that is not written yet must not stop the others; its check lets everything pass, so it is said aloud.
  const standIns = absent.map((name) => `export const ${name} = () => true;\n`).join("");
  mkdirSync(join(root, "dist/compiled"), { recursive: true });
  const present = atRunTime.filter((name) => names.includes(name));
  const others = names.filter((name) => !atRunTime.includes(name));
  const files = {
    "validators.js": await bundled(quickSource(schemas, present) + standIns),
    [faultChecks]: await bundled(checksSource(schemas, present), "cjs"),
    "own-validators.js": await bundled(checksSource(schemas, others)),
  };
  for (const [file, code] of Object.entries(files)) {
    writeFileSync(join(root, "dist/compiled", file), code);
    console.log(`dist/compiled/${file} (${Math.round(code.length / 1024)} kB)`);
  }
  for (const name of absent) console.error(`no schemas/${name}.schema.json: the check "${name}" lets everything pass`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
