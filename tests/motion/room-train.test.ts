// Room of a train by closed forms, against published inside radii, worked steady circles, and another way of reckoning.

import { describe, expect, it } from "vitest";
import { gateOpeningBehindTurn } from "../../src/motion/gate-opening.ts";
import { gateRows } from "../../src/motion/room-gate.ts";
import { trainBend, trainGateRows, trainRing, type Towing } from "../../src/motion/room-train.ts";
import type { Trailer } from "../../src/motion/trailer-pose.ts";
import type { Vehicle } from "../../src/motion/vehicle.ts";
import { b85, foot } from "./published-vehicles.ts";

const anyAngle = Math.PI / 2;
const degrees = Math.PI / 180;

/** A train of the published tables: wheelbase L, hitch S, hitch to axle T, radius of the front axle, width; feet. */
function train(L: number, S: number, T: number, ctr: number, W: number): Towing {
  const vehicle: Vehicle = {
    wheelbase: L * foot,
    frontOverhang: 3 * foot,
    rearOverhang: S * foot,
    bodyWidth: W * foot,
    widthOverTyres: W * foot,
    rearAxleRadius: Math.sqrt(ctr ** 2 - L ** 2) * foot,
  };
  return { vehicle, trailer: trailer(S * foot, T * foot, W * foot) };
}

const trailer = (S: number, T: number, W: number): Trailer => ({
  hitchBehindAxle: S,
  hitchToAxle: T,
  hitchToFront: 0,
  rearOverhang: 1,
  bodyWidth: W,
  widthOverTyres: W,
  greatestAngle: anyAngle,
});

describe("bend", () => {
  // AASHTO Green Book smallest inside radii, half a turn, ft: WB-40 READ; the others MEMORY. Rounded to 0.1 ft: 25 mm.
  it.each([
    ["P/T", train(11, 5, 17.7, 30, 8), 18.3],
    ["P/B", train(11, 5, 15, 21, 8), 8.0],
    ["MH/B", train(20, 6, 15, 46, 8), 35.0],
    ["WB-40", train(12.5, 0, 25.5, 36, 8), 19.3],
  ] as const)("%s: published inside radius of half a turn", (_, towing, published) => {
    const { inner, fullLock } = trainBend(towing, Math.PI, anyAngle);
    expect(fullLock).toBe(true);
    expect(Math.abs(inner - published * foot)).toBeLessThan(0.025);
  });
  it("a right angle takes less than half a turn, and that no more than the steady circle with 3 cm", () => {
    const towing = train(11, 5, 15, 21, 8);
    const [quarter, half] = [Math.PI / 2, Math.PI].map((angle) => trainBend(towing, angle, anyAngle).inner);
    expect(quarter).toBeGreaterThan(half ?? 99);
    expect(half).toBeGreaterThan(trainRing(towing, anyAngle).inner - 0.03);
  });
  it("is taken wider where the two would come too close", () => {
    const towing = train(12.5, 0, 25.5, 36, 8);
    const free = trainBend(towing, Math.PI, anyAngle);
    const held = trainBend(towing, Math.PI, free.hitchAngle - 5 * degrees);
    expect(held.fullLock).toBe(false);
    expect(Math.abs(held.hitchAngle - free.hitchAngle + 5 * degrees)).toBeLessThan(1e-3);
    expect(held.outer).toBeGreaterThan(free.outer);
  });
});

