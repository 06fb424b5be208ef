// Heights taken on a surface: how it leans, and where they cannot say.

import { describe, expect, it } from "vitest";
import { findIn, planWith, valuesIn } from "../measures/rig.ts";

const drive = (levels: readonly (readonly [readonly [number, number], number])[]) =>
  planWith({
    surfaces: {
      drive: {
        centre_line: [
          [0, 0],
          [30, 0],
        ],
        width: 4,
        for: ["vehicles"],
        levels: levels.map(([at, level]) => ({ at, level })),
        existing: true,
      },
    },
  });
const fall = { measure: "fall-of-surface", subject: { surface: "drive" } } as const;

describe("heights on a surface", () => {
  it("give its fall where they spread out", () => {
    const plan = drive([
      [[0, -2], 100],
      [[0, 2], 100],
      [[30, -2], 101.5],
      [[30, 2], 101.5],
    ]);
    // COMPUTED: 1.5 / 30.
    for (const value of valuesIn(plan, fall)) expect(value).toBeCloseTo(0.05, 6);
  });
  it("say nothing of a lean where they lie on its middle, straight but for a few millimetres", () => {
    const plan = drive([
      [[0, 0], 100],
      [[15, 0.004], 101],
      [[30, 0], 101.5],
    ]);
    expect(findIn(plan, fall).is).toBe("missing");
  });
});
