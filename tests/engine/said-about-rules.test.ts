// What a plan says about rules and places: nothing that is mistyped, half said or agreed for one thing may hide a fault.

import { describe, expect, it } from "vitest";
import { whetherThereIs } from "../../src/engine/sentence.ts";
import { checkPlan, type CheckOptions, exitCode, type Finding, type Report } from "../../src/index.ts";

const rule = "fences/jumped-in-from-stand";
const wall = (east: number, north: number) => ({
  line: [
    [east, north],
    [east + 2, north],
  ],
  height: 1,
  existing: true,
});
/** A fence of 1.2 m with one wall 0.5 m off, one 0.7 m off, and one of unknown height: a fox (1.2 m) jumps from both. */
const base = {
  sightrail: 1,
  title: "three walls by a fence",
  place: ["england"],
  as_of: "2026-11-25",
  stages: ["now", "works"],
  walls: {
    near: wall(10, 0.5),
    far: wall(20, 0.7),
    unknown: {
      line: [
        [25, 0.9],
        [26, 0.9],
      ],
      existing: true,
    },
  },
  fences: {
    paddock: {
      line: [
        [0, 0],
        [30, 0],
      ],
      height: 1.2,
      keep_out: ["fox"],
      keep_out_side: "left",
      from: "works",
    },
  },
};
const look = (plan: object, options: Partial<CheckOptions> = {}): Report =>
  checkPlan(
    { file: "walls.yaml", text: JSON.stringify({ ...base, ...plan }, null, 1) },
    { asOf: "2026-11-25", remedies: false, ...options },
  );
const jumped = (report: Report): readonly Finding[] => report.findings.filter((finding) => finding.rule === rule);
const codes = (report: Report) => report.problems.map((problem) => problem.code);
const agreed = { rule, because: "live wire", agreed_by: "the owner", review: "2027-05-01" };

describe("a departure", () => {
  it("with a day that is none, or that nobody signs, leaves the fault standing", () => {
    for (const bad of [{ review: "2027-02-30" }, { review: "soon" }, { agreed_by: "  " }]) {
      const report = look({ departures: [{ ...agreed, ...bad, features: ["paddock"] }] });
      expect(jumped(report).map(({ verdict }) => verdict)).toContain("not-met");
      expect(report.problems.length).toBe(1);
      expect(exitCode(report)).toBe(2);
    }
  });
  it("judged on a day more than a year before the run is asked about", () => {
    const plan = { as_of: "2025-01-10", departures: [{ ...agreed, features: ["paddock"] }] };
    const [need] = look(plan).needs.filter(({ path }) => path === "as_of");
    expect(need?.asks).toContain("2025-01-10");
    expect(need?.stakes).toBe("safety");
    expect(look(plan, { asOf: "2025-06-01" }).needs.filter(({ path }) => path === "as_of")).toEqual([]);
  });
  it("agreed for one wall leaves the fault of another standing", () => {
    const findings = jumped(look({ departures: [{ ...agreed, features: ["paddock", "near"] }] }));
    const verdicts = findings.map(({ verdict, features }) => [verdict, features.at(-1)?.name]);
    expect(verdicts).toContainEqual(["departure", "near"]);
    expect(verdicts).toContainEqual(["not-met", "far"]);
  });
  it("that has run out is not hidden by another that has not", () => {
    const departures = [
      { ...agreed, features: ["paddock", "near"] },
      { ...agreed, features: ["paddock", "far"], review: "2025-05-01" },
    ];
    const expired = jumped(look({ departures })).map((finding) => finding.beneath?.expired);
    expect(expired).toContain(true);
    expect(expired).toContain(false);
  });
  it("does not hide what the plan does not say", () => {
    const report = look({ departures: [{ ...agreed, features: ["paddock"] }] });
    expect(new Set(jumped(report).map(({ verdict }) => verdict))).toEqual(new Set(["departure", "not-given"]));
    expect(report.needs.map((need) => need.asks)).toContain('the height of wall "unknown"');
  });
  it("from a rule that there is not is a problem", () => {
    const report = look({ departures: [{ ...agreed, rule: "fences/jumped-in-from-stnd", features: ["paddock"] }] });
    expect(codes(report)).toEqual(["unknown-rule"]);
    expect(report.problems[0]?.hint).toContain(rule);
  });
});

describe("what is not known", () => {
  it("is asked for also where something else fails already", () => {
    const report = look({});
    expect(jumped(report).map(({ verdict }) => verdict)).toEqual(["not-met"]);
    expect(report.needs.map((need) => need.asks)).toContain('the height of wall "unknown"');
  });
});

describe("a limit of the owner's own", () => {
  const local = (grades: object) => ({ local_limits: { [rule]: { ...grades, from: "a letter", standing: "law" } } });
  it("that only should be met leaves what must be met as it is published", () => {
    const findings = jumped(look(local({ should: { at_least: "3 m" } })));
    expect(findings.map(({ grade, wanted }) => [grade, wanted?.limit, wanted?.fell_back])).toEqual([
      ["must", "keep-out", false],
      ["should", "your-entry", false],
    ]);
    expect(findings.map(({ verdict }) => verdict)).toEqual(["not-met", "not-met"]);
  });
  it("that cannot be read is a problem, and the published one stands", () => {
    const report = look(local({ must: { at_least: "3 kg" }, should: { at_least: "0.1 m" } }));
    expect(codes(report)).toEqual(["wrong-unit"]);
    expect(report.problems[0]?.got).toBe('"3 kg"');
    expect(jumped(report)[0]).toMatchObject({ verdict: "not-met", wanted: { limit: "keep-out" } });
    expect(exitCode(report)).toBe(2);
  });
  it("that turns the rule round is a problem, and the published one stands", () => {
    const report = look(local({ must: { at_most: "5 m" } }));
    expect(codes(report)).toEqual(["contradiction"]);
    expect(jumped(report)[0]?.wanted?.limit).toBe("keep-out");
  });
  it("for a rule that there is not is a problem", () => {
    const report = look({
      local_limits: { "fences/jumped": { must: { at_least: "3 m" }, from: "a letter", standing: "law" } },
    });
    expect(codes(report)).toEqual(["unknown-rule"]);
  });
});

describe("a place that no rule knows", () => {
  it("is a problem with the nearest name, never a silent fall-back", () => {
    const report = look({ place: ["Englnd"] });
    expect(report.problems).toMatchObject([{ code: "unknown-name", got: '"Englnd"' }]);
    expect(report.problems[0]?.hint).toContain("england");
  });
  it("is a problem from the command line too", () => {
    expect(codes(look({}, { place: ["englnd"] }))).toEqual(["unknown-name"]);
    expect(codes(look({}, { place: ["anywhere"] }))).toEqual([]);
  });
});

describe("a hazard that nobody has spoken of", () => {
  it("is asked for in words that can be read out", () => {
    expect(whetherThereIs("wells")).toBe(
      'whether there are wells: draw them, or put "wells" under none if they were looked for and are not there',
    );
    expect(whetherThereIs("public way")).toContain("whether there is a public way: draw it,");
    expect(whetherThereIs("constructor")).toContain("whether there are constructor");
  });
});
