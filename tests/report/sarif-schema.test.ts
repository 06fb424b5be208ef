// SARIF output against the published schema (OASIS SARIF 2.1.0, rtm.5), as a registry package carries it.

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { inspect, printed } from "../../src/index.ts";
import { root } from "../house/rule-files.ts";

const carried = "node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json";
const schema = JSON.parse(readFileSync(join(root, carried), "utf8")) as Record<string, unknown>;
// The file names an older dialect of the same vocabulary; it uses nothing that differs.
const { $schema, id: _address, ...draft } = schema;
const check = new Ajv({ strict: false, allErrors: true, validateFormats: false, unicodeRegExp: false }).compile(draft);

describe("SARIF 2.1.0", () => {
  it("is the schema of the version", () => {
    expect(String($schema)).toContain("json-schema.org");
    expect(JSON.stringify(schema)).toContain("2.1.0");
  });
  const examples = readdirSync(join(root, "examples")).map((name) => `examples/${name}/plan.yaml`);
  const plans = [...examples.filter((file) => existsSync(join(root, file))), "tests/tables/sample-plan.yaml"];
  it.each(plans)("%s is valid", async (file) => {
    const inspection = inspect([{ file, text: readFileSync(join(root, file), "utf8") }], {
      asOf: "2026-11-25",
      remedies: "plain",
    });
    const log = JSON.parse(await printed(inspection, ".sarif", { version: "0.1.0" })) as unknown;
    check(log);
    expect(check.errors ?? []).toEqual([]);
  });
  it("refuses a kind that the standard does not know", async () => {
    const file = "examples/sallow-yard/plan.yaml";
    const inspection = inspect([{ file, text: readFileSync(join(root, file), "utf8") }], { asOf: "2026-11-25" });
    const text = (await printed(inspection, ".sarif")).replace(/"kind": ?"open"/, '"kind":"inconclusive"');
    expect(check(JSON.parse(text))).toBe(false);
  });
});
