import { describe, expect, it } from "vitest";
import { foldingRadius, steadyTrain, traceBend } from "../../src/motion/trailer.ts";
import { foot } from "./published-vehicles.ts";
import { sequence } from "./seeded.ts";

// AASHTO Green Book smallest inside radii, ft. P, WB-40, WB-62: READ. SU-30: 28.3 READ, 28.4 MEMORY. Others: MEMORY.
// Columns 90 / 180 / 360 degrees and steady are COMPUTED from wheelbase L, hitch S, trailer T, CTR and width W.
const rows = [
  { name: "P", L: 11, S: 0, T: 0, ctr: 21, W: 7, steady: 14.39, at: [14.73, 14.42, 14.39], published: 14.4 },
  { name: "SU-30", L: 20, S: 0, T: 0, ctr: 38, W: 8, steady: 28.31, at: [28.95, 28.37, 28.31], published: 28.4 },
  { name: "SU-40", L: 25, S: 0, T: 0, ctr: 47.4, W: 8, steady: 36.27, at: [37.07, 36.34, 36.27], published: 36.4 },
  { name: "MH", L: 20, S: 0, T: 0, ctr: 36, W: 8, steady: 25.93, at: [26.73, 26.02, 25.93], published: 26.0 },
  { name: "P/T", L: 11, S: 5, T: 17.7, ctr: 30, W: 8, steady: 18.15, at: [19.65, 18.34, 18.09], published: 18.3 },
  { name: "P/T of 2004", L: 11, S: 5, T: 19, ctr: 30, W: 8, steady: 17.05, at: [null, 17.4, 16.99], published: 17.4 },
  { name: "P/B", L: 11, S: 5, T: 15, ctr: 21, W: 8, steady: 6.95, at: [10.39, 8.04, 6.95], published: 8.0 },
  { name: "MH/B", L: 20, S: 6, T: 15, ctr: 46, W: 8, steady: 35.08, at: [35.66, 35.05, 35.01], published: 35.0 },
  { name: "WB-40", L: 12.5, S: 0, T: 25.5, ctr: 36, W: 8, steady: 18.12, at: [22.27, 19.32, 18.21], published: 19.3 },
  { name: "WB-62", L: 19.5, S: 0, T: 41, ctr: 41, W: 8.5, steady: null, at: [18.01, 7.41, null], published: 7.4 },
  { name: "WB-67", L: 19.5, S: 0, T: 45.5, ctr: 41, W: 8.5, steady: null, at: [15.58, 1.96, null], published: 1.9 },
];

function trainOf(row: { L: number; S: number; T: number }) {
  const trailers = row.T === 0 ? [] : [{ hitchBehindAxle: row.S * foot, hitchToAxle: row.T * foot }];
  return { wheelbase: row.L * foot, trailers };
}

describe("inside radius of long vehicles", () => {
  it.each(rows)("$name in bends of 90, 180, 360 degrees and steady", (row) => {
    const train = trainOf(row);
    const turns = [Math.PI / 2, Math.PI, 2 * Math.PI];
    for (const [i, angle] of turns.entries()) {
      const expected = row.at[i];
      if (expected === null || expected === undefined) continue;
      const trace = traceBend(train, { frontAxleRadius: row.ctr * foot, angle });
      // 0.01 ft: the column is rounded to that. 25 mm against the publication, which is rounded to 0.1 ft.
      expect(Math.abs(trace.insideAxleRadius / foot - row.W / 2 - expected)).toBeLessThan(0.011);
      if (i === 1) {
        expect(Math.abs(trace.insideAxleRadius - (row.W / 2 + row.published) * foot)).toBeLessThan(0.025);
      }
    }
    const steady = steadyTrain(train, Math.sqrt(row.ctr ** 2 - row.L ** 2) * foot);
    if (row.steady === null) expect(steady).toBeNull();
    else expect(Math.abs((steady?.axleRadii.at(-1) ?? 0) / foot - row.W / 2 - row.steady)).toBeLessThan(0.011);
  });

  it("a train that has no steady circle folds up when it goes on turning", () => {
    const train = trainOf({ L: 19.5, S: 0, T: 45.5 });
    expect(traceBend(train, { frontAxleRadius: 41 * foot, angle: 2 * Math.PI }).folded).toBe(true);
    expect(traceBend(train, { frontAxleRadius: 41 * foot, angle: Math.PI / 2 }).folded).toBe(false);
  });

  it("leaves out the run-out at its peril: P/B at 180 degrees 8.04 ft with it, 9.26 ft at the arc's end (COMPUTED)", () => {
    const trace = traceBend(trainOf({ L: 11, S: 5, T: 15 }), { frontAxleRadius: 21 * foot, angle: Math.PI });
    expect(trace.insideAxleRadius / foot - 4).toBeLessThan(8.06);
  });
});

