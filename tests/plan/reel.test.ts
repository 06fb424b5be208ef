// What the plan says of its tape, in the lengths that are used. Expected numbers: the formulas by hand (COMPUTED).

import { describe, expect, it } from "vitest";
import { planOf } from "./resolved.ts";

/** East of B in millimetres beyond what was read: the first line is taped along east. */
const beyond = (tape: string, read = 30): number => {
  const plan = planOf(`
survey:
  tape: {${tape}}
  stations:
    A: {at: [0, 0]}
    B: {line_to: A, tape: ${read}}
`);
  const east = plan.pegs.get("B")?.east.id ?? -1;
  return 1000 * ((plan.numbers.values[east] ?? Number.NaN) - read);
};

describe("a length of 30 m read from a tape", () => {
  it.each([
    ["of class II", "class: II", 0],
    ["4 mm too long in 30 m: longer than it reads", "long_by: 4 mm", 4],
    ["4 mm too long in 50 m", "long_by: 4 mm, length: 50", 2.4],
    ["at 5 degrees: 15 x 11.5e-6 x 30 m shorter", "class: II, temperature: 5 degC", -5.175],
    ["at 35 degrees, of no class", "temperature: 35 degC", 5.175],
    // w = 0.5 x 9.80665 / 30 = 0.16344 N/m; w^2 30^3 / (24 x 50^2) = 12.021 mm.
    ["hung with 50 N", "hung: true, mass: 0.5 kg, pull: 50 N", -12.021],
    ["that lay on the ground, whatever it weighs", "class: II, mass: 0.5 kg, pull: 50 N", 0],
    ["all together", "class: II, long_by: 4 mm, temperature: 5 degC, hung: true, mass: 0.5 kg, pull: 50 N", -13.196],
  ])("%s", (_, tape, millimetres) => {
    expect(beyond(tape)).toBeCloseTo(millimetres, 3);
  });
  it("hangs in whole tapes and a rest: 75 m of a 30 m tape are two of 12.021 mm and 15 m of 1.503", () => {
    expect(beyond("hung: true, mass: 0.5 kg, pull: 50 N", 75)).toBeCloseTo(-(2 * 12.021 + 1.503), 2);
  });
});

describe("an offset to the right", () => {
  it("is as much longer as one to the left", () => {
    const plan = planOf(`
survey:
  tape: {long_by: 3 mm}
  stations:
    A: {at: [0, 0]}
    B: {line_to: A, tape: 30}
    R: {along: A to B, run: 10, right: 10}
    L: {along: A to B, run: 10, left: 10}
`);
    const north = (name: string) => plan.numbers.values[plan.pegs.get(name)?.north.id ?? -1] ?? Number.NaN;
    expect([north("R"), north("L")].map((one) => Number(one.toFixed(6)))).toEqual([-10.001, 10.001]);
  });
});
