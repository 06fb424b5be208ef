import { describe, expect, it } from "vitest";
import { curveLengths, depthCurve, longestUseful, smallestArea } from "../../src/motion/room-curve.ts";
import { type RoomLayout, turnQuestion } from "../../src/motion/room-layout.ts";
import { keepsClear } from "../../src/motion/room-size.ts";
import { teeHeadByArcs } from "../../src/motion/turning-head.ts";
import { sceneVehicles } from "./published-vehicles.ts";

const turner = { vehicle: sceneVehicles.compact, clearance: 0.3, changes: 2 };
const layout: RoomLayout = { form: "rectangle", entry: "middle", track: 3, splay: 0 };
const curve = depthCurve(layout, turner, curveLengths(turner));

describe("length against depth", () => {
  it("has eight lengths, up to the bar of a T head by single arcs", () => {
    expect(curve).toHaveLength(8);
    expect(longestUseful({ ...turner, clearance: 0 })).toBeCloseTo(teeHeadByArcs(turner.vehicle).barLength, 9);
    expect(curve.at(-1)?.long).toBeGreaterThanOrEqual(longestUseful(turner));
  });
  it("gives at every length a depth whose path keeps clear, and never a deeper one for a longer", () => {
    let before = Infinity;
    for (const { long, found } of curve) {
      if (!found) throw new Error(`nothing at ${long}`);
      expect(keepsClear(turnQuestion(layout, { long, deep: found.size }, turner), found.path)).toBe(true);
      expect(found.size).toBeLessThanOrEqual(before);
      before = found.size;
    }
  });
  it("meets the upper estimates of another program (COMPUTED, 5 cm lattice; 8 cm): 8 m 10.79, 10 m 8.25, 12 m 6.75", () => {
    const [at8, at10, at12] = depthCurve(layout, turner, [8, 10, 12]).map(({ found }) => found?.size ?? Infinity);
    expect(at8).toBeLessThan(10.87);
    expect(at10).toBeLessThan(8.33);
    expect(at12).toBeLessThan(6.83);
  });
  it("tells the smallest area, and nothing where nothing was found", () => {
    const best = smallestArea(curve);
    for (const { long, found } of curve)
      expect((best?.long ?? 0) * (best?.found?.size ?? 0)).toBeLessThanOrEqual(long * (found?.size ?? Infinity) + 1e-9);
    expect(smallestArea([{ long: 8, found: null }])).toBeNull();
  });
});
