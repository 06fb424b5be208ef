// Manoeuvres as people say them, each in a plan where it can be done and in one where it cannot. The bodies are 1.80 m (car)
// and 2.30 m wide (lorry); the ground is drawn so that the answer follows from widths (COMPUTED beside each), or from the
// search where it turns.

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";

const car = {
  length: 4.2,
  wheelbase: 2.6,
  front_overhang: 0.85,
  width: 1.8,
  height: 1.5,
  turning_circle: { across: 10.8, between: "kerbs" },
};
const lorry = {
  length: 6.5,
  wheelbase: 3.4,
  front_overhang: 1.2,
  width: 2.3,
  height: 3.2,
  height_raised: 5.2,
  turning_circle: { across: 13.5, between: "kerbs" },
};
type Corner = readonly [number, number];
const box = (west: number, south: number, east: number, north: number): readonly Corner[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];
const ground = (outline: readonly Corner[], more: object = {}) => ({
  outline,
  for: ["vehicles"],
  existing: true,
  ...more,
});
const track = (more: object = {}) => ({
  centre_line: [
    [-30, 4],
    [0.5, 4],
  ],
  width: 3.5,
  for: ["vehicles"],
  existing: true,
  ...more,
});
const wall = (from: Corner, to: Corner) => ({ line: [from, to], height: 2, thickness: 0.2, existing: true });

interface Asked {
  readonly rule: string;
  readonly of: string;
  readonly stage?: string;
}

function verdict(plan: object, { rule, of, stage }: Asked): string {
  const text = JSON.stringify({
    sightrail: 1,
    title: "a yard",
    place: ["anywhere"],
    as_of: "2026-11-25",
    stages: ["works"],
    ...plan,
  });
  const report = checkPlan({ file: "plan.yaml", text }, { asOf: "2026-11-25" });
  expect(report.problems).toEqual([]);
  const found = report.findings.filter(
    (finding) =>
      finding.rule === rule &&
      finding.features.some(({ name }) => name === of) &&
      (stage === undefined || finding.stages.includes(stage)),
  );
  return found.map((finding) => finding.verdict).join(" ") || "none";
}
const room = (of: string, stage?: string): Asked => ({
  rule: "access/no-room-to-turn",
  of,
  ...(stage ? { stage } : {}),
});

describe("turn round", () => {
  it.each([
    ["on 14 m by 11 m", 11, "met"],
    ["on 14 m by 3.9 m, which is less than its length", 3.9, "not-met"],
  ])("%s", (_, deep, expected) => {
    const plan = {
      surfaces: {
        track: track({
          centre_line: [
            [-30, 1.75],
            [0.5, 1.75],
          ],
        }),
        pad: ground(box(0, 0, 14, deep)),
      },
      vehicles: { car },
      manoeuvres: {
        turn: {
          vehicle: "car",
          does: "turn round",
          comes_in_by: "track",
          on: ["track", "pad"],
          moves: 3,
          clear: 0.1,
          body_over_edge: false,
        },
      },
    };
    expect(verdict(plan, room("turn"))).toBe(expected);
  });
});

describe("pass a gate", () => {
  // (2.4 - 1.8) / 2 = 0.30 m on each side, and 0.10 m is wanted; 1.7 m is less than the body.
  it.each([
    [2.4, "met"],
    [1.7, "not-met"],
  ])("%d m between the posts", (clear, expected) => {
    const plan = {
      survey: { stations: { P1: { at: [-100, 4] }, P2: { line_to: "P1", tape: 1000 } } },
      surfaces: {
        track: track({
          centre_line: [
            [-30, 4],
            [30, 4],
          ],
        }),
      },
      walls: { cross: wall([0, -4], [0, 12]) },
      gates: { way: { on: "cross", along: 8 - clear / 2, clear, existing: true } },
      vehicles: { car },
      manoeuvres: {
        through: {
          vehicle: "car",
          does: "drive through",
          comes_in_by: "track",
          on: ["track"],
          clear: 0.1,
          start: { at: [-12, 4], heading: "90 deg grid" },
          end: { at: [12, 4], heading: "90 deg grid" },
        },
      },
    };
    expect(verdict(plan, room("through"))).toBe(expected);
  });
});

/** A yard with two bays side by side in its north side, the east one along a wall. */
const bays = (wide: number) => ({
  surfaces: {
    track: track(),
    yard: ground(box(0, 0, 20, 8)),
    "west bay": ground(box(10 - wide, 8, 10, 13), { for: ["parking"] }),
    "east bay": ground(box(10, 8, 10 + wide, 13), { for: ["parking"] }),
  },
  walls: { "side wall": wall([10.1 + wide, 8], [10.1 + wide, 13.5]), back: wall([10 - wide, 13.3], [10 + wide, 13.3]) },
  vehicles: { car, van: { ...car } },
});
const parks = (vehicle: string, to: string) => ({
  vehicle,
  does: "park",
  comes_in_by: "track",
  on: ["track", "yard"],
  to,
  moves: 3,
  clear: 0.1,
});

describe("park side by side by a wall", () => {
  // In bays of 2.6 m the two stand 0.80 m apart; in bays of 1.7 m they would stand in each other.
  it.each([
    [2.6, "met", "met"],
    [1.7, "not-met", "not-met"],
  ])("bays %d m wide", (wide, west, east) => {
    const plan = { ...bays(wide), manoeuvres: { first: parks("car", "west bay"), second: parks("van", "east bay") } };
    expect([verdict(plan, room("first")), verdict(plan, room("second"))]).toEqual([
      west === "met" ? "met" : expect.not.stringMatching(/^met$/),
      east,
    ]);
  });
});

