// The schemas are the plan's and the cards' published forms: they compile strictly, every property says what it is,
// and every example is one.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import type { Dimension } from "../../src/model/quantity.ts";
import { parseQuantity } from "../../src/model/units.ts";
import { behind, faultsOf, type Schema, schemaFiles, schemas, validatorOf } from "./load-schemas.ts";

interface Place {
  readonly file: string;
  readonly pointer: string;
  readonly schema: Schema;
  readonly isProperty: boolean;
}

const dimensions = new Set(
  "length area volume angle slope share count time speed rain flow mass force pressure density infiltration voltage temperature".split(
    " ",
  ),
);

function isSchema(value: unknown): value is Schema {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function step(name: string): string {
  return `/${name.replaceAll("~", "~0").replaceAll("/", "~1")}`;
}

/** Every schema object inside one: itself, its properties, definitions, items and branches. */
function placesIn(file: string, schema: Schema, pointer = "", isProperty = false): Place[] {
  const found: Place[] = [{ file, pointer, schema, isProperty }];
  for (const word of ["properties", "$defs"]) {
    const group = schema[word];
    if (!isSchema(group)) continue;
    for (const [name, inner] of Object.entries(group)) {
      if (isSchema(inner))
        found.push(...placesIn(file, inner, `${pointer}/${word}${step(name)}`, word === "properties"));
    }
  }
  for (const word of ["items", "additionalProperties", "then", "else", "propertyNames"]) {
    const inner = schema[word];
    if (isSchema(inner)) found.push(...placesIn(file, inner, `${pointer}/${word}`));
  }
  return found;
}

const places = [...schemas].flatMap(([file, schema]) => placesIn(file, schema));
const properties = places.filter((place) => place.isProperty);

/** What a keyword says here, or behind the reference. */
function said(schema: Schema, keyword: string): unknown {
  if (schema[keyword] !== undefined) return schema[keyword];
  return typeof schema["$ref"] === "string" ? said(behind(schema["$ref"]), keyword) : undefined;
}

describe("every schema", () => {
  it("has an absolute id that follows its file, and compiles strictly", () => {
    for (const file of schemaFiles) {
      expect(schemas.get(file)?.["$id"]).toBe(`https://sightrail.invalid/schemas/${file}`);
      expect(() => validatorOf(file)).not.toThrow();
    }
  });

  it("refers absolutely", () => {
    for (const { file, pointer, schema } of places) {
      const reference = schema["$ref"];
      if (reference !== undefined)
        expect(reference, `${file}#${pointer}`).toMatch(/^https:\/\/sightrail\.invalid\/schemas\//);
    }
  });

  it("closes every object that lists its properties", () => {
    const open = places.filter(
      ({ schema }) =>
        // A schema that refers to a closed one is closed by it.
        schema["properties"] !== undefined && schema["additionalProperties"] !== false && schema["$ref"] === undefined,
    );
    expect(open.map(({ file, pointer }) => `${file}#${pointer}`)).toEqual([]);
  });
});

describe("every property", () => {
  it("says in a sentence or two what it is", () => {
    const silent = properties.filter(({ schema }) => {
      const words = said(schema, "description");
      return typeof words !== "string" || !/^.{5,240}\.$/.test(words);
    });
    expect(silent.map(({ file, pointer }) => `${file}#${pointer}`)).toEqual([]);
  });

  it("has an example", () => {
    const bare = properties.filter(({ schema }) => !Array.isArray(said(schema, "examples")));
    expect(bare.map(({ file, pointer }) => `${file}#${pointer}`)).toEqual([]);
  });

  it("names a known dimension, the same behind its reference", () => {
    for (const { file, pointer, schema } of places) {
      if (schema["x-unit"] === undefined) continue;
      expect(dimensions, `${file}#${pointer}`).toContain(schema["x-unit"]);
      if (typeof schema["$ref"] === "string")
        expect(said(behind(schema["$ref"]), "x-unit"), `${file}#${pointer}`).toBe(schema["x-unit"]);
    }
  });

  it("that is a quantity says its dimension", () => {
    const silent = properties.filter(({ schema }) => {
      const reference = schema["$ref"];
      return (
        typeof reference === "string" &&
        said(behind(reference), "x-unit") !== undefined &&
        schema["x-unit"] === undefined
      );
    });
    expect(silent.map(({ file, pointer }) => `${file}#${pointer}`)).toEqual([]);
  });

  it("of a dimension gives examples that the reader of quantities understands", () => {
    // Texts that say more than a number: where a level is, which way or which north, that nobody knows, the name of a peg or line, a size by two.
    const more = / at | towards |unknown| (?:magnetic|grid|true)$| to |\d x \d| (?:east|west)$|^P1$/;
    const astray = places.flatMap(({ file, pointer, schema }) => {
      const dimension = schema["x-unit"] as Dimension | undefined;
      if (dimension === undefined || !Array.isArray(schema["examples"]) || pointer.includes("/earth/")) return [];
      return schema["examples"]
        .flat()
        .filter(
          (example: unknown) => typeof example === "number" || (typeof example === "string" && !more.test(example)),
        )
        .filter((example: unknown) => !parseQuantity(example, dimension).ok)
        .map((example: unknown) => `${file}#${pointer} ${JSON.stringify(example)}`);
    });
    expect(astray).toEqual([]);
  });

  it("has synonyms that lead to a word that is there", () => {
    const astray = places.flatMap(({ file, pointer, schema }) =>
      Object.entries((schema["x-synonyms"] ?? {}) as Record<string, string>)
        .filter(([from, to]) => !(to in (schema["properties"] as Schema)) || from in (schema["properties"] as Schema))
        .map(([from, to]) => `${file}#${pointer} ${from} -> ${to}`),
    );
    expect(astray).toEqual([]);
  });

  it("tells the sort of a thing by a key and a word of its kind", () => {
    const astray = places.flatMap(({ file, pointer, schema }) =>
      Object.entries((schema["x-sorts"] ?? {}) as Record<string, string>)
        .filter(([from, to]) => {
          const kind = (schema["x-synonyms"] as Record<string, string>)[from] ?? "";
          const [key = "", word = ""] = to.replace(/ and overhead$/, "").split(": ");
          const own = JSON.stringify(schemas.get(`features/${kind}.schema.json`) ?? {});
          return !own.includes(`"${key}":`) || !own.includes(`"${word}"`);
        })
        .map(([from, to]) => `${file}#${pointer} ${from} -> ${to}`),
    );
    expect(astray).toEqual([]);
  });

  it("gives examples that are valid where they stand", () => {
    const wrong = places.flatMap(({ file, pointer, schema }) =>
      Array.isArray(schema["examples"])
        ? schema["examples"].flatMap((example: unknown) =>
            faultsOf(validatorOf(file, pointer), example).map((fault) => `${file}#${pointer} ${fault}`),
          )
        : [],
    );
    expect(wrong).toEqual([]);
  });
});

describe("the sample plan", () => {
  const text = readFileSync(new URL("../tables/sample-plan.yaml", import.meta.url), "utf8");
  const plan: unknown = parse(text, { version: "1.2", schema: "core", merge: false });

  it("is valid as a whole", () => {
    expect(faultsOf(validatorOf("plan.schema.json"), plan)).toEqual([]);
  });
});
