// Small invented plans, each with a danger that somebody in the trade would see, and what may never be said of it.
// PRACTICE throughout: the dangers are those of the usual cautions; the figures stand in the cards, with their sources.

import { describe, expect, it } from "vitest";
import { checkPlan } from "../src/index.ts";
import type { Finding, Report } from "../src/model/finding.ts";

const head = `sightrail: 1
title: A danger
place: [england]
as_of: 2026-11-25
stages: [now, works]
`;

const reportOf = (body: string, place = "england"): Report =>
  checkPlan(
    { file: "danger.yaml", text: `${head.replace("england", place)}${body}` },
    { asOf: "2026-11-25", remedies: false },
  );

/** `rule thing: verdict` of each finding of a rule. */
const told = ({ findings }: Report, rule: string): readonly string[] =>
  findings
    .filter((finding: Finding) => finding.rule === rule)
    .map((finding) => `${finding.features.map(({ name }) => name).join(" and ")}: ${finding.verdict}`);

const wall = (more: string) => `walls:
  terrace: {line: [[0, 0], [30, 0]], height: 1.4, thickness: 0.45, build: block, retains: {side: left, height: 1.4, surcharge: true}, ${more}, from: works}
surfaces:
  drive: {centre_line: [[0, 2.4], [30, 2.4]], width: 3.5, for: [car], of: crushed rock, existing: true}
`;

describe("nobody is no answer", () => {
  const silent = ["nobody", "Nobody yet.", "no-one", "none", "not yet", "me", "the owner"];
  it.each(silent)("a wall designed by %s is designed by nobody", (words) => {
    const report = reportOf(wall(`designed_by: "${words}"`));
    expect(told(report, "walls/needs-a-designer")).toContain("terrace: not-met");
    expect(told(report, "walls/load-behind")).toContain("drive and terrace: not-met");
  });

  it.each(["unknown", "to be decided", "TBC", "?", "n/a"])("a designer who is %s is asked for or missed", (words) => {
    expect(told(reportOf(wall(`designed_by: "${words}"`)), "walls/needs-a-designer")).toContain("terrace: not-met");
  });

  it("a designer with a name is one", () => {
    const report = reportOf(wall("designed_by: Harrow and Dene, engineers"));
    expect(told(report, "walls/needs-a-designer")).toEqual([]);
  });

  it.each(["unknown", "not known", "?"])("fill whose origin is %s has none", (words) => {
    const report = reportOf(`stock:\n  rubble: {of: crushed concrete, mass: 20 t, origin: "${words}", from: works}\n`);
    expect(told(report, "materials/origin-not-known")).toEqual(["rubble: not-given"]);
  });

  it("a way out for water that is only denied is none, and one that nothing is said of is asked for", () => {
    const rule = "walls/no-way-out-for-water";
    expect(told(reportOf(wall("drained: {weep_holes: false}")), rule)).toEqual(["terrace: not-met"]);
    expect(told(reportOf(wall("drained: {none: false}")), rule)).toEqual(["terrace: not-given"]);
    expect(told(reportOf(wall("drained: {weep_holes: true}")), rule)).toEqual(["terrace: met"]);
  });

  it.each(["nobody", "none", "?", "unknown"])("a departure agreed by %s covers nothing", (words) => {
    const report = reportOf(
      `${wall("drained: {none: true}")}departures:\n  - {rule: walls/no-way-out-for-water, features: [terrace], because: dry, agreed_by: "${words}", review: 2027-05-01}\n`,
    );
    expect(told(report, "walls/no-way-out-for-water")).toEqual(["terrace: not-met"]);
    expect(report.problems.map(({ code }) => code)).toContain("missing-key");
  });
});

