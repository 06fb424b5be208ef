// Expected numbers: by hand (COMPUTED).
import { describe, expect, it } from "vitest";
import { levelAtRun, sectionAlong, steepestOf } from "../../src/terrain/section.ts";
import { groundAt } from "../../src/terrain/surface.ts";
import { gridSurface, surfaceOver } from "./ground.ts";

// A roof: eaves at 0 on x = 0 and x = 10, ridge at 2 on x = 5, 10 m long, ridge forced.
const roof = surfaceOver(
  [
    [0, 0, 0],
    [5, 0, 2],
    [10, 0, 0],
    [10, 10, 0],
    [5, 10, 2],
    [0, 10, 0],
  ],
  [[1, 4]],
);

describe("section along a line", () => {
  it("breaks at the ridge and nowhere misses it", () => {
    const [only] = sectionAlong(roof, [
      [0, 3],
      [10, 3],
    ]);
    expect(only?.[0]).toEqual({ run: 0, level: 0, at: [0, 3] });
    expect(levelAtRun(only ?? [], 5)).toBeCloseTo(2, 12);
    expect(levelAtRun(only ?? [], 2.5)).toBeCloseTo(1, 12);
    expect(levelAtRun(only ?? [], 10)).toBeCloseTo(0, 12);
    expect(levelAtRun(only ?? [], 10.1)).toBeNull();
    expect(steepestOf(only ?? [])?.slope).toBeCloseTo(0.4, 12);
  });

  it("runs along an edge, and along several pieces", () => {
    const [ridge] = sectionAlong(roof, [
      [5, 0],
      [5, 10],
    ]);
    expect(ridge?.every(({ level }) => Math.abs(level - 2) < 1e-12)).toBe(true);
    const [bent] = sectionAlong(roof, [
      [2, 2],
      [2, 2],
      [5, 2],
      [5, 8],
    ]);
    expect(bent?.at(-1)?.run).toBeCloseTo(9, 12);
    expect(levelAtRun(bent ?? [], 1.5)).toBeCloseTo(1.4, 12);
  });

  it("ends where the ground is not known, and begins again", () => {
    const found = sectionAlong(roof, [
      [-5, 3],
      [15, 3],
      [15, 6],
      [-5, 6],
    ]);
    expect(found).toHaveLength(2);
    expect(found[0]?.[0]?.run).toBeCloseTo(5, 12);
    expect(found[0]?.at(-1)?.run).toBeCloseTo(15, 12);
    expect(found[1]?.[0]?.run).toBeCloseTo(28, 12);
    expect(
      sectionAlong(roof, [
        [-5, 3],
        [-1, 3],
      ]),
    ).toEqual([]);
    expect(sectionAlong(roof, [[3, 3]])).toEqual([]);
  });

  it("has the level of the ground at every point, and rising runs", () => {
    const surface = gridSurface(7, (x, y) => Math.sin(x / 3) * Math.cos(y / 4));
    const [section] = sectionAlong(surface, [
      [1.3, 2.7],
      [28.4, 11.9],
      [4.4, 27.7],
    ]);
    expect(section?.length).toBeGreaterThan(20);
    for (const [i, { run, level, at }] of (section ?? []).entries()) {
      expect(groundAt(surface, at)?.level).toBeCloseTo(level, 7);
      if (i > 0) expect(run).toBeGreaterThan(section?.[i - 1]?.run ?? 0);
    }
  });

  it("has no steepest bit in a lone point", () => {
    expect(steepestOf([])).toBeNull();
    expect(
      steepestOf([
        { run: 1, level: 1, at: [0, 0] },
        { run: 1, level: 3, at: [0, 0] },
      ]),
    ).toBeNull();
    const fall = [
      { run: 0, level: 3, at: [0, 0] },
      { run: 2, level: 2, at: [2, 0] },
      { run: 12, level: 3, at: [12, 0] },
    ] as const;
    expect(steepestOf(fall)).toMatchObject({ slope: -0.5, from: { run: 0 }, to: { run: 2 } });
    expect(
      levelAtRun(
        [
          { run: 1, level: 1, at: [0, 0] },
          { run: 1, level: 3, at: [0, 0] },
        ],
        1,
      ),
    ).toBe(1);
  });
});
