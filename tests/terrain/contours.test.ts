// Expected numbers: by hand (COMPUTED).
import { describe, expect, it } from "vitest";
import { lineLength } from "../../src/geometry/line.ts";
import { distance, type Point } from "../../src/geometry/point.ts";
import { signedArea } from "../../src/geometry/ring.ts";
import { contourLevels, contoursAt } from "../../src/terrain/contours.ts";
import { groundAt } from "../../src/terrain/surface.ts";
import { gridSurface, surfaceOver } from "./ground.ts";

describe("contours", () => {
  it("runs straight over a plane, the higher ground on its left", () => {
    const [only, ...none] = contoursAt(
      gridSurface(4, (_, y) => y / 10),
      0.7,
    );
    expect(none).toEqual([]);
    expect(only?.ends).toBe("open");
    expect(lineLength(only?.points ?? [])).toBeCloseTo(15, 12);
    expect(only?.points.every(([, y]) => Math.abs(y - 7) < 1e-12)).toBe(true);
    // North is higher, so the line runs east.
    expect(only?.points[0]?.[0]).toBe(0);
  });

  it("closes round a hill counter-clockwise and round a hollow clockwise", () => {
    const spots = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ].map(([x, y]) => [x as number, y as number, 0] as const);
    const [hill] = contoursAt(surfaceOver([...spots, [5, 5, 2]]), 1);
    expect(hill?.ends).toBe("closed");
    expect(signedArea(hill?.points ?? [])).toBeCloseTo(25, 12);
    const [hollow] = contoursAt(surfaceOver([...spots, [5, 5, -2]]), -1);
    expect(signedArea(hollow?.points ?? [])).toBeCloseTo(-25, 12);
  });

  it("takes a level that passes exactly through points in its stride", () => {
    const surface = gridSurface(4, (x) => x / 10);
    const [only, ...none] = contoursAt(surface, 0.5);
    expect(none).toEqual([]);
    expect(lineLength(only?.points ?? [])).toBeCloseTo(15, 9);
    expect(
      contoursAt(
        gridSurface(4, () => 3),
        3,
      ),
    ).toEqual([]);
    expect(contoursAt(surface, 99)).toEqual([]);
  });

  it("lies at its level everywhere and ends only on the outside", () => {
    const surface = gridSurface(8, (x, y) => Math.sin(x / 4) + Math.cos(y / 5));
    let checked = 0;
    for (const level of contourLevels(surface.levels, 0.25)) {
      for (const { points, ends } of contoursAt(surface, level)) {
        for (const at of points) {
          // A point on an edge may fall outside by a rounding: then the nearest inside is as good.
          const inward: Point = [at[0] + (17.5 - at[0]) * 1e-12, at[1] + (17.5 - at[1]) * 1e-12];
          expect(groundAt(surface, inward)?.level).toBeCloseTo(level, 7);
          checked++;
        }
        const [first, last] = [points[0] as Point, points.at(-1) as Point];
        const onRim = ([x, y]: Point): boolean => Math.min(x, y, 35 - x, 35 - y) < 1e-9;
        if (ends === "open") expect(onRim(first) && onRim(last)).toBe(true);
        else expect(distance(first, last)).toBeGreaterThan(0);
      }
    }
    expect(checked).toBeGreaterThan(100);
  });

  it("counts levels in whole steps", () => {
    expect(contourLevels([0.9, 3.1], 1)).toEqual([1, 2, 3]);
    expect(contourLevels([1, 2], 0.5)).toEqual([1, 1.5, 2]);
    expect(contourLevels([1.1, 1.2], 0.5)).toEqual([]);
    expect(contourLevels([], 1)).toEqual([]);
    expect(contourLevels([1, 2], 0)).toEqual([]);
  });
});