describe("leave a bay while the other stands in its own", () => {
  it.each([
    [2.6, true],
    [1.7, false],
  ])("bays %d m wide", (wide, can) => {
    const leaves = {
      vehicle: "van",
      does: "leave a bay",
      to: "east bay",
      goes_out_by: "track",
      comes_in_by: "track",
      on: ["track", "yard"],
      moves: 3,
      clear: 0.1,
    };
    const plan = { ...bays(wide), manoeuvres: { stays: parks("car", "west bay"), leaves } };
    const found = verdict(plan, room("leaves"));
    if (can) expect(found).toBe("met");
    else expect(found).not.toBe("met");
  });
});

describe("reverse to a door", () => {
  const plan = (more: object) => ({
    surfaces: { track: track(), yard: ground(box(0, 0, 22, 16)), "loading place": ground(box(12, 16, 15.2, 23)) },
    buildings: { barn: { outline: box(8, 23.3, 20, 30), eaves: 4, existing: true } },
    vehicles: { lorry },
    manoeuvres: {
      load: {
        vehicle: "lorry",
        does: "reverse to",
        to: "loading place",
        comes_in_by: "track",
        on: ["track", "yard"],
        moves: 2,
        clear: 0.2,
        start: { gear: "forwards" },
      },
    },
    ...more,
  });
  it("over an empty yard", () => expect(verdict(plan({}), room("load"))).toBe("met"));
  it("not past a heap before the door", () => {
    const heaps = { chips: { outline: box(11, 12, 17, 15.5), of: "logs", height: 1.5, existing: true } };
    expect(verdict(plan({ heaps }), room("load"))).toBe("not-met");
  });
});

describe("deliver, and turn, by what stands there at each stage", () => {
  const bricks = (stage: string) => ({
    vehicle: "lorry",
    does: "deliver",
    comes_in_by: "track",
    on: ["track", "yard"],
    moves: 3,
    clear: 0.3,
    stages: [stage],
  });
  const plan = {
    stages: ["now", "works", "tidied", "finished"],
    surfaces: { track: track(), yard: ground(box(0, -6, 24, 16)) },
    heaps: {
      "dug soil": { outline: box(3, -5, 20, 15), of: "spoil", height: 1.5, from: "now", until: "tidied" },
    },
    vehicles: { lorry },
    manoeuvres: { early: bricks("works"), late: bricks("finished") },
  };
  it("not while the soil lies on the yard", () => expect(verdict(plan, room("early"))).toBe("not-met"));
  it("once it is carted away", () => expect(verdict(plan, room("late"))).toBe("met"));
});

describe("meet another and pass", () => {
  const plan = (more: object) => ({
    surfaces: { track: track(more) },
    vehicles: { car, lorry },
    manoeuvres: { meeting: { vehicle: "lorry", does: "pass", meets: "car", comes_in_by: "track", on: ["track"] } },
  });
  // 3.5 - 1.8 - 2.3 = -0.6 m; at a stretch of 5.5 m 1.40 m is left, and 0.90 m is advised.
  it("not on 3.5 m", () =>
    expect(verdict(plan({}), { rule: "access/no-room-to-meet", of: "meeting" })).toBe("not-met"));
  it("at a stretch of 5.5 m", () =>
    expect(
      verdict(plan({ widened: [{ from: 5, to: 20, width: 5.5 }] }), { rule: "access/no-room-to-meet", of: "meeting" }),
    ).toBe("met"));
});

describe("tip, with the body up", () => {
  const plan = (branch: number, wire: number) => ({
    place: ["england"],
    survey: { stations: { P1: { at: [-100, 4] }, P2: { line_to: "P1", tape: 1000 } } },
    surfaces: { track: track(), yard: ground(box(0, -6, 24, 16), { finished: { fall: "1 in 60 towards corner 3" } }) },
    trees: { ash: { at: [12, 18], girth: 1.4, crown: { radius: 6 }, clearance_under: branch, existing: true } },
    services: {
      line: {
        line: [
          [-30, wire],
          [60, wire],
        ],
        kind: "electricity",
        overhead: { height: "unknown", voltage: "unknown", carried_by: "poles" },
        existing: true,
      },
    },
    vehicles: { lorry },
    manoeuvres: {
      stone: {
        vehicle: "lorry",
        does: "deliver",
        comes_in_by: "track",
        to: "yard",
        on: ["track", "yard"],
        moves: 3,
        clear: 0.2,
        raises: true,
      },
    },
  });
  const [under, wire, slope] = ["headroom-too-low", "raises-near-wire", "tips-on-slope"].map((rule) => ({
    rule: `access/${rule}`,
    of: "stone",
  })) as [Asked, Asked, Asked];
  it("under branches 6.0 m up, 0.8 m over the raised body, with the line 40 m off", () => {
    expect([verdict(plan(6.0, 60), under), verdict(plan(6.0, 60), wire), verdict(plan(6.0, 60), slope)]).toEqual([
      "met",
      expect.stringMatching(/no-fault-seen|none/),
      "no-fault-seen",
    ]);
  });
  it("not under branches 5.0 m up, nor beside the line", () => {
    expect([verdict(plan(5.0, 18), under), verdict(plan(5.0, 18), wire)]).toEqual(["not-met", "not-met"]);
  });
});
