import { describe, expect, it } from "vitest";
import {
  bowExcess,
  horizontalLength,
  maximumPermissibleError,
  maximumPermissibleErrorFromEnd,
  sagCorrection,
  sagOverSpans,
  tapeClasses,
  temperatureCorrection,
  uniformDoubt,
} from "../../src/adjustment/tape.ts";
import { cutAngle, placeByTies } from "../../src/adjustment/tie.ts";
import type { Tied } from "../../src/adjustment/tie.ts";

const degrees = Math.PI / 180;

describe("a tape", () => {
  // UK SI 2016/1153 Schedule 1I (MI-008): a + bL mm, L rounded up to whole metres; formula READ, values COMPUTED.
  it.each([
    ["I", 30, 3.1],
    ["II", 30, 6.3],
    ["III", 30, 12.6],
    ["III", 20, 8.6],
    ["I", 10, 1.1],
    ["II", 12.3, 2.9],
    ["II", 12, 2.7],
  ] as const)("of class %s may be wrong by so much at %d m", (name, length, millimetres) => {
    expect(1000 * maximumPermissibleError(tapeClasses[name], length)).toBeCloseTo(millimetres, 9);
  });

  it("does not round a whole metre up because of the last binary digit", () => {
    expect(1000 * maximumPermissibleError(tapeClasses.II, 0.1 * 3 * 10)).toBeCloseTo(0.9, 9);
  });

  it("is worse by the end face where it starts there", () => {
    expect(1000 * maximumPermissibleErrorFromEnd(tapeClasses.III, 20)).toBeCloseTo(8.9, 9);
  });

  // Class III at 20 m, 10 mm handling, 5 mm reading, all rectangular: 8.1 mm. COMPUTED.
  it("with handling and reading gives the field figure", () => {
    const parts = [maximumPermissibleError(tapeClasses.III, 20), 0.01, 0.005].map(uniformDoubt);
    expect(1000 * Math.sqrt(parts.reduce((sum, u) => sum + u * u, 0))).toBeCloseTo(8.1, 1);
  });

  // Physical handbook values for steel: 30 m, 15 K above 20 C, 11.5e-6/K: 5.2 mm; COMPUTED.
  it("is long when warm", () => {
    expect(1000 * temperatureCorrection(30, 35)).toBeCloseTo(5.175, 9);
    expect(temperatureCorrection(30, 20)).toBe(0);
  });

  // 0.15 N/m, 30 m, 50 N: 10 mm (10.125 by the formula); COMPUTED.
  it("reads long when it sags", () => {
    expect(1000 * sagCorrection({ length: 30, weight: 0.15, pull: 50 })).toBeCloseTo(-10.125, 9);
  });

  // Flat parabola against the catenary: chord 2a sinh(L/2a) = arc, with a = T/w; closed form, differs by higher order.
  it("has the sag of a catenary", () => {
    const [length, weight, pull] = [30, 0.15, 50];
    const a = pull / weight;
    const chord = 2 * a * Math.asinh(length / (2 * a));
    expect(Math.abs(sagCorrection({ length, weight, pull }) - (chord - length))).toBeLessThan(1e-4);
  });

  // 20 m over 1.5 m of rise reads 56 mm long (d^2/2L); 0.3 m off the line at the middle of 30 m reads 6 mm long. COMPUTED.
  it("reads long up a slope and off the line", () => {
    expect(1000 * (20 - horizontalLength(20, 1.5)!)).toBeCloseTo(56.3, 1);
    expect(1000 * bowExcess(30, 0.3)).toBeCloseTo(6, 2);
    expect(horizontalLength(1, 2)).toBeNull();
    expect(horizontalLength(5, -3)).toBe(4);
  });
});

