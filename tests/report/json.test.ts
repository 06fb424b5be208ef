// The JSON report against its published schema (JSON Schema 2020-12, checked by ajv, an independent validator).

import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { jsonReport, rounded } from "../../src/report/json.ts";
import { inventedReport, quietReport, twoPlans } from "./invented-report.ts";

const schema: unknown = JSON.parse(readFileSync(new URL("../../schemas/report.schema.json", import.meta.url), "utf8"));
const validate = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true }).compile(schema as object);

describe("the JSON report", () => {
  it.each([
    ["every verdict", inventedReport],
    ["nothing to tell", quietReport],
    ["two plans", twoPlans],
  ])("fits its schema: %s", (_name, report) => {
    validate(JSON.parse(jsonReport(report, { all: true })));
    expect(validate.errors).toBeNull();
  });

  it.each([
    ["a key too many", { extra: 1 }],
    ["another form number", { sightrail: 2 }],
    ["a day that is no day", { as_of: "tomorrow" }],
    ["a finding without a verdict", { findings: [{}] }],
    ["counts as text", { counts: "none" }],
  ])("is refused by its schema with %s", (_name, change) => {
    const whole = JSON.parse(jsonReport(inventedReport)) as object;
    expect(validate({ ...whole, ...change })).toBe(false);
  });

  it("every property of the schema says what it is", () => {
    const silent: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== "object" || node === null) return;
      for (const [key, value] of Object.entries(node as Record<string, unknown>)) {
        if (key === "properties")
          for (const [name, part] of Object.entries(value as Record<string, Record<string, unknown>>))
            if (!("description" in part) && !("$ref" in part)) silent.push(`${path}/${name}`);
        walk(value, `${path}/${key}`);
      }
    };
    walk(schema, "");
    expect(silent).toEqual([]);
  });

  it("keeps the order of its keys whatever the order of the report's", () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, part]) => [key, turned(part)]),
      );
    };
    expect(jsonReport(turned(inventedReport) as typeof inventedReport)).toBe(jsonReport(inventedReport));
  });

  it("rounds to a millionth of the unit, drops minus nought, and says null for what is no number", () => {
    expect([1 / 3, -1e-9, 2_000_000.000_000_4, Number.NaN, Infinity].map(rounded)).toEqual([
      0.333333,
      0,
      2_000_000,
      null,
      null,
    ]);
    expect(Object.is(rounded(-1e-9), 0)).toBe(true);
  });

  it("counts what does not bear and lists it only on request", () => {
    const listed = (all: boolean) =>
      (JSON.parse(jsonReport(inventedReport, { all })) as typeof inventedReport).findings.map(({ verdict }) => verdict);
    expect(listed(false)).not.toContain("does-not-bear");
    expect(listed(true)).toContain("does-not-bear");
    expect((JSON.parse(jsonReport(inventedReport)) as typeof inventedReport).counts["does-not-bear"]).toBe(1);
  });

  it("carries hostile names whole, without a byte that a terminal acts on", () => {
    const text = jsonReport(inventedReport);
    // oxlint-disable-next-line no-control-regex
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
    const names = (JSON.parse(text) as typeof inventedReport).findings.flatMap(({ features }) =>
      features.map(({ name }) => name),
    );
    expect(names).toContain("<b>\u001b[2J=1+1");
  });
});
