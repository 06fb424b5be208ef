// The corner of a mouth against the formula for ways of one width, and against points of a body swept along its arc.

import { describe, expect, it } from "vitest";
import { mouthCornerRadius } from "../../src/motion/mouth-corner.ts";
import { insideCornerRadius } from "../../src/motion/turning-head.ts";
import { b85, firePump, sceneVehicles } from "./published-vehicles.ts";

const lorry = { ...sceneVehicles.tipper, rearAxleRadius: 7.8, bodyWidth: 2.1 };

describe("ways of one width", () => {
  it.each([
    ["a lorry on 5 m", lorry, 5],
    ["a lorry on 4 m", lorry, 4],
    ["a fire engine on 3.7 m", firePump, 3.7],
    ["a car on 3 m", b85, 3],
  ])("%s: r + 1.207 W - 1.707 w (COMPUTED; 2 mm for the rounding of the factors)", (_, vehicle, width) => {
    const formula = Math.max(0, vehicle.rearAxleRadius + 1.2071 * vehicle.bodyWidth - 1.7071 * width);
    expect(mouthCornerRadius(vehicle, { road: width, track: width })).toBeCloseTo(formula, 2);
    expect(insideCornerRadius(vehicle, width)).toBeCloseTo(formula, 2);
  });
});

describe("ways of two widths", () => {
  it.each([
    [4.8, 3.5],
    [3, 5],
    [3.6, 3],
  ])(
    "road %d m, track %d m: the body's inner side touches the arc of the corner and goes no farther in",
    (road, track) => {
      const radius = mouthCornerRadius(lorry, { road, track });
      // The turn is about the origin; the corner's arc is a quarter about (a - R, b - R).
      const [a, b] = [lorry.rearAxleRadius - road / 2, lorry.rearAxleRadius - track / 2];
      const inner = lorry.rearAxleRadius - lorry.bodyWidth / 2;
      let spare = Number.POSITIVE_INFINITY;
      for (let i = 0; i <= 9000; i++) {
        const angle = (i / 9000) * (Math.PI / 2);
        const far = Math.hypot(a - radius + radius * Math.cos(angle), b - radius + radius * Math.sin(angle));
        spare = Math.min(spare, inner - far);
      }
      expect(radius).toBeGreaterThan(0.3);
      expect(spare).toBeCloseTo(0, 4);
    },
  );
  it("asks for no radius where the way is wide", () => {
    expect(mouthCornerRadius(lorry, { road: 8, track: 8 })).toBe(0);
  });
  it("asks for less where either way is wider, and for more where the body is wider", () => {
    const at = (road: number, track: number, bodyWidth = 2.1) =>
      mouthCornerRadius({ ...lorry, bodyWidth }, { road, track });
    expect(at(4.2, 4)).toBeLessThan(at(4, 4));
    expect(at(4, 4.2)).toBeLessThan(at(4, 4));
    expect(at(4, 4, 2.5)).toBeGreaterThan(at(4, 4));
  });
});

describe("ways that meet at a slant", () => {
  it.each([
    [4.8, 3.5, 70],
    [4.8, 3.5, 110],
    [5, 5, 135],
    [3.6, 3, 60],
    [3.6, 3, 120],
    [3, 4.5, 100],
  ])(
    "road %d m, track %d m, through %d degrees: the body's inner side touches the arc of the corner and goes no farther in",
    (road, track, degrees) => {
      const angle = (degrees * Math.PI) / 180;
      const radius = mouthCornerRadius(lorry, { road, track }, angle);
      // The turn is about the origin, the road's edge lies at x = a; the track's at b along a direction `angle` round.
      const [a, b] = [lorry.rearAxleRadius - road / 2, lorry.rearAxleRadius - track / 2];
      const middle = [a - radius, (b - radius - (a - radius) * Math.cos(angle)) / Math.sin(angle)] as const;
      const inner = lorry.rearAxleRadius - lorry.bodyWidth / 2;
      let spare = Number.POSITIVE_INFINITY;
      for (let i = 0; i <= 9000; i++) {
        const round = (i / 9000) * angle;
        const far = Math.hypot(middle[0] + radius * Math.cos(round), middle[1] + radius * Math.sin(round));
        spare = Math.min(spare, inner - far);
      }
      expect(radius).toBeGreaterThan(0.1);
      expect(spare).toBeCloseTo(0, 4);
    },
  );
  it("a sharper turn wants more, a flatter one less, and a square one what the square formula says", () => {
    const at = (degrees: number) => mouthCornerRadius(lorry, { road: 4, track: 4 }, (degrees * Math.PI) / 180);
    const all = [50, 60, 70, 80, 90, 100, 110, 120, 130, 140].map(at);
    for (const [i, radius] of all.slice(1).entries()) expect(radius).toBeGreaterThanOrEqual(all[i] ?? 99);
    expect(at(90)).toBeCloseTo(mouthCornerRadius(lorry, { road: 4, track: 4 }), 9);
  });
  it("asks for nothing where the corner lies beyond the end of the arc", () => {
    expect(mouthCornerRadius(lorry, { road: 3, track: 13 }, (40 * Math.PI) / 180)).toBe(0);
  });
});
