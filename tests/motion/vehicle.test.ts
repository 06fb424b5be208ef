import { describe, expect, it } from "vitest";
import {
  goesRoundInAnnulus,
  longestReachInAnnulus,
  rearAxleRadiusFrom,
  rearAxleRadiusFromInnerWheel,
  steadyCircle,
} from "../../src/motion/vehicle.ts";
import { aashto, b85, firePump, foot, sceneVehicles } from "./published-vehicles.ts";
import { sequence } from "./seeded.ts";

const degree = Math.PI / 180;

describe("four kinds of turning circle", () => {
  it("P car steers 31.6 degrees and has 14.39 ft inside (AASHTO, 14.4 READ; steady COMPUTED)", () => {
    const circle = steadyCircle(aashto.P, aashto.P.rearAxleRadius);
    expect(circle.steeringAngle / degree).toBeCloseTo(31.6, 1);
    // 0.02 m: rounding of the published 14.4 ft.
    expect(Math.abs(circle.insideRadius - 14.39 * foot)).toBeLessThan(0.02);
  });

  it.each([
    // Kerb radius: 0.12 m, because the front track is not declared. Wall and swept width: 0.02 m (COMPUTED).
    { name: "P" as const, inside: 14.39, kerb: 24.05, published: 23.8, wall: 25.56, swept: 3.41, tail: 0.58 },
    { name: "SU-30" as const, inside: 28.31, kerb: 41.45, published: 41.8, wall: 43.53, swept: 4.64, tail: 0.49 },
    { name: "SU-40" as const, inside: 36.27, kerb: 50.84, published: 51.2, wall: 52.92, swept: 5.08, tail: 1.23 },
    { name: "MH" as const, inside: 25.93, kerb: 39.39, published: 39.7, wall: 41.56, swept: 4.76, tail: 0.53 },
  ])("$name on full lock (AASHTO kerb radius: P READ, others MEMORY; rest COMPUTED)", (row) => {
    const circle = steadyCircle(aashto[row.name], aashto[row.name].rearAxleRadius);
    expect(Math.abs(circle.insideRadius - row.inside * foot)).toBeLessThan(0.02);
    expect(Math.abs(circle.kerbRadius - row.kerb * foot)).toBeLessThan(0.02);
    expect(Math.abs(circle.kerbRadius - row.published * foot)).toBeLessThan(0.12);
    expect(Math.abs(circle.wallRadius - row.wall * foot)).toBeLessThan(0.02);
    expect(Math.abs(circle.sweptWidth - row.swept)).toBeLessThan(0.02);
    expect(Math.abs(circle.tailSwing - row.tail * foot)).toBeLessThan(0.02);
  });

  it("SU-30 turns inside a 48 ft radius, SU-40 does not (turning circle of 96 ft; COMPUTED, MEMORY figure)", () => {
    expect(goesRoundInAnnulus(aashto["SU-30"], 48 * foot, 0)).toBe(true);
    expect(goesRoundInAnnulus(aashto["SU-40"], 48 * foot, 0)).toBe(false);
  });

  it("a measured pumper: lock of 33 degrees predicts its circle within 4 % (fleet of Eugene, Oregon: READ)", () => {
    const kingpins = 6.9;
    const r = rearAxleRadiusFromInnerWheel(16.75, 33 * degree, kingpins);
    const outerWheel = Math.hypot(r + kingpins / 2, 16.75);
    expect(outerWheel).toBeCloseTo(36.7, 1);
    expect(r - 8.1 / 2).toBeCloseTo(25.2, 1);
    expect(Math.abs(outerWheel / 35.83 - 1)).toBeLessThan(0.04);
    expect(Math.abs((r - 8.1 / 2) / 24.5 - 1)).toBeLessThan(0.04);
  });

  it("fire pump between 16.8 m kerbs and 19.2 m walls (Approved Document B: READ, local copy; rest COMPUTED)", () => {
    const circle = steadyCircle(firePump, firePump.rearAxleRadius);
    expect(circle.rearAxleRadius).toBeCloseTo(6.29, 2);
    expect(circle.insideRadius).toBeCloseTo(5.04, 2);
    expect(circle.steeringAngle / degree).toBeCloseTo(31.8, 1);
    const longer = { ...firePump, frontOverhang: 2.04 };
    expect(Math.abs(steadyCircle(longer, 6.29).wallRadius - 9.6)).toBeLessThan(0.01);
    const other = { ...firePump, wheelbase: 4.2, frontOverhang: 1.95 };
    const r = rearAxleRadiusFrom({ of: "outer front tyre", radius: 8.4 }, other) ?? 0;
    expect(r).toBeCloseTo(6.12, 2);
    expect(Math.abs(steadyCircle(other, r).wallRadius - 9.6)).toBeLessThan(0.01);
  });

  it("fire road of 3.7 m: centreline radius 6.55 m between kerbs, 7.75 m between walls (READ)", () => {
    expect(16.8 / 2 - 3.7 / 2).toBeCloseTo(6.55, 2);
    expect(19.2 / 2 - 3.7 / 2).toBeCloseTo(7.75, 2);
    const follows = steadyCircle(firePump, 6.55);
    expect(follows.sweptWidth).toBeGreaterThan(3.7);
  });

  it("EU circle of 12.5 / 5.3 m: L + FO up to 9.77 m at 2.50 m wide, 9.73 m at 2.55 (circle READ, rest COMPUTED)", () => {
    expect(Math.abs((longestReachInAnnulus(12.5, 5.3, 2.5) ?? 0) - 9.77)).toBeLessThan(0.02);
    expect(Math.abs((longestReachInAnnulus(12.5, 5.3, 2.55) ?? 0) - 9.73)).toBeLessThan(0.02);
    expect(longestReachInAnnulus(12.5, 5.3, 7.3)).toBeNull();
    const rigid = { rearOverhang: 2, bodyWidth: 2.5, widthOverTyres: 2.5, rearAxleRadius: 5, frontOverhang: 1.5 };
    expect(goesRoundInAnnulus({ ...rigid, wheelbase: 8.26 }, 12.5, 5.3)).toBe(true);
    expect(goesRoundInAnnulus({ ...rigid, wheelbase: 8.28 }, 12.5, 5.3)).toBe(false);
  });

  it.each([
    // [L, W, FO, t, kerb radius] -> r, steering, ri, Rw, swept; COMPUTED from typical dimensions, 2 decimals.
    { name: "B85", body: [2.8, 1.87, 0.92, 1.77, 5.8], r: 4.19, steer: 33.7, inside: 3.26, wall: 6.34 },
    { name: "B99", body: [3.05, 1.94, 0.95, 1.84, 6.3], r: 4.59, steer: 33.6, inside: 3.62, wall: 6.85 },
    { name: "fire pump", body: [3.9, 2.5, 1.9, 2.3, 8.4], r: 6.29, steer: 31.8, inside: 5.04, wall: 9.51 },
  ])("$name from its kerb circle (COMPUTED)", ({ body, r, steer, inside, wall }) => {
    const [wheelbase = 0, bodyWidth = 0, frontOverhang = 0, widthOverTyres = 0, radius = 0] = body;
    const shape = { wheelbase, bodyWidth, frontOverhang, widthOverTyres, rearOverhang: 1 };
    const found = rearAxleRadiusFrom({ of: "outer front tyre", radius }, shape) ?? 0;
    const circle = steadyCircle(shape, found);
    // Half a centimetre and a touch: the published values are rounded to a centimetre.
    expect(Math.abs(found - r)).toBeLessThan(0.006);
    expect(Math.abs(circle.steeringAngle / degree - steer)).toBeLessThan(0.06);
    expect(Math.abs(circle.insideRadius - inside)).toBeLessThan(0.006);
    expect(Math.abs(circle.wallRadius - wall)).toBeLessThan(0.006);
  });

  it("a radius shorter than the wheelbase is a contradiction", () => {
    expect(rearAxleRadiusFrom({ of: "outer front tyre", radius: 2.7 }, b85)).toBeNull();
    expect(rearAxleRadiusFrom({ of: "outer front corner", radius: 3.8 }, b85)).toBeNull();
  });
});

