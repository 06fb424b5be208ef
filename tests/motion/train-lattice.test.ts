import { describe, expect, it } from "vitest";
import { latticeOver } from "../../src/motion/lattice.ts";
import { wrapAngle } from "../../src/motion/pose.ts";
import { angleOf, layerOf, turnOf } from "../../src/motion/train-lattice.ts";
import type { TrainLattice } from "../../src/motion/train-lattice.ts";
import type { TrainMotion } from "../../src/motion/train-motion.ts";
import { trainMotions } from "../../src/motion/train-motions.ts";
import { trailerPose, trainAfter } from "../../src/motion/trailer-pose.ts";
import { steadyTrain } from "../../src/motion/trailer.ts";
import { sequence } from "./seeded.ts";

const trailers = [
  { hitchBehindAxle: 1.2, hitchToAxle: 3.6 },
  { hitchBehindAxle: 0, hitchToAxle: 5 },
] as const;
const limits = { forward: 1.05, reverse: 0.9 };

function latticeOf(trailer: (typeof trailers)[number], cell: number): TrainLattice {
  const places = latticeOver({ left: -20, right: 20, low: -20, high: 20 }, { cell, headings: 72 }, 5);
  const levels = Math.floor((limits.forward * 72) / (2 * Math.PI));
  return { places, layers: { ...places, headings: (2 * levels + 1) * 72 + 3 }, trailer, radius: 4.63, levels };
}

/** Where a motion leads from a layer, in metres of the trailer's axle. */
function shiftOf({ places }: TrainLattice, bits: number): readonly [number, number] {
  const middle = 200 * places.stride + 200 + bits;
  const row = Math.floor(middle / places.stride);
  return [(middle - row * places.stride - 200) * places.cell, (row - 200) * places.cell];
}

/** How far the step of a motion from a layer lies from the arc that it stands for: m, rad, rad of hitch angle. */
function misses(lattice: TrainLattice, motion: TrainMotion, layer: number) {
  const turn = turnOf(lattice);
  const from = angleOf(lattice, layer);
  const hitchAngle = from.level * turn;
  const towing = { x: 0, y: 0, heading: (from.heading + from.level) * turn, hitchAngle };
  const arc = { curvature: motion.curvature[layer]!, length: motion.gear * motion.length[layer]! };
  const before = trailerPose(lattice.trailer, towing, hitchAngle);
  const driven = trainAfter(lattice.trailer, towing, arc);
  const after = trailerPose(lattice.trailer, driven, driven.hitchAngle);
  const to = angleOf(lattice, motion.to[layer]!);
  const [x, y] = shiftOf(lattice, motion.shift[layer]!);
  return {
    place: Math.hypot(after.x - before.x - x, after.y - before.y - y),
    heading: Math.abs(wrapAngle(after.heading - to.heading * turn)),
    hitch: Math.abs(driven.hitchAngle - to.level * turn),
    long: Math.abs(arc.length),
  };
}

describe.each(trailers)("steps of a train over its lattice, hitch %o", (trailer) => {
  const lattice = latticeOf(trailer, 0.05);
  const { inTime, against } = trainMotions(lattice, limits);
  const random = sequence(5);

  // Steps in reverse are these undone: what leads there leads back.
  it.each([
    ["driven forwards", inTime.forward],
    ["driven in reverse, seen from the end", against.reverse],
  ] as const)("%s: each is the exact arc, but for the rounding of place and heading", (_, motions) => {
    let looked = 0;
    for (const motion of motions) {
      for (let i = 0; i < 200; i++) {
        const layer = Math.floor(random() * motion.to.length);
        if (motion.to[layer]! < 0) continue;
        const { place, heading, hitch, long } = misses(lattice, motion, layer);
        looked += 1;
        // Two roundings of heading, each of half a step; as much turns the way sideways; two of place, each of a cell's half diagonal.
        expect(heading).toBeLessThan(turnOf(lattice) * 1.01);
        expect(place).toBeLessThan(0.05 * Math.SQRT2 + long * turnOf(lattice));
        // A change that would never quite be made counts as made at 0.7 of it.
        expect(hitch).toBeLessThan(0.31 * turnOf(lattice));
      }
    }
    expect(looked).toBeGreaterThan(200);
  });

  it("what leads there leads back by as many bits", () => {
    for (const [ahead, back] of [
      [inTime.forward, against.forward],
      [against.reverse, inTime.reverse],
    ] as const) {
      for (const [i, motion] of ahead.entries()) {
        for (const [layer, to] of motion.to.entries()) {
          if (to < 0) continue;
          expect([back[i]?.to[to], back[i]?.shift[to]]).toEqual([layer, -motion.shift[layer]!]);
        }
      }
    }
  });

  it("at a steady hitch angle the axle goes round the radius of the sum of squares (SAE J695: MEMORY)", () => {
    const hold = inTime.forward.find((motion) => motion.bends === 0 && motion.curvature[layerOf(lattice, 0, 5)]! > 0)!;
    const curvature = hold.curvature[layerOf(lattice, 0, 5)]!;
    const steady = steadyTrain({ wheelbase: 3, trailers: [trailer] }, 1 / curvature);
    expect(steady?.hitchAngles[0]).toBeCloseTo(5 * turnOf(lattice), 9);
    // Round by the sums of all 72 shifts: the farthest place is a diameter off, to a cell.
    let [x, y, far] = [0, 0, 0];
    for (let heading = 0; heading < 72; heading++) {
      const [dx, dy] = shiftOf(lattice, hold.shift[layerOf(lattice, heading, 5)]!);
      [x, y] = [x + dx, y + dy];
      far = Math.max(far, Math.hypot(x, y));
    }
    expect(Math.abs(far - 2 * (steady?.axleRadii[1] ?? 0))).toBeLessThan(0.1);
    expect(Math.hypot(x, y)).toBeLessThan(1e-9);
  });
});
