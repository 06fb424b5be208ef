// The compiled checks against the same schemas run by the compiler itself.

import { beforeAll, describe, expect, test } from "vitest";
import { validate } from "../../src/reading/validate.ts";
import type { Validator } from "../../src/reading/validate.ts";
import { forms, plan, wall } from "../reading/small-schemas.ts";
import { bundled, checkIds, checkName, checksSource, newCompiler } from "./compile-validators.ts";

const schemas = new Map<string, typeof plan | typeof wall | typeof forms>([
  ["forms.schema.json", forms],
  ["features/walls.schema.json", wall],
  ["plan.schema.json", plan],
]);
let compiled: Validator;
let source = "";

beforeAll(async () => {
  source = await bundled(checksSource(schemas));
  const module = (await import(`data:text/javascript,${encodeURIComponent(source)}`)) as { plan: Validator };
  compiled = module.plan;
});

const samples: readonly unknown[] = [
  { title: "t" },
  { title: "", walls: {} },
  { titel: "t" },
  { title: "t", walls: { a: { height: 1, line: [[0, 0], { run: 3 }, "corner"] } } },
  { title: "t", walls: { a: { height: 1, line: [[0, 0, 1], { ran: 3 }, "corners", null] }, "b-c": 3 } },
  { title: "t", walls: { a: { heigth: 1, existing: "yes", build: "x", over: 1, from: 2, run: 3 } } },
  { title: "t", counts: { sheep: 1, cows: 2.5 }, format: 2 },
  [],
  null,
];

describe("compiled checks", () => {
  test("each file at the top gives a check; a store of forms and the kinds below give none", () => {
    expect(checkIds(schemas)).toEqual({ plan: plan.$id });
    expect(checkName("site-notes.schema.json")).toBe("siteNotes");
  });

  test("nothing is required at run time", () => {
    expect(source).not.toMatch(/[^'"`\w]require\(/u);
  });

  test.each(samples)("%j: the same errors as from the compiler itself", (data) => {
    const direct = newCompiler(schemas).getSchema(plan.$id) as Validator;
    expect(compiled(data)).toBe(direct(data));
    const told = (check: Validator) =>
      (check.errors ?? []).map((error) => [error.instancePath, error.keyword, error.params, error.data]);
    expect(told(compiled)).toEqual(told(direct));
  });

  // Processor time: a busy machine is no fault of ours.
  test("26,000 faulty features take less than 5 s", () => {
    const walls = Object.fromEntries(Array.from({ length: 26_000 }, (_, i) => [`w${i}`, { heigth: 1, line: 3 }]));
    const document = { file: "p", data: { title: "t", walls }, locate: () => ({ line: 1, column: 1 }) };
    const before = process.cpuUsage();
    const problems = validate(compiled, document);
    expect(process.cpuUsage(before).user / 1000).toBeLessThan(5_000);
    expect(problems.length).toBeGreaterThan(0);
  });
});
