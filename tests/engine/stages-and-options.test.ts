// Stages, changes, options, local limits and departures through the whole library.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { checkPlan, type CheckOptions, exitCode, type Finding, type Report } from "../../src/index.ts";
import { root } from "../house/rule-files.ts";

/** Every hazard that a plan may rule out: here only the fence matters. */
const common = JSON.parse(readFileSync(join(root, "schemas/common.schema.json"), "utf8")) as {
  $defs: { hazard: { enum: string[] } };
};
const hazards = common.$defs.hazard.enum;

const base = {
  sightrail: 1,
  title: "a paddock in three steps",
  place: ["england"],
  as_of: "2026-11-25",
  stages: ["now", "fencing", "later"],
  none: hazards,
  walls: {
    "field wall": {
      line: [
        [5, 0.8],
        [25, 0.8],
      ],
      height: 1.1,
      build: "concrete",
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
      from: "fencing",
    },
  },
};
const look = (plan: object, options: Partial<CheckOptions> = {}): Report =>
  checkPlan(
    { file: "steps.yaml", text: JSON.stringify({ ...base, ...plan }) },
    { asOf: "2026-11-25", remedies: false, ...options },
  );
const jumped = (report: Report): readonly Finding[] =>
  report.findings.filter((finding) => finding.rule === "fences/jumped-in-from-stand");

describe("stages", () => {
  it("find it from the stage at which the fence stands, as one finding for all alike", () => {
    const findings = jumped(look({}));
    expect(findings.map(({ verdict, stages }) => ({ verdict, stages }))).toEqual([
      { verdict: "not-met", stages: ["fencing", "later"] },
    ]);
  });
  it("look at one stage when asked", () => {
    expect(jumped(look({}, { stage: "now" }))).toEqual([]);
    expect(jumped(look({}, { stage: "later" }))[0]?.stages).toEqual(["later"]);
  });
  it("take a thing away at the start of its last stage", () => {
    const walls = { "field wall": { ...base.walls["field wall"], until: "fencing" } };
    expect(jumped(look({ walls }))).toEqual([]);
  });
});

describe("changes", () => {
  it("hold from the end of their stage", () => {
    const report = look({ changes: { later: { walls: { "field wall": { height: 0.05 } } } } });
    expect(report.problems).toEqual([]);
    const first = jumped(report).find((finding) => finding.stages.includes("fencing"));
    const then = jumped(report).find((finding) => finding.stages.includes("later"));
    expect(first?.found?.value).toBeCloseTo((0.1 + Math.hypot(0.1, 0.8)) / 2, 3);
    expect(then?.found?.value).toBeCloseTo((1.15 + Math.hypot(1.15, 0.8)) / 2, 3);
  });
});

describe("options", () => {
  const options = {
    "wall lowered": { change: { walls: { "field wall": { height: 0.3 } } } },
    "no fence": { remove: { fences: ["paddock"] } },
  };
  it("leave the plan as it is until one is asked for", () => {
    expect(jumped(look({ options }))[0]?.found?.value).toBeCloseTo((0.1 + Math.hypot(0.1, 0.8)) / 2, 3);
  });
  it("change it when it is, and say so", () => {
    const [finding] = jumped(look({ options }, { option: "wall lowered" }));
    expect(finding?.found?.value).toBeCloseTo((0.9 + Math.hypot(0.9, 0.8)) / 2, 3);
    expect(finding?.option).toBe("wall lowered");
    expect(jumped(look({ options }, { option: "no fence" }))).toEqual([]);
  });
  it("of no known name are a problem", () => {
    expect(exitCode(look({ options }, { option: "wall lowred" }))).toBe(2);
  });
});

describe("the owner's own limits", () => {
  it("stand before every published row and are printed as the owner's entry", () => {
    const local_limits = {
      "fences/jumped-in-from-stand": { must: { at_least: "0.3 m" }, from: "letter of the keeper", standing: "law" },
    };
    const [finding] = jumped(look({ local_limits }));
    expect(finding?.verdict).toBe("no-fault-seen");
    expect(finding?.wanted).toMatchObject({
      limit: "your-entry",
      value: 0.3,
      standing: "law",
      source: { title: "letter of the keeper" },
    });
  });
});

describe("departures", () => {
  const agreed = {
    rule: "fences/jumped-in-from-stand",
    features: ["paddock"],
    because: "live wire",
    agreed_by: "the owner",
  };
  it("cover what they name until their day of review, and no longer decide", () => {
    const report = look({ departures: [{ ...agreed, review: "2027-05-01" }] });
    expect(jumped(report)[0]?.beneath).toMatchObject({ verdict: "not-met", expired: false });
    expect(exitCode(report)).toBe(0);
  });
  it("count as a failure once that day is past", () => {
    const report = look({ departures: [{ ...agreed, review: "2026-05-01" }] });
    expect(jumped(report)[0]?.beneath?.expired).toBe(true);
    expect(exitCode(report)).toBe(1);
  });
  it("are judged against the day that is given", () => {
    const report = look(
      { departures: [{ ...agreed, review: "2027-05-01" }] },
      { asOf: "2028-01-01", asOfStands: true },
    );
    expect(report.as_of).toBe("2028-01-01");
    expect(exitCode(report)).toBe(1);
  });
});
