import { describe, expect, it } from "vitest";
import { prepareEnvelopes } from "../../src/motion/checked.ts";
import { envelopesOf } from "../../src/motion/envelope.ts";
import type { Ground } from "../../src/motion/ground.ts";
import { gateRows, placedGate, straightFrom } from "../../src/motion/room-gate.ts";
import { sweepPath } from "../../src/motion/sweep.ts";
import { steadyCircle, type Vehicle } from "../../src/motion/vehicle.ts";
import { b85, firePump } from "./published-vehicles.ts";

type Ring = readonly (readonly [number, number])[];

describe("gate off a lane", () => {
  it.each([
    // The gate formula at distances from the lane's middle (COMPUTED, brute force agreed; 0.01 m), the lane 4 m wide.
    [b85, 2.19, 3.08],
    [b85, 3.19, 3.0],
    [b85, 4.19, 2.75],
    [b85, 5.19, 2.32],
    [b85, 5.92, 1.87],
    [firePump, 4.29, 4.47],
    [firePump, 7.29, 3.99],
    [firePump, 10.1, 2.5],
  ])("opening at a set-back from the lane's edge (%#)", (vehicle, setback, opening) => {
    const [row] = gateRows(vehicle, { width: 4, clearance: 0 }, [setback]);
    expect(Math.abs((row?.fromMiddle ?? 0) - opening)).toBeLessThan(0.011);
  });

  it.each([0, 1, 2.5, 4, 6])(
    "the exact sweep of the turn goes through it, and not through 2 cm less (set-back %d)",
    (setback) => {
      for (const vehicle of [b85, firePump]) {
        const lane = { width: 4.5, clearance: 0 };
        const [row] = gateRows(vehicle, lane, [setback]);
        for (const [from, opening] of [
          ["middle", row?.fromMiddle],
          ["far side", row?.fromFarSide],
        ] as const) {
          if (typeof opening !== "number") throw new Error("lane too narrow");
          expect(goesThrough(vehicle, { ...lane, setback, from, opening: opening + 1e-4 })).toBe(true);
          expect(goesThrough(vehicle, { ...lane, setback, from, opening: opening - 0.02 })).toBe(false);
        }
      }
    },
  );

  it("keeping to the far side asks for no more than the middle of the lane once the gate stands back", () => {
    for (const row of gateRows(b85, { width: 5, clearance: 0.3 }, [2, 3, 4, 5, 6, 8])) {
      expect(row.fromFarSide ?? Infinity).toBeLessThanOrEqual(row.fromMiddle ?? 0);
    }
  });

  it.each([0.5, 2, 4, 6])(
    "the gate that is drawn lets its own path through, and shows what the body covers (set-back %d)",
    (setback) => {
      const placed = placedGate(b85, { width: 4.5, clearance: 0 }, setback);
      if (!placed) throw new Error("no gate");
      const [left, right] = placed.posts;
      const strip = (from: number, to: number): Ring => [
        [from, placed.line],
        [to, placed.line],
        [to, placed.line + 1e-5],
        [from, placed.line + 1e-5],
      ];
      const ring: Ring = [
        [-30, -2.25],
        [right + placed.beyondPost + 1e-4, -2.25],
        [right + placed.beyondPost + 1e-4, placed.line],
        [40, placed.line],
        [40, 60],
        [-30, 60],
      ];
      const ground: Ground = { rings: [ring], obstacles: [strip(-20, left - 1e-4), strip(right + 1e-4, 40)] };
      const checked = prepareEnvelopes(envelopesOf(b85, { clear: ground, running: ground }, 0));
      expect(sweepPath(checked, placed.start, placed.path).is).toBe("accepted");
    },
  );

  it("a lane narrower than the swinging tail wants has no answer, and a far gate wants the body's width", () => {
    expect(gateRows(b85, { width: 2, clearance: 0.3 }, [3])).toEqual([
      { setback: 3, fromMiddle: null, fromFarSide: null },
    ]);
    const lane = { width: 4, clearance: 0.3 };
    const [row] = gateRows(b85, lane, [straightFrom(b85, lane) + 0.01]);
    expect(row?.fromMiddle).toBeCloseTo(b85.bodyWidth + 0.6, 6);
  });
});

interface Gate {
  readonly width: number;
  readonly clearance: number;
  readonly setback: number;
  readonly from: "middle" | "far side";
  readonly opening: number;
}

/** Drives the quarter turn at full lock between a far lane edge and two gate posts, placed as well as can be. */
function goesThrough(vehicle: Vehicle, { width, clearance, setback, from, opening }: Gate): boolean {
  const { rearAxleRadius: r, insideRadius, tailSwing } = steadyCircle(vehicle, vehicle.rearAxleRadius);
  const aside = clearance + vehicle.bodyWidth / 2 + tailSwing;
  const farEdge = from === "middle" ? -width / 2 : -aside;
  const line = (from === "middle" ? width / 2 : width - aside) + setback;
  // On the gate's line the inner side passes at ri, or where its circle meets the line while it is still turning.
  const past = Math.min(0, line - r);
  const left = Math.sqrt(insideRadius ** 2 - past ** 2) - clearance;
  const post = (x: number, to: number): readonly (readonly [number, number])[] => [
    [Math.min(x, to), line],
    [Math.max(x, to), line],
    [Math.max(x, to), line + 1e-5],
    [Math.min(x, to), line + 1e-5],
  ];
  const outline = [
    [-30, farEdge],
    [40, farEdge],
    [40, 60],
    [-30, 60],
  ] as const;
  const ground: Ground = { rings: [outline], obstacles: [post(left, -20), post(left + opening, 30)] };
  const checked = prepareEnvelopes(envelopesOf(vehicle, { clear: ground, running: ground }, 0));
  const arcs = [
    { curvature: 0, length: 8 },
    { curvature: 1 / r, length: (r * Math.PI) / 2 },
    { curvature: 0, length: 14 },
  ];
  return sweepPath(checked, { x: -8, y: 0, heading: 0 }, arcs).is === "accepted";
}