describe("what could not be read is not judged as though it were not there", () => {
  it("months that are words leave the month open", () => {
    const report = reportOf("jobs:\n  grub hedge: {does: clear, stage: works, months: [june]}\n");
    expect(told(report, "works/clears-in-nesting-months")).toEqual(["grub hedge: not-given"]);
  });

  it("stems with one that is not readable are no smaller tree", () => {
    const report = reportOf(
      "trees:\n  thorn: {at: [0, 2], stems: [100 mm, wide], species: hawthorn, existing: true}\ndrains:\n  rain: {line: [[-9, 0], [9, 0]], carries: rain, bore: 100 mm, from: works}\n",
    );
    expect(told(report, "trees/works-in-root-zone")).toEqual(["rain and thorn: not-given"]);
  });

  it.each([
    ["1e308", "out-of-range"],
    ["6 ft 14 in", "wrong-unit"],
  ])("a point at %s is told of", (north, code) => {
    const report = reportOf(`walls:\n  w: {line: [[0, 0], [20, "${north}"]], height: 1, existing: true}\n`);
    expect(report.problems.map((problem) => problem.code)).toContain(code);
  });

  it("31 February is no day, and a line of twenty thousand points is told of at once", () => {
    const line = Array.from({ length: 20_000 }, (_, at) => `[${at % 2}, ${at}]`).join(", ");
    const report = checkPlan(
      {
        file: "p.yaml",
        text: `${head.replace("2026-11-25", "2026-02-31")}walls:\n  w: {line: [${line}], height: 1, existing: true}\n`,
      },
      { asOf: "2026-11-25" },
    );
    expect(report.as_of).toBe("2026-11-25");
    expect(report.problems.map(({ expected }) => expected).join("; ")).toMatch(/at most 2000.*day of the calendar/s);
  });
});

describe("dangers that a plan hides in its words", () => {
  it("a tipper under a wire of which nobody says whether its body goes up, and the place where it tips", () => {
    const report = reportOf(`services:
  wire: {line: [[-20, 5], [50, 5]], kind: electricity, overhead: {carried_by: poles}, existing: true}
surfaces:
  tip: {outline: [[0, 0], [20, 0], [20, 12], [0, 12]], for: [lorry], of: crushed rock, tip_place: true, existing: true}
vehicles:
  tipper: {length: 8.5, width: 2.5, wheelbase: 4.6, front_overhang: 1.4, height_raised: 6.2, turning_circle: {across: 16.2, between: kerbs}}
manoeuvres:
  stone comes: {vehicle: tipper, does: deliver, start: {at: [4, 6], heading: 90 deg grid}, end: {at: [10, 6], heading: 90 deg grid}, on: [tip], moves: 1, stages: [works]}
`);
    expect(told(report, "separation/tip-place-near-wire")).toEqual(["tip and wire: not-met"]);
    expect(told(report, "access/raises-near-wire")).toEqual(["stone comes and wire: not-given"]);
  });

  it("a slurry store by a well and by a ditch that is drawn among the drains", () => {
    const report = reportOf(`tanks:
  store: {circle: {at: [0, 0], across: 8}, holds: slurry, existing: true}
water:
  well: {at: [15, 0], kind: well, existing: true}
drains:
  roadside: {line: [[-9, -20], [-9, 20]], carries: land, form: ditch, existing: true}
`);
    expect(told(report, "separation/slurry-near-water").toSorted()).toEqual([
      "store and roadside: not-met",
      "store and well: not-met",
    ]);
  });

  it("gas bottles by a gully, a garden gate in a deer fence, and children beside a trench", () => {
    const report = reportOf(`tanks:
  bottles: {at: [15, 5], holds: gas, gas_is: cylinders, existing: true}
chambers:
  gully: {at: [15.5, 5], kind: gully, existing: true}
fences:
  deer fence: {line: [[0, 40], [50, 40]], height: 1.9, keep_out: [roe deer], keep_out_side: left, existing: true}
gates:
  wicket: {on: deer fence, along: 20, clear: 1.2, height: 1.1, existing: true}
routes:
  swings: {outline: [[0, 12], [8, 12], [8, 18], [0, 18]], for: play, children: true, existing: true}
drains:
  rain: {line: [[-5, 10.8], [20, 10.8]], carries: rain, bore: 150 mm, trench: {width: 0.6, depth: 1.6, somebody_goes_in: false, left_open: 6 h, fenced: false}, from: works}
`);
    expect(told(report, "separation/gas-near-drain")).toEqual(["bottles and gully: not-met"]);
    expect(told(report, "fences/gate-lower-than-it-should")).toEqual(["wicket and deer fence: not-met"]);
    expect(told(report, "works/dig-beside-people")).toEqual(["rain and swings: not-met"]);
  });
});
