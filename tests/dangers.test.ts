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

describe("dangers that were silent", () => {
  const met = ["met", "no-fault-seen", "does-not-bear"];
  type Silent = readonly [danger: string, rule: string, told: readonly string[], body: string];
  const silent: readonly Silent[] = [
    [
      "asbestos seen in a heap",
      "materials/suspect-pieces",
      ["old shed: not-met"],
      "heaps:\n  old shed: {outline: [[0, 0], [3, 0], [3, 3]], of: rubble, suspect: [cement sheet], existing: true}\n",
    ],
    [
      "a bull where the public walks",
      "fences/bull-by-public-way",
      ["bull and path: not-met"],
      "animals:\n  bull: {outline: [[0, 0], [40, 0], [40, 40], [0, 40]], species: bull, existing: true}\nroutes:\n  path: {line: [[-5, 20], [45, 20]], for: walking, public: true, existing: true}\n",
    ],
    [
      "a tree that comes down on the house",
      "trees/falls-on-something",
      ["ash and house: not-met"],
      "trees:\n  ash: {at: [0, 0], height: 18, stem: 500 mm, species: ash, existing: true, until: works, cut_in: [11]}\nbuildings:\n  house: {outline: [[10, 0], [20, 0], [20, 8], [10, 8]], existing: true}\n",
    ],
    [
      "hay stacked against the house",
      "separation/stack-near-building",
      ["bales and house: not-met"],
      "heaps:\n  bales: {outline: [[0, 0], [8, 0], [8, 4], [0, 4]], of: hay, height: 4.5, existing: true}\nbuildings:\n  house: {outline: [[-6, 0], [-3, 0], [-3, 5], [-6, 5]], habitable: true, existing: true}\n",
    ],
    [
      "a gap that a change tears in a dry stone wall",
      "walls/gap-without-heads",
      ["march, gap 1: not-given"],
      "walls:\n  march: {line: [[0, 0], [30, 0]], height: 1.6, thickness: 0.6, build: dry stone, existing: true}\nchanges:\n  works: {walls: {march: {gaps: [{from: 10, to: 14}]}}}\n",
    ],
    [
      "a trampoline under a wire",
      "separation/play-near-wire",
      ["play and wire: not-met"],
      "services:\n  wire: {line: [[-20, 5], [50, 5]], kind: electricity, overhead: {carried_by: poles}, existing: true}\nroutes:\n  play: {outline: [[0, 3], [6, 3], [6, 8], [0, 8]], for: play, children: true, existing: true}\n",
    ],
    [
      "lorries at the top of a terrace wall",
      "access/way-near-drop",
      ["apron and edge: not-met"],
      "walls:\n  edge: {line: [[0, 0], [20, 0]], height: 1.5, thickness: 0.3, build: concrete, retains: {side: left, height: 1.5}, designed_by: Harrow engineers, existing: true}\nsurfaces:\n  apron: {outline: [[0, 0.2], [20, 0.2], [20, 12], [0, 12]], for: [lorry], of: concrete, existing: true}\n",
    ],
    [
      "sheep dip by a beck",
      "separation/chemicals-near-water",
      ["bath and beck: not-met"],
      "tanks:\n  bath: {circle: {at: [0, 0], across: 3}, holds: sheep dip, existing: true}\nwater:\n  beck: {line: [[6, -20], [6, 20]], kind: stream, existing: true}\n",
    ],
    [
      "silage by a well",
      "separation/silage-near-well",
      ["clamp and well: not-met"],
      "heaps:\n  clamp: {outline: [[0, 0], [20, 0], [20, 10], [0, 10]], of: silage, existing: true}\nwater:\n  well: {at: [30, 5], kind: well, existing: true}\n",
    ],
    [
      "yew over a paddock fence",
      "trees/poisons-stock",
      ["yew and paddock: not-met"],
      "trees:\n  yew: {at: [5, 2], species: yew, existing: true}\nfences:\n  paddock: {line: [[0, 0], [30, 0]], height: 1.1, keep_in: [horse], existing: true}\n",
    ],
    [
      "a pit beside the stay of a pole",
      "separation/dig-near-pole",
      ["pit and stay: not-met"],
      "obstacles:\n  stay: {at: [1.2, 0], kind: stay wire, existing: true}\nexcavations:\n  pit: {outline: [[-3, -2], [0, -2], [0, 2], [-3, 2]], depth: 1.5, from: works}\n",
    ],
    [
      "a bridge narrower than the lorry, drawn across the track by its line only",
      "access/crossing-too-narrow",
      ["comes and beck bridge: not-met"],
      "surfaces:\n  track: {centre_line: [[-20, 0], [20, 0]], width: 3, for: [vehicles], existing: true}\nwater:\n  beck: {line: [[0, -9], [0, 9]], kind: stream, existing: true}\ncrossings:\n  beck bridge: {over: beck, line: [[0, -1.2], [0, 1.2]], kind: bridge, width: 2.6, existing: true}\nvehicles:\n  lorry: {length: 8, width: 2.5, mass: 18 t}\nmanoeuvres:\n  comes: {vehicle: lorry, does: drive through, comes_in_by: track, on: [track]}\n",
    ],
    [
      "an open trench across the track that the lorry uses that week",
      "access/dig-across-way",
      ["rain and track: not-met"],
      "surfaces:\n  track: {centre_line: [[-20, 0], [20, 0]], width: 3, for: [vehicles], existing: true}\ndrains:\n  rain: {line: [[0, -5], [0, 5]], carries: rain, bore: 100 mm, from: works, trench: {width: 0.6, depth: 0.9, plated: false}}\nvehicles:\n  lorry: {length: 8, width: 2.5, mass: 18 t}\nmanoeuvres:\n  comes: {vehicle: lorry, does: drive through, comes_in_by: track, on: [track], stages: [works]}\n",
    ],
  ];

  it.each(silent)("%s", (_, rule, wanted, body) => {
    const all = told(reportOf(body), rule);
    expect(all).toEqual(expect.arrayContaining([...wanted]));
    expect(all.filter((one) => met.some((verdict) => one.endsWith(`: ${verdict}`)))).toEqual([]);
  });

  it("a hedge that goes by a change of the plan is asked for its months", () => {
    const report = reportOf("hedges:\n  lane hedge: {line: [[0, 0], [30, 0]], existing: true, until: works}\n");
    expect(told(report, "works/taken-out-in-nesting-months")).toEqual(["lane hedge: not-given"]);
  });

  it("a body raised where nobody has tried the soil", () => {
    const report = reportOf(`surfaces:
  yard: {outline: [[0, -8], [20, -8], [20, 8], [0, 8]], for: [vehicles], tip_place: true, existing: true}
vehicles:
  tipper: {length: 8, width: 2.5}
manoeuvres:
  stone: {vehicle: tipper, does: deliver, to: yard, on: [yard], raises: true}
`);
    expect(told(report, "access/tips-on-soft-ground")).toEqual(["stone and yard: not-given"]);
  });
});