// Slides on taping corrections with worked examples, slideplayer.com/amp/13085605 (READ), in feet and pounds: the formulas
// hold in any one set of units. Printed to 0.01 ft.
describe("a tape of the worked examples", () => {
  const foot = 0.3048;
  it("of 368.50 ft at 22 F, true at 68 F, expanding by 0.0000065 per F: -0.11 ft", () => {
    const celsius = ((22 - 32) * 5) / 9;
    const corrected = temperatureCorrection(368.5 * foot, celsius, 0.0000065 * 1.8) / foot;
    expect(corrected).toBeCloseTo(-0.11, 2);
  });
  it.each([
    ["three pulls of 100 ft and one of 48.75, at 12 lb", { length: 100, pull: 12, line: 348.75 }, -0.71],
    ["the same at 18 lb", { length: 100, pull: 18, line: 348.75 }, -0.31],
    ["six pulls of 50 ft and one of 48.75, at 12 lb", { length: 50, pull: 12, line: 348.75 }, -0.2],
  ])("of 0.028 lb a foot: %s", (_, { length, pull, line }, feet) => {
    expect(sagOverSpans(line, { weight: 0.028, pull, length })).toBeCloseTo(feet, 2);
  });
  it("of 300 ft up 5 degrees, a rise of 26.15 ft: 298.86 ft on the flat", () => {
    expect(horizontalLength(300, 26.15)).toBeCloseTo(298.86, 2);
  });
});

// What a builder's tape is told not to mind: against the doubt of reading it, 5 mm + 0.2 mm a metre (PRACTICE), and of a
// tape of class II (READ). An error of a in a doubt of u makes it sqrt(u^2 + a^2).
describe("warmth and sag beside the doubt of a builder's tape", () => {
  const u = (length: number) =>
    Math.hypot(0.005 + 0.0002 * length, uniformDoubt(maximumPermissibleError(tapeClasses.II, length)));
  it("to 20 m within 15 degrees of 20 add less than a tenth", () => {
    for (const length of [5, 10, 15, 20])
      expect(Math.hypot(u(length), temperatureCorrection(length, 5)) / u(length)).toBeLessThan(1.1);
    expect(Math.hypot(u(30), temperatureCorrection(30, -5)) / u(30)).toBeGreaterThan(1.1);
  });
  it("hung over 15 m with 50 N add less than a fiftieth, over 30 m a third", () => {
    const hung = { weight: (0.5 * 9.80665) / 30, pull: 50 };
    expect(1000 * sagCorrection({ ...hung, length: 15 })).toBeCloseTo(-1.5, 1);
    expect(Math.hypot(u(15), sagCorrection({ ...hung, length: 15 })) / u(15)).toBeLessThan(1.02);
    expect(Math.hypot(u(30), sagCorrection({ ...hung, length: 30 })) / u(30)).toBeGreaterThan(1.3);
  });
});

describe("a tie", () => {
  const first = [0, 0] as const;
  const at = (tied: Tied) => ("at" in tied ? tied.at : null)!;

  // 3-4-5: from A (0,0) and B (5,0) with 3 and 4 the point is (1.8, +-2.4), cut square. Closed form.
  it("places a point on the side that is said", () => {
    const tie = { first, second: [5, 0] as const, toFirst: 3, toSecond: 4 };
    const left = placeByTies({ ...tie, side: "left" });
    expect(at(left)[0]).toBeCloseTo(1.8, 12);
    expect(at(left)[1]).toBeCloseTo(2.4, 12);
    expect("cutAngle" in left && left.cutAngle).toBeCloseTo(Math.PI / 2, 12);
    expect(at(placeByTies({ ...tie, side: "right" }))[1]).toBeCloseTo(-2.4, 12);
  });

  it("keeps left where the line runs another way", () => {
    const tied = placeByTies({ first: [7, 9], second: [7, 4], toFirst: 3, toSecond: 4, side: "left" });
    expect(at(tied)[0]).toBeCloseTo(7 + 2.4, 12);
    expect(at(tied)[1]).toBeCloseTo(9 - 1.8, 12);
  });

  it("says by how much lengths cannot close", () => {
    const tie = { first, second: [24, 0] as const, side: "left" as const };
    expect(placeByTies({ ...tie, toFirst: 10, toSecond: 11 })).toEqual({ gap: 3 });
    expect(placeByTies({ ...tie, toFirst: 40, toSecond: 11 })).toEqual({ gap: 5 });
    expect(placeByTies({ ...tie, second: first, toFirst: 4, toSecond: 4 })).toEqual({ gap: 0 });
  });

  // A 6-8-10 corner set out with 10.01 m is 0.1194 degrees out of square; COMPUTED by the law of cosines.
  it("gives the cut angle", () => {
    expect(cutAngle(6, 8, 10) / degrees).toBeCloseTo(90, 12);
    expect(cutAngle(6, 8, 10.01) / degrees - 90).toBeCloseTo(0.1194, 4);
    expect(cutAngle(5, 5, 10) / degrees).toBeCloseTo(180, 9);
  });
});
