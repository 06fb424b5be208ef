// Expected numbers: by hand (COMPUTED).
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/point.ts";
import { fallAlong, flowPath } from "../../src/terrain/flow-path.ts";
import { groundAt } from "../../src/terrain/surface.ts";
import { gridSurface, seeded, surfaceOver } from "./ground.ts";

describe("the way of water", () => {
  it("runs straight down a plane to the edge of the net", () => {
    const path = flowPath(
      gridSurface(4, (_, y) => y / 10),
      [6.2, 13],
    );
    expect(path?.end).toBe("edge");
    expect(path?.points.every(([x]) => Math.abs(x - 6.2) < 1e-9)).toBe(true);
    expect(path?.points.at(-1)?.[1]).toBeCloseTo(0, 9);
    expect(path === null ? null : fallAlong(path).fall).toBeCloseTo(1.3, 9);
    expect(path === null ? null : fallAlong(path).length).toBeCloseTo(13, 9);
  });

  // A valley along x = 5 that falls to the south: sides 20 %, bed 5 %.
  const valley = surfaceOver(
    [
      [0, 0, 1],
      [5, 0, 0],
      [10, 0, 1],
      [10, 10, 1.5],
      [5, 10, 0.5],
      [0, 10, 1.5],
    ],
    [[1, 4]],
  );

  it("gathers in the bed of a valley and follows it", () => {
    const path = flowPath(valley, [1, 9]);
    expect(path?.points.at(-1)).toEqual([5, 0]);
    expect(path?.end).toBe("edge");
    const inBed = path?.points.filter(([x]) => Math.abs(x - 5) < 1e-9) ?? [];
    expect(inBed.length).toBeGreaterThanOrEqual(2);
    // by hand: from (1, 9) with a fall of (0.2, -0.05) the bed is reached 1 m farther south
    expect(inBed[0]?.[1]).toBeCloseTo(8, 9);
  });

  it("leaves a ridge on one side, and ends in a hollow", () => {
    const spots = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ].map(([x, y]) => [x as number, y as number, 1] as const);
    const hollow = surfaceOver([...spots, [5, 5, 0]]);
    expect(flowPath(hollow, [9, 6])).toMatchObject({ end: "hollow" });
    expect(flowPath(hollow, [9, 6])?.points.at(-1)).toEqual([5, 5]);
    // From a corner straight down the edge, from the hollow nowhere.
    expect(flowPath(hollow, [0, 0])?.points).toEqual([
      [0, 0],
      [5, 5],
    ]);
    expect(flowPath(hollow, [5, 5])).toEqual({ points: [[5, 5]], levels: [0], end: "hollow" });
    const hill = surfaceOver([...spots, [5, 5, 2]]);
    expect(flowPath(hill, [5, 5])?.end).toBe("edge");
    expect(flowPath(hill, [6, 6])?.levels.at(-1)).toBeCloseTo(1, 9);
  });

  it("stops on level ground, and knows nothing off the net", () => {
    const flat = gridSurface(3, () => 2);
    expect(flowPath(flat, [2, 2])).toEqual({ points: [[2, 2]], levels: [2], end: "level" });
    expect(flowPath(flat, [5, 5])?.end).toBe("level");
    expect(flowPath(flat, [5, 2])?.end).toBe("level");
    expect(flowPath(flat, [50, 2])).toBeNull();
    const stairs = gridSurface(4, (x) => Math.max(0, x - 5));
    expect(flowPath(stairs, [12, 7])?.end).toBe("level");
    expect(fallAlong({ points: [[1, 1]], levels: [3], end: "level" })).toEqual({ fall: 0, length: 0 });
  });

  it("always falls, stays on the ground, and ends", () => {
    let longest = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 0, max: 3500 }),
        fc.integer({ min: 0, max: 3500 }),
        (seed, x, y) => {
          const surface = gridSurface(
            8,
            (east, north) => Math.sin(east * 1.7 + seed) + Math.cos(north * 2.3 - seed) + 0.02 * east,
          );
          const path = flowPath(surface, [x / 100, y / 100]);
          if (path === null) throw new Error("the start lies on the grid");
          longest = Math.max(longest, path.points.length);
          for (const [i, level] of path.levels.entries()) {
            if (i > 0) expect(level).toBeLessThan((path.levels[i - 1] as number) + 1e-9);
            const at = path.points[i] as Point;
            const inward: Point = [at[0] + (17.5 - at[0]) * 1e-12, at[1] + (17.5 - at[1]) * 1e-12];
            expect(groundAt(surface, inward)?.level).toBeCloseTo(level, 7);
          }
        },
      ),
      seeded,
    );
    expect(longest).toBeGreaterThan(4);
    expect(longest).toBeLessThan(60);
  });
});
