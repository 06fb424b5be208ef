// SARIF output against what the published schema of SARIF 2.1.0 demands of the objects written (table entered by hand,
// READ, see its comment), and against the sentences of the standard on kind, level and suppression.

import { readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import type { Verdict } from "../../src/model/finding.ts";
import { addressOf } from "../../src/report/sarif-places.ts";
import { sarifReport } from "../../src/report/sarif.ts";
import { invented, inventedReport, quietReport, twoPlans } from "./invented-report.ts";

const parts: unknown = JSON.parse(
  readFileSync(new URL("../tables/sarif-2.1.0-parts.schema.json", import.meta.url), "utf8"),
);
const reference =
  /^(?:[A-Za-z][A-Za-z0-9+.-]*:|[^:/?#]*(?:[/?#]|$))(?:[A-Za-z0-9._~!$&'()*+,;=:@/?#-]|%[0-9A-Fa-f]{2})*$/;
const ajv = new Ajv({
  allErrors: true,
  strictRequired: false,
  formats: { uri: /^[a-z][a-z0-9+.-]*:/i, "uri-reference": reference },
});
const validate = ajv.compile(parts as object);

interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly kind: string;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly suppressions: readonly { readonly status: string; readonly justification: string }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly properties: Readonly<Record<string, unknown>>;
}
interface Run {
  readonly tool: {
    readonly driver: { readonly rules: readonly { readonly id: string; readonly help: { readonly text: string } }[] };
  };
  readonly results: readonly Result[];
  readonly invocations: readonly {
    readonly executionSuccessful: boolean;
    readonly toolConfigurationNotifications: readonly unknown[];
  }[];
}

function runOf(text: string): Run {
  const [run] = (JSON.parse(text) as { readonly runs: readonly Run[] }).runs;
  if (!run) throw new Error("no run");
  return run;
}

describe("the SARIF report", () => {
  it.each([
    ["every verdict", inventedReport],
    ["nothing to tell", quietReport],
    ["two plans", twoPlans],
  ])("fits the published schema: %s", (_name, report) => {
    validate(JSON.parse(sarifReport(report, { version: "0.0.0", all: true })));
    expect(validate.errors).toBeNull();
  });

  it("the table refuses what the published schema refuses", () => {
    const log = JSON.parse(sarifReport(inventedReport)) as {
      readonly runs: readonly [{ readonly results: readonly object[] }];
    };
    const withResult = (change: object) => ({
      ...log,
      runs: [{ ...log.runs[0], results: [{ ...log.runs[0].results[0], ...change }] }],
    });
    expect(validate(withResult({}))).toBe(true);
    expect(validate(withResult({ kind: "inconclusive" }))).toBe(false);
    expect(validate(withResult({ verdict: "met" }))).toBe(false);
    expect(validate(withResult({ message: {} }))).toBe(false);
    expect(validate({ ...log, version: "2.0.0" })).toBe(false);
  });

  // SARIF 2.1.0, 3.27.9 and 3.27.10 (READ): level is none wherever kind is not fail.
  it.each([
    ["not-met", "fail", "error"],
    ["undecided", "open", "none"],
    ["not-given", "open", "none"],
    ["no-fault-seen", "pass", "none"],
    ["met", "pass", "none"],
    ["does-not-bear", "notApplicable", "none"],
  ] as const)("%s is kind %s, level %s", (verdict: Verdict, kind, level) => {
    const findings = [invented({ rule: "a/b", verdict, stakes: "safety", sentence: "it" })];
    expect(runOf(sarifReport({ ...inventedReport, findings }, { all: true })).results[0]).toMatchObject({
      kind,
      level,
    });
  });

  it.each([
    ["safety", "error"],
    ["damage", "warning"],
    ["nuisance", "note"],
  ] as const)("a failure of stakes %s has level %s", (stakes, level) => {
    const findings = [invented({ rule: "a/b", verdict: "not-met", stakes, sentence: "it" })];
    expect(runOf(sarifReport({ ...inventedReport, findings })).results[0]).toMatchObject({ kind: "fail", level });
  });

  it("suppresses an agreed departure with its reason and signer, and no longer once it has run out", () => {
    const departed = runOf(sarifReport(inventedReport)).results.filter(
      (result) => result.properties["verdict"] === "departure",
    );
    const shown = departed.map(({ ruleId, kind, level, suppressions }) => ({
      ruleId,
      kind,
      level,
      suppressed: suppressions.map(({ justification }) => justification),
    }));
    expect(shown).toEqual([
      {
        ruleId: "walls/leaning",
        kind: "fail",
        level: "error",
        suppressed: ['Agreed by J. Thwaite, waller: stood so for "sixty years". To be looked at again by 2027-05-01.'],
      },
      { ruleId: "fences/jumped-from-wall", kind: "fail", level: "warning", suppressed: [] },
    ]);
  });

  it("points every result at its rule, whose help has what is wanted and the cautions", () => {
    const { tool, results } = runOf(sarifReport(inventedReport, { all: true }));
    for (const { ruleId, ruleIndex } of results) expect(tool.driver.rules[ruleIndex]?.id).toBe(ruleId);
    expect(tool.driver.rules.find(({ id }) => id === "drains/too-flat")?.help.text).toMatch(
      /1 in 80 or steeper is wanted.*Gloves.*never the ground/,
    );
  });

  it("carries value, wanted and probability as properties, and a fingerprint free of lines and coordinates", () => {
    const result = runOf(sarifReport(inventedReport)).results.find(({ ruleId }) => ruleId === "drains/too-flat");
    expect(result?.properties).toMatchObject({
      found: { value: 0.010638, unit: "m/m", doubt: 0.0002 },
      wanted: { sense: "at_least", value: 0.0125 },
      probability: 0,
    });
    const moved = inventedReport.findings.map((finding) => ({
      ...finding,
      at: finding.at.map((at) => ({ ...at, line: at.line + 7 })),
    }));
    const after = runOf(sarifReport({ ...inventedReport, findings: moved })).results.find(
      ({ ruleId }) => ruleId === "drains/too-flat",
    );
    expect(after?.partialFingerprints).toEqual(result?.partialFingerprints);
  });

  it("tells what could not be read, and that the run was then not whole", () => {
    expect(runOf(sarifReport(inventedReport)).invocations[0]).toMatchObject({
      executionSuccessful: false,
      toolConfigurationNotifications: [{ level: "error" }, {}],
    });
    expect(runOf(sarifReport(quietReport)).invocations[0]).toMatchObject({
      executionSuccessful: true,
      toolConfigurationNotifications: [],
    });
  });

  it("leaves no link and no placeholder in a message", () => {
    const findings = [invented({ rule: "a/b", verdict: "not-met", sentence: "[press](https://example.invalid) {0}" })];
    expect(runOf(sarifReport({ ...inventedReport, findings })).results[0]?.message.text).toMatch(
      /^\(press\)\(https:\/\/example\.invalid\) \(0\)\./,
    );
  });

  // RFC 3986, 3.3 and 4.2: a colon may not stand in the first segment of a relative reference (MEMORY).
  it.each([
    ["plans/upper yard.yaml", "plans/upper%20yard.yaml"],
    ["a:b#c?.yaml", "a%3Ab%23c%3F.yaml"],
    ["/home/x/plan.yaml", "file:///home/x/plan.yaml"],
    ["C:\\plans\\yard.yaml", "file:///C:/plans/yard.yaml"],
    ["\ud800.yaml", "%EF%BF%BD.yaml"],
  ])("addresses %j as %s", (file, address) => {
    expect(addressOf(file)).toBe(address);
  });
});