describe("ring", () => {
  it("pickup and trailer: r' 4.95, inside 3.90, 47.3 degrees (COMPUTED; 0.01 m, 0.1 degrees)", () => {
    const vehicle: Vehicle = { ...b85, rearAxleRadius: 6, bodyWidth: 1.9, widthOverTyres: 1.9 };
    const ring = trainRing({ vehicle, trailer: trailer(1.2, 3.6, 2.1) }, anyAngle);
    expect(Math.abs(ring.trailerRadius - 4.95)).toBeLessThan(0.01);
    expect(Math.abs(ring.inner - 3.9)).toBeLessThan(0.01);
    expect(Math.abs(ring.hitchAngle / degrees - 47.3)).toBeLessThan(0.1);
    // Rt^2 = R^2 + a^2 - L^2 with the hitch as far behind the axle as it is long: the trailer follows in the same track.
    expect(trainRing({ vehicle, trailer: trailer(2, 2, 1.9) }, anyAngle).inner).toBeCloseTo(6 - 0.95, 9);
  });
  it.each([
    // Steady circle less half the width, ft (COMPUTED, 0.01 ft): the published table's own column.
    ["P/T", train(11, 5, 17.7, 30, 8), 18.15],
    ["P/B", train(11, 5, 15, 21, 8), 6.95],
    ["MH/B", train(20, 6, 15, 46, 8), 35.08],
    ["WB-40", train(12.5, 0, 25.5, 36, 8), 18.12],
  ] as const)("%s: steady inside radius", (_, towing, inside) => {
    expect(Math.abs(trainRing(towing, anyAngle).inner / foot - inside)).toBeLessThan(0.011);
  });
  it("of a train that folds at full lock is as wide as the angle allows: T = 41 ft behind a 41 ft circle", () => {
    const towing = train(19.5, 0, 41, 41, 8.5);
    const ring = trainRing(towing, 60 * degrees);
    expect(ring.fullLock).toBe(false);
    // On the axle sin(angle) = T / r: r = 41 / sin 60 = 47.34 ft (COMPUTED).
    expect(Math.abs(ring.rearAxleRadius / foot - 41 / Math.sin(60 * degrees))).toBeLessThan(0.01);
  });
  it("a pickup's wall radius stays the outside where the trailer runs inside it", () => {
    const ring = trainRing({ vehicle: b85, trailer: trailer(1, 2.5, 1.6) }, anyAngle);
    const wall = Math.hypot(b85.rearAxleRadius + b85.bodyWidth / 2, b85.wheelbase + b85.frontOverhang);
    expect(ring.outer).toBeCloseTo(wall, 9);
  });
});

describe("gate", () => {
  const lane = { width: 4, clearance: 0 };
  const setbacks = [1, 2.19, 3.19, 4.19, 5.19, 7];
  it("of a trailer inside its vehicle's shadow is the vehicle's own, by formula (1 mm and the step's)", () => {
    // So short and narrow that it stays over the ground of the vehicle before it.
    const rows = trainGateRows({ vehicle: b85, trailer: trailer(0.5, 0.3, 0.2) }, lane, { setbacks, mostAngle: 9 });
    for (const [i, { fromMiddle }] of rows.entries())
      expect(Math.abs((fromMiddle ?? 0) - gateOpeningBehindTurn(b85, (setbacks[i] ?? 0) + 2))).toBeLessThan(0.004);
  });
  it("grows with the trailer, never falls below the vehicle's own, and comes down to the widths far in", () => {
    const towing: Towing = { vehicle: { ...b85, rearAxleRadius: 5.5 }, trailer: trailer(1.2, 3.6, 2.1) };
    const rows = trainGateRows(towing, lane, { setbacks: [...setbacks, 40], mostAngle: anyAngle });
    const alone = gateRows(towing.vehicle, lane, setbacks);
    for (const [i, { fromMiddle }] of alone.entries())
      expect(rows[i]?.fromMiddle ?? 0).toBeGreaterThan((fromMiddle ?? 99) - 0.004);
    expect(Math.max(...rows.map(({ fromMiddle }) => fromMiddle ?? 0))).toBeGreaterThan(3.3);
    expect(Math.abs((rows.at(-1)?.fromMiddle ?? 0) - 2.1)).toBeLessThan(0.03);
  });
  it("has no answer in a lane that is too narrow", () => {
    const narrow = { width: 2, clearance: 0.3 };
    const [row] = trainGateRows({ vehicle: b85, trailer: trailer(1, 3, 2) }, narrow, { setbacks: [3], mostAngle: 1 });
    expect(row?.fromMiddle).toBeNull();
  });
});