describe("properties of the circles", () => {
  it("each kind of radius leads back to the same rear-axle radius, walls are outside kerbs, lengths scale", () => {
    const next = sequence(7);
    for (let i = 0; i < 200; i++) {
      const body = {
        wheelbase: 1.5 + 5 * next(),
        frontOverhang: 0.5 + next(),
        rearOverhang: 0.5 + 2 * next(),
        bodyWidth: 1.7 + next(),
        widthOverTyres: 1.5 + 0.2 * next(),
      };
      const r = 3 + 6 * next();
      const circle = steadyCircle(body, r);
      const kinds = [
        { of: "front axle centre", radius: circle.frontAxleRadius },
        { of: "outer front tyre", radius: circle.kerbRadius },
        { of: "outer front corner", radius: circle.wallRadius },
        { of: "inner rear side", radius: circle.insideRadius },
      ] as const;
      for (const given of kinds) expect(rearAxleRadiusFrom(given, body)).toBeCloseTo(r, 9);
      expect(circle.wallRadius).toBeGreaterThan(circle.kerbRadius);
      const k = 0.3048;
      const scaled = steadyCircle(scale(body, k), r * k);
      expect(scaled.wallRadius).toBeCloseTo(circle.wallRadius * k, 9);
      expect(scaled.kerbRadius).toBeCloseTo(circle.kerbRadius * k, 9);
    }
  });

  it("the scenes' rear-axle radii follow from their kerb circles (COMPUTED)", () => {
    expect(sceneVehicles.P.rearAxleRadius).toBeCloseTo(5.526, 3);
    expect(sceneVehicles.compact.rearAxleRadius).toBeCloseTo(3.863, 3);
    expect(sceneVehicles.van.rearAxleRadius).toBeCloseTo(4.21, 3);
    expect(sceneVehicles.tipper.rearAxleRadius).toBeCloseTo(4.731, 3);
  });
});

function scale<T extends Record<string, number>>(body: T, k: number): T {
  return Object.fromEntries(Object.entries(body).map(([name, value]) => [name, value * k])) as T;
}
