// Whether data keep to a schema, against the schema compiler ajv 8.20 (a reference library, COMPUTED here): the same
// answer for every form of every schema, on its own examples, on whole plans, and on both with one thing spoilt (fixed seed).

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { keepsTo } from "../../src/reading/keeps-to.ts";
import { formsOf } from "../house/compile-forms.ts";
import { checkIds, newCompiler, readSchemas, withFormsApart } from "../house/compile-validators.ts";
import { seeded } from "../seeded.ts";

const folder = (path: string) => new URL(`../../${path}`, import.meta.url).pathname;
const schemas = readSchemas(folder("schemas"));
const apart = withFormsApart(schemas);
const forms = formsOf(apart);
const compiler = newCompiler(schemas);
const draws = 12;

const odd: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -1,
  0.5,
  7,
  1e300,
  NaN,
  Infinity,
  "",
  "a",
  "P1",
  "Ä𝒳",
  "1 in 40",
  "2026-11-25",
  "unknown",
  "no such word",
  [],
  [1],
  [1, 1],
  [1, 2, 3],
  ["a", "a"],
  [{ a: 1 }, { a: 1 }],
  {},
  { value: 1 },
  { run: 1 },
  { length: 2, constructor: 1 },
];

/** A copy with one thing replaced, left out, doubled or renamed somewhere within. */
function spoilt(data: unknown, random: () => number): unknown {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  if (typeof data !== "object" || data === null || random() < 0.15) return pick(odd);
  if (Array.isArray(data)) {
    const at = Math.floor(random() * (data.length + 1));
    if (at === data.length) return [...data, pick([...odd, ...data])];
    return random() < 0.2
      ? data.filter((_, i) => i !== at)
      : data.map((one, i) => (i === at ? spoilt(one, random) : one));
  }
  const entries = Object.entries(data);
  const key = pick([...entries.map(([name]) => name), "unheard_of", "Bad Name"]);
  const how = random();
  if (!(key in data) || how < 0.1) return { ...data, [key]: pick(odd) };
  if (how < 0.25) return Object.fromEntries(entries.filter(([name]) => name !== key));
  return Object.fromEntries(entries.map(([name, one]) => [name, name === key ? spoilt(one, random) : one]));
}

function whole(file: string): unknown {
  return parse(readFileSync(file, "utf8"), { version: "1.2", schema: "core" });
}

const plans = [
  ...readdirSync(folder("examples")).map((name) => folder(`examples/${name}/plan.yaml`)),
  folder("tests/tables/sample-plan.yaml"),
]
  .filter((file) => existsSync(file))
  .map(whole);

describe("keepsTo", () => {
  test("answers as the compiler does for every form, on its examples and on odd values", () => {
    const random = seeded(20261125);
    let fine = 0;
    let told = 0;
    for (const [i, schema] of apart.entries()) {
      const check = compiler.getSchema(schema.$id);
      const own = Array.isArray(schema["examples"]) ? (schema["examples"] as readonly unknown[]) : [];
      const values = [
        ...own,
        ...odd,
        ...own.flatMap((one) => Array.from({ length: draws }, () => spoilt(one, random))),
      ];
      for (const value of values) {
        const wanted = check?.(value) === true;
        expect(keepsTo(forms, forms[i] ?? {}, value), `${schema.$id} ${JSON.stringify(value)}`).toBe(wanted);
        if (wanted) fine++;
        else told++;
      }
    }
    // Both answers must have been asked for often, or the test shows nothing.
    expect(Math.min(fine, told)).toBeGreaterThan(500);
  });

  test("answers as the compiler does for whole plans with one thing spoilt", () => {
    const random = seeded(7);
    const id = checkIds(schemas)["plan"] ?? "";
    const check = compiler.getSchema(id);
    const form = forms[apart.findIndex((schema) => schema.$id === id)] ?? {};
    const answers = plans.flatMap((plan) =>
      [plan, ...Array.from({ length: 600 }, () => spoilt(plan, random))].map((one) => {
        const fits = keepsTo(forms, form, one);
        expect(fits, JSON.stringify(one)).toBe(check?.(one));
        return fits;
      }),
    );
    expect(answers.filter(Boolean).length).toBeGreaterThan(20);
    expect(answers.filter((fits) => !fits).length).toBeGreaterThan(100);
  });

  test("a schema word that it does not know stops the build", () => {
    expect(() => formsOf([{ $id: "https://a.invalid/x", patternProperties: {} }])).toThrow("patternProperties");
    expect(() => formsOf([{ $id: "https://a.invalid/x", enum: [{ a: 1 }] }])).toThrow("plain values");
    expect(() => formsOf([{ $id: "https://a.invalid/x", $ref: "https://a.invalid/y" }])).toThrow("no schema");
  });
});
