// What can be stood on beside a fence, and how wide a thing is that is given by its middle.

import { describe, expect, it } from "vitest";
import { findIn, planWith, valuesIn } from "../measures/rig.ts";

const fence = {
  line: [
    [0, 0],
    [10, 0],
  ],
  height: 1.2,
  keep_in: ["goat"],
  keep_in_side: "left",
  existing: true,
} as const;
const tank = { circle: { at: [5, 3], across: 2 }, holds: "slurry", depth: 2, existing: true } as const;
const jump = { measure: "equivalent-jump-height", subject: { fence: "paddock", stand: "tank" } } as const;

describe("a tank beside a fence", () => {
  it("is stood on at its height", () => {
    const plan = planWith({ fences: { paddock: fence }, tanks: { tank: { ...tank, height: 1 } } });
    // COMPUTED: D = 1.2 - 1.0 = 0.2, gap 3 - 1 = 2: (0.2 + sqrt(0.04 + 4)) / 2 = 1.105.
    expect(valuesIn(plan, jump)[0]).toBeCloseTo(1.105, 3);
  });
  it("is no stand and asks for no height where it lies in the ground", () => {
    const plan = planWith({ fences: { paddock: fence }, tanks: { tank: { ...tank, buried: true } } });
    expect(findIn(plan, jump)).toEqual({ is: "does-not-bear" });
  });
});

describe("an obstacle given by its middle", () => {
  it("is as wide as it is across", () => {
    const post = (at: readonly [number, number]) => ({ at, across: 0.4, height: 1.2, kind: "post", existing: true });
    const plan = planWith({
      surfaces: {
        track: {
          centre_line: [
            [0, -5],
            [0, 5],
          ],
          width: 3,
          for: ["car"],
          existing: true,
        },
      },
      obstacles: { west: post([-2, 0]), east: post([2, 0]) },
    });
    // COMPUTED: 4.0 from middle to middle, less 0.2 on each side.
    expect(valuesIn(plan, { measure: "clear-width", subject: { way: "track" } })[0]).toBeCloseTo(3.6, 9);
  });
});
