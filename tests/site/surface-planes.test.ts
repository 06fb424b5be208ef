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

describe("the ground under a yard whose edge was levelled along a line", () => {
  // A hump of 0.15 m half way along one side, 0.2 m inside the line of its corners: across that needle the ground would
  // fall 0.15 in 0.2 m. The plane of A, H and C falls 0.15 / 19.8 northwards and (0.15 + 0.2 x 0.15 / 19.8) / 15 eastwards,
  // that of H, B and C its mirror image (COMPUTED).
  it("falls as the triangles do that are ground", () => {
    const plan = planWith({
      survey: {
        stations: {
          A: { at: [0, 0], level: 10 },
          H: { at: [15, 0.2], level: 10.15 },
          B: { at: [30, 0], level: 10 },
          C: { at: [15, 20], level: 10 },
        },
      },
      surfaces: {
        yard: {
          outline: [
            [2, 0.01],
            [28, 0.01],
            [15, 18],
          ],
          for: ["vehicles"],
          existing: true,
        },
      },
    });
    const values = valuesIn(plan, { measure: "fall-of-surface", subject: { surface: "yard" } });
    expect(values.length).toBe(2);
    for (const value of values)
      expect(value).toBeCloseTo(Math.hypot(0.15 / 19.8, (0.15 + (0.2 * 0.15) / 19.8) / 15), 9);
  });
});
