// What hangs over the ground bears only on bodies that reach up to it: a beam, the eaves of a roof, a lintel over a gateway.
// The figures are those of the plans below (COMPUTED): the lane is 4.00 m wide, and the bodies are 1.80 m.

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";

const car = {
  length: 4.2,
  wheelbase: 2.6,
  front_overhang: 0.85,
  width: 1.8,
  turning_circle: { across: 10.8, between: "kerbs" },
};
const wall = (north: number) => ({
  line: [
    [-20, north],
    [30, north],
  ],
  height: 1.2,
  existing: true,
});

/** A drive straight through between two walls 4 m apart, with what hangs over it. */
function through(height: number | undefined, more: object): string {
  const plan = {
    sightrail: 1,
    title: "a lane",
    place: ["anywhere"],
    as_of: "2026-11-25",
    stages: ["works"],
    surfaces: {
      lane: {
        centre_line: [
          [-20, 0],
          [30, 0],
        ],
        width: 3.6,
        for: ["vehicles"],
        existing: true,
      },
    },
    walls: { "north wall": wall(2), "south wall": wall(-2) },
    vehicles: { car: height === undefined ? car : { ...car, height } },
    manoeuvres: {
      through: {
        vehicle: "car",
        does: "drive through",
        comes_in_by: "lane",
        on: ["lane"],
        clear: 0.3,
        start: { at: [-8, 0], heading: "towards P2" },
        end: { at: [20, 0], heading: "towards P2" },
      },
    },
    survey: { stations: { P1: { at: [-100, 0] }, P2: { line_to: "P1", tape: 1000 } } },
    ...more,
  };
  const report = checkPlan({ file: "plan.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25" });
  expect(report.problems).toEqual([]);
  return report.findings.find(({ rule }) => rule === "access/no-room-to-turn")?.verdict ?? "none";
}

const beam = {
  obstacles: {
    beam: {
      outline: [
        [10, -3],
        [10.4, -3],
        [10.4, 3],
        [10, 3],
      ],
      kind: "other",
      height: 3,
      underside: 2.5,
      existing: true,
    },
  },
};
/** Its wall stands 1.3 m from the middle, and its eaves 1.6 m out from that: 3.3 m are left, and 1.7 m. */
const barn = {
  buildings: {
    barn: {
      outline: [
        [5, 1.3],
        [15, 1.3],
        [15, 1.9],
        [5, 1.9],
      ],
      eaves: 2.5,
      roof: { overhang: 1.6 },
      existing: true,
    },
  },
};
const arch = {
  walls: {
    cross: {
      line: [
        [10, -6],
        [10, 6],
      ],
      height: 3.5,
      gaps: [{ from: 4.5, to: 7.5, lintel: 2.5 }],
      existing: true,
    },
  },
};

describe("what hangs 2.5 m over the ground", () => {
  it.each([
    ["a beam", 1.85, "met", beam],
    ["a beam", 2.7, "not-met", beam],
    ["a beam, where nobody says how tall it is,", undefined, "not-met", beam],
    ["the eaves of a barn", 1.85, "met", barn],
    ["the eaves of a barn", 2.7, "not-met", barn],
    ["the lintel of a gateway", 1.85, "met", arch],
    ["the lintel of a gateway", 2.7, "not-met", arch],
  ] as const)("%s: what is %s m tall: %s", (_, height, verdict, more) => {
    expect(through(height, more)).toBe(verdict);
  });
});
