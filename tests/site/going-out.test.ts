// Going out of a drive that has nothing beyond it: who came in forwards backs out, who came in backwards drives out, and who has not
// said which is asked. The drive is 3.0 m wide and the car 1.8 m: 0.60 m on each side, and 0.30 m is wanted (COMPUTED).

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";

const car = {
  length: 4.2,
  wheelbase: 2.6,
  front_overhang: 0.85,
  width: 1.8,
  turning_circle: { across: 10.8, between: "kerbs" },
};
const lines = {
  "from the lane inwards": [
    [0, 0.5],
    [0, 20],
  ],
  "from its inner end outwards": [
    [0, 20],
    [0, 0.5],
  ],
};

function checked(line: readonly (readonly number[])[], manoeuvre: object) {
  const plan = {
    sightrail: 1,
    title: "a drive",
    place: ["anywhere"],
    as_of: "2026-11-25",
    stages: ["works"],
    surfaces: { drive: { centre_line: line, width: 3, for: ["vehicles"], existing: true }, yard: yard() },
    vehicles: { car },
    manoeuvres: {
      off: { vehicle: "car", does: "go out", goes_out_by: "drive", on: ["drive"], clear: 0.3, ...manoeuvre },
    },
  };
  const report = checkPlan({ file: "plan.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25" });
  expect(report.problems).toEqual([]);
  const room = report.findings.filter(({ rule }) => rule === "access/no-room-to-turn").map(({ verdict }) => verdict);
  const asked = report.needs.filter(({ path }) => path.endsWith("backwards")).length;
  return { room, asked };
}

/** Ground at the inner end by which one can tell the open end of the drive. */
const yard = () => ({
  outline: [
    [-2, 20],
    [2, 20],
    [2, 22],
    [-2, 22],
  ],
  for: ["walking"],
  existing: true,
});

describe.each(Object.entries(lines))("a drive drawn %s", (_, line) => {
  it("is left backwards by who stands in it nose first", () => {
    expect(checked(line, { start: { on: "drive" }, backwards: "out" })).toEqual({ room: ["met"], asked: 0 });
  });
  it("is left forwards by who backed in", () => {
    expect(checked(line, { start: { on: "drive" }, backwards: "in" })).toEqual({ room: ["met"], asked: 0 });
  });
  it("has no room to turn in", () => {
    expect(checked(line, { start: { on: "drive" }, moves: 5 })).toEqual({ room: ["not-met"], asked: 0 });
  });
  it("asks which way round it stands", () => {
    expect(checked(line, { start: { on: "drive" } })).toEqual({ room: ["not-given"], asked: 1 });
  });
});

it("does not guess how it stands where the drive bends within its length", () => {
  const bent = [
    [0, 0.5],
    [0, 18],
    [2, 20],
  ];
  expect(checked(bent, { start: { on: "drive" }, backwards: "out" }).room).toEqual(["not-given"]);
});
