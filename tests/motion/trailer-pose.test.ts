import { describe, expect, it } from "vitest";
import { hitchAngleAfter, jackKnifeAngle, trailerPose, trainAfter } from "../../src/motion/trailer-pose.ts";
import { steadyTrain } from "../../src/motion/trailer.ts";
import { sequence } from "./seeded.ts";

const onAxle = { hitchBehindAxle: 0, hitchToAxle: 3.6 };
const offAxle = { hitchBehindAxle: 1.2, hitchToAxle: 3.6 };

/** The same equation of motion by the classical Runge-Kutta method: another way to the same number. */
function integrated(trailer: typeof onAxle, angle: number, curvature: number, length: number): number {
  const { hitchBehindAxle: S, hitchToAxle: T } = trailer;
  const slope = (phi: number) => curvature - (Math.sin(phi) - S * curvature * Math.cos(phi)) / T;
  const count = 4000;
  const h = length / count;
  let phi = angle;
  for (let i = 0; i < count; i++) {
    const k1 = slope(phi);
    const k2 = slope(phi + (h * k1) / 2);
    const k3 = slope(phi + (h * k2) / 2);
    const k4 = slope(phi + h * k3);
    phi += (h * (k1 + 2 * k2 + 2 * k3 + k4)) / 6;
  }
  return phi;
}

describe("hitch angle along an arc", () => {
  it("pulled straight, a trailer follows the tractrix: tan(phi/2) = tan(phi0/2) exp(-s/T) (COMPUTED, 1e-12)", () => {
    for (const trailer of [onAxle, offAxle]) {
      for (const s of [0.5, 3, 12]) {
        const phi = hitchAngleAfter(trailer, 1.1, { curvature: 0, length: s });
        expect(Math.tan(phi / 2)).toBeCloseTo(Math.tan(0.55) * Math.exp(-s / 3.6), 12);
      }
    }
  });

  it("pushed straight back, the same law turns round: the angle grows by exp(s/T) (COMPUTED, 1e-12)", () => {
    const phi = hitchAngleAfter(onAxle, 0.01, { curvature: 0, length: -6 });
    expect(Math.tan(phi / 2)).toBeCloseTo(Math.tan(0.005) * Math.exp(6 / 3.6), 12);
  });

  it("round a circle it comes to the steady angle atan(S/r) + atan(T/r'), r'^2 = r^2 + S^2 - T^2 (SAE J695, MEMORY)", () => {
    for (const trailer of [onAxle, offAxle]) {
      const steady = steadyTrain({ wheelbase: 3, trailers: [trailer] }, 6);
      const phi = hitchAngleAfter(trailer, 0, { curvature: 1 / 6, length: 120 });
      expect(phi).toBeCloseTo(steady?.hitchAngles[0] ?? NaN, 9);
    }
  });

  it("near the steady angle the rest dies away at 2w = sqrt(1 - (T^2 - S^2)/r^2)/T per metre (COMPUTED, 0.1 %)", () => {
    const steady = jackKnifeAngle(offAxle, 6) ?? NaN;
    const rest = (s: number) => hitchAngleAfter(offAxle, steady - 1e-4, { curvature: 1 / 6, length: s }) - steady;
    const rate = Math.sqrt(1 - (3.6 ** 2 - 1.2 ** 2) / 36) / 3.6;
    expect(Math.log(rest(0) / rest(5)) / 5 / rate).toBeCloseTo(1, 3);
  });

  it("agrees with a Runge-Kutta integration on random arcs, both gears, folding circles too (1e-9 rad)", () => {
    const random = sequence(11);
    for (let i = 0; i < 200; i++) {
      const trailer = { hitchBehindAxle: 2 * random() - 0.5, hitchToAxle: 1.5 + 5 * random() };
      const [angle, curvature, length] = [2 * random() - 1, 0.6 * random() - 0.3, 6 * random() - 3];
      const exact = hitchAngleAfter(trailer, angle, { curvature, length });
      const other = integrated(trailer, angle, curvature, length);
      expect(Math.abs(Math.sin((exact - other) / 2))).toBeLessThan(1e-9);
    }
  });

  it("halves join: two half arcs are the whole one, and driving back undoes it (1e-12 rad)", () => {
    const half = { curvature: 0.19, length: 1.7 };
    const start = { x: 1, y: 2, heading: 0.3, hitchAngle: -0.4 };
    const twice = trainAfter(offAxle, trainAfter(offAxle, start, half), half);
    const once = trainAfter(offAxle, start, { curvature: 0.19, length: 3.4 });
    const back = trainAfter(offAxle, once, { curvature: 0.19, length: -3.4 });
    expect(twice.hitchAngle).toBeCloseTo(once.hitchAngle, 12);
    expect(back.hitchAngle).toBeCloseTo(start.hitchAngle, 12);
  });
});