describe("steady circle of a train", () => {
  it("P/T: hitch angle 48.8 degrees (COMPUTED, 0.2 degrees)", () => {
    const steady = steadyTrain(trainOf({ L: 11, S: 5, T: 17.7 }), Math.sqrt(30 ** 2 - 11 ** 2) * foot);
    expect(Math.abs(((steady?.hitchAngles[0] ?? 0) * 180) / Math.PI - 48.8)).toBeLessThan(0.2);
  });

  it("pick-up and plant trailer: r2 4.95 m, inside 3.90 m, 47.3 degrees (PRACTICE lengths, COMPUTED)", () => {
    const steady = steadyTrain({ wheelbase: 3.2, trailers: [{ hitchBehindAxle: 1.2, hitchToAxle: 3.6 }] }, 6);
    expect(steady?.axleRadii[1]).toBeCloseTo(4.95, 2);
    expect((steady?.axleRadii[1] ?? 0) - 2.1 / 2).toBeCloseTo(3.9, 2);
    expect(((steady?.hitchAngles[0] ?? 0) * 180) / Math.PI).toBeCloseTo(47.3, 1);
  });

  it("tractor and trailer at full lock fold up; they hold from 4.41 m on (PRACTICE lengths, COMPUTED)", () => {
    const trailer = { hitchBehindAxle: 0.9, hitchToAxle: 4.5 };
    expect(steadyTrain({ wheelbase: 2.5, trailers: [trailer] }, 3.43)).toBeNull();
    expect(foldingRadius(trailer)).toBeCloseTo(4.41, 2);
    expect(steadyTrain({ wheelbase: 2.5, trailers: [trailer] }, 6)?.axleRadii[1]).toBeCloseTo(4.07, 2);
  });
});

describe("properties of bends", () => {
  it("a half turn cuts in at least as far as a right angle; steady is a bound within 3 cm; longer cuts in more", () => {
    const next = sequence(11);
    for (let i = 0; i < 25; i++) {
      const wheelbase = 2.5 + 2 * next();
      const unit = { hitchBehindAxle: 1.2 * next(), hitchToAxle: 2 + 2 * next() };
      const train = { wheelbase, trailers: [unit] };
      const frontAxleRadius = 8 + 4 * next();
      const right = traceBend(train, { frontAxleRadius, angle: Math.PI / 2 }).insideAxleRadius;
      const half = traceBend(train, { frontAxleRadius, angle: Math.PI }).insideAxleRadius;
      const steady = steadyTrain(train, Math.sqrt(frontAxleRadius ** 2 - wheelbase ** 2));
      expect(half).toBeLessThanOrEqual(right + 1e-6);
      expect(steady?.axleRadii[1]).toBeLessThan(half + 0.03);
      const longer = { wheelbase, trailers: [{ ...unit, hitchToAxle: unit.hitchToAxle + 0.3 }] };
      expect(traceBend(longer, { frontAxleRadius, angle: Math.PI }).insideAxleRadius).toBeLessThan(half);
    }
  });
});
