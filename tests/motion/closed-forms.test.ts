import { describe, expect, it } from "vitest";
import { gateOpeningBehindTurn, gateSetbackFor } from "../../src/motion/gate-opening.ts";
import { threePointTurn } from "../../src/motion/three-point-turn.ts";
import { halfTurnRoom, halfTurnRoomByRule, insideCornerRadius, teeHeadByArcs } from "../../src/motion/turning-head.ts";
import { steadyCircle } from "../../src/motion/vehicle.ts";
import { aashto, b85, firePump, foot, sceneVehicles } from "./published-vehicles.ts";

describe("gate behind a right-angle turn", () => {
  it.each([
    // COMPUTED, brute force agreed; 0.01 m.
    [b85, 4.19, 3.08],
    [b85, 5.19, 3.0],
    [b85, 6.19, 2.75],
    [b85, 7.19, 2.32],
    [b85, 7.92, 1.87],
    [firePump, 6.29, 4.47],
    [firePump, 9.29, 3.99],
    [firePump, 12.1, 2.5],
  ])("opening at a setback (%#)", (vehicle, setback, opening) => {
    expect(Math.abs(gateOpeningBehindTurn(vehicle, setback) - opening)).toBeLessThan(0.011);
  });

  it("a 3.1 m gate with 0.15 m each side must stand 11.66 m back for the pump (COMPUTED, 0.02 m)", () => {
    expect(Math.abs((gateSetbackFor(firePump, 3.1, 0.15) ?? 0) - 11.66)).toBeLessThan(0.02);
    expect(gateSetbackFor(firePump, 2.7, 0.15)).toBeNull();
  });

  it("a brute-force sweep of the turn meets the formula within 2 mm (COMPUTED, own sampling)", () => {
    for (const setback of [3.2, 4.19, 5.2, 6.4, 7.4, 7.9]) {
      expect(Math.abs(sweptOpening(setback) - gateOpeningBehindTurn(b85, setback))).toBeLessThan(0.002);
    }
  });

  it("the opening falls with the setback from the swept width to the body width", () => {
    const circle = steadyCircle(b85, b85.rearAxleRadius);
    let before = circle.sweptWidth + 1e-9;
    for (let setback = b85.rearAxleRadius; setback < 9; setback += 0.05) {
      const opening = gateOpeningBehindTurn(b85, setback);
      expect(opening).toBeLessThanOrEqual(before + 1e-9);
      before = opening;
    }
    expect(before).toBe(b85.bodyWidth);
  });
});

describe("room by single arcs", () => {
  it.each([
    // Bar of a T head: 120.0 ft agrees with the fire code figure for SU-40 (COMPUTED vs IFC Appendix D), 0.1 ft.
    ["SU-40" as const, 120],
    ["SU-30" as const, 94.6],
    ["P" as const, 54.8],
  ])("T head of %s", (name, feet) => {
    expect(Math.abs(teeHeadByArcs(aashto[name]).barLength / foot - feet)).toBeLessThan(0.1);
  });

  it("half turn of B85: 11.6 x 10.1 m; of P: 14.5 x 12.1 m (COMPUTED, 0.05 m)", () => {
    expect(halfTurnRoom(b85).width).toBeCloseTo(11.6, 1);
    expect(halfTurnRoom(b85).length).toBeCloseTo(10.06, 1);
    expect(halfTurnRoom(aashto.P).width).toBeCloseTo(14.5, 1);
    expect(halfTurnRoom(aashto.P).length).toBeCloseTo(12.06, 1);
  });

  it("half turn by the farmstead rule: B85 12.7 x 17.6 m, P 15.6 x 21.4 m (FAO rule READ, COMPUTED; 0.1 m)", () => {
    expect(Math.abs(halfTurnRoomByRule(b85).width - 12.7)).toBeLessThan(0.1);
    expect(Math.abs(halfTurnRoomByRule(b85).length - 17.6)).toBeLessThan(0.1);
    expect(Math.abs(halfTurnRoomByRule(aashto.P).width - 15.6)).toBeLessThan(0.1);
    expect(Math.abs(halfTurnRoomByRule(aashto.P).length - 21.4)).toBeLessThan(0.1);
  });

  it("rounded inside corner: none on a wide lane, r + 1.207 W - 1.707 w on a narrow one (COMPUTED)", () => {
    expect(insideCornerRadius(b85, 6)).toBe(0);
    expect(insideCornerRadius(b85, 3)).toBeCloseTo(4.194 + 1.207 * 1.87 - 1.707 * 3, 2);
  });
});

describe("three-point turn between two walls", () => {
  it("B85 needs 7.29 m (COMPUTED on a 2 degree grid, 0.1 m), about 11.0 m along", () => {
    const turn = threePointTurn(b85);
    expect(Math.abs(turn.width - 7.29)).toBeLessThan(0.1);
    expect(Math.abs(turn.length - 11)).toBeLessThan(0.3);
  });

  it.each([
    // COMPUTED on a 0.02 rad grid: walls, wheels only; 0.03 m, for the finer grid here finds up to 2.5 cm less.
    ["compact" as const, 6.42, 5.35],
    ["P" as const, 8.87, 7.0],
    ["van" as const, 7.79, 6.2],
    ["tipper" as const, 9.04, 6.71],
  ])("%s between walls and on wheels only", (name, walls, wheels) => {
    expect(Math.abs(threePointTurn(sceneVehicles[name]).width - walls)).toBeLessThan(0.03);
    expect(Math.abs(threePointTurn(sceneVehicles[name], "tyres").width - wheels)).toBeLessThan(0.03);
  });
});

/** Width that B85 covers on a gate line while it turns in, by putting its outline there every 0.2 mrad. */
function sweptOpening(setback: number): number {
  const r = b85.rearAxleRadius;
  const [front, back, half] = [b85.wheelbase + b85.frontOverhang, -b85.rearOverhang, b85.bodyWidth / 2];
  const corners = [
    [front, half],
    [front, -half],
    [back, -half],
    [back, half],
  ] as const;
  let low = Infinity;
  let high = -Infinity;
  const visit = (x: number, y: number, heading: number): void => {
    const c = Math.cos(heading);
    const s = Math.sin(heading);
    const world = corners.map(([u, v]) => [x + c * u - s * v, y + s * u + c * v] as const);
    for (const [i, p] of world.entries()) {
      const q = world[(i + 1) % 4] ?? p;
      if ((p[1] - setback) * (q[1] - setback) > 0 || p[1] === q[1]) continue;
      const at = p[0] + ((setback - p[1]) / (q[1] - p[1])) * (q[0] - p[0]);
      low = Math.min(low, at);
      high = Math.max(high, at);
    }
  };
  for (let a = 0.6; a < Math.PI / 2; a += 0.0002) visit(r * Math.sin(a), r * (1 - Math.cos(a)), a);
  for (let s = 0; s < 12; s += 0.01) visit(r, r + s, Math.PI / 2);
  return high - low;
}