describe("where the trailer stands", () => {
  it("its axle goes only where it points: sideways slip below 1e-9 m in 1e-5 m of travel", () => {
    const random = sequence(12);
    for (let i = 0; i < 50; i++) {
      const train = { x: 0, y: 0, heading: 6 * random(), hitchAngle: 2 * random() - 1 };
      const next = trainAfter(offAxle, train, { curvature: 0.4 * random() - 0.2, length: 1e-5 });
      const [a, b] = [train, next].map((one) => trailerPose(offAxle, one, one.hitchAngle));
      const slip = (b!.y - a!.y) * Math.cos(a!.heading) - (b!.x - a!.x) * Math.sin(a!.heading);
      expect(Math.abs(slip)).toBeLessThan(1e-9);
    }
  });

  it("steady off-tracking: the axle runs on sqrt(r^2 + S^2 - T^2), on the axle sqrt(r^2 - T^2) (COMPUTED, 1 um)", () => {
    for (const [trailer, radius] of [
      [onAxle, Math.sqrt(36 - 3.6 ** 2)],
      [offAxle, Math.sqrt(36 + 1.2 ** 2 - 3.6 ** 2)],
    ] as const) {
      const start = { x: 0, y: 0, heading: 0, hitchAngle: 0 };
      const train = trainAfter(trailer, start, { curvature: 1 / 6, length: 80 });
      const axle = trailerPose(trailer, train, train.hitchAngle);
      expect(Math.hypot(axle.x, axle.y - 6)).toBeCloseTo(radius, 6);
    }
  });
});

describe("jack-knife limit", () => {
  it("on the axle sin phi = T / R", () => {
    expect(Math.sin(jackKnifeAngle(onAxle, 5) ?? NaN)).toBeCloseTo(3.6 / 5, 12);
  });

  it.each([onAxle, offAxle])("full lock in reverse recovers just below it and folds just above it (%o)", (trailer) => {
    const limit = jackKnifeAngle(trailer, 5) ?? NaN;
    const after = (angle: number) => hitchAngleAfter(trailer, angle, { curvature: 1 / 5, length: -4 });
    expect(after(limit - 0.01)).toBeLessThan(limit - 0.01);
    expect(after(limit + 0.01)).toBeGreaterThan(limit + 0.01);
    expect(after(limit)).toBeCloseTo(limit, 9);
  });

  it("a trailer longer than the hitch's circle has none: full lock in reverse closes any angle", () => {
    const long = { hitchBehindAxle: 0.9, hitchToAxle: 5.5 };
    expect(jackKnifeAngle(long, 3.43)).toBeNull();
    expect(hitchAngleAfter(long, 1.4, { curvature: 1 / 3.43, length: -1 })).toBeLessThan(1.4);
  });

  it("pickup with plant trailer at full lock: 63 degrees (COMPUTED, worked example, 0.3 degrees)", () => {
    expect(((jackKnifeAngle(offAxle, 4.63) ?? NaN) * 180) / Math.PI).toBeCloseTo(63, 0);
  });
});
