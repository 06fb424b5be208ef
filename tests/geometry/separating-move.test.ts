// Expected numbers: by hand (COMPUTED).
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaFigure, lineFigure, pointFigure } from "../../src/geometry/figure.ts";
import { nearest } from "../../src/geometry/nearest.ts";
import type { Point } from "../../src/geometry/point.ts";
import { polygonOf } from "../../src/geometry/polygon.ts";
import { separatingMove } from "../../src/geometry/separating-move.ts";
import { plotPoint, seeded, square, starRing } from "./figures.ts";

const area = areaFigure(polygonOf(square));

describe("moving one figure clear of another", () => {
  it("takes the shortest way out, and the gap on top", () => {
    const move = separatingMove(pointFigure([8, 5]), area, 0);
    expect(move?.direction).toEqual([1, 0]);
    expect(move?.distance).toBeCloseTo(2, 12);
    expect(separatingMove(pointFigure([8, 5]), area, 0.5)?.distance).toBeCloseTo(2.5, 12);
  });

  it("moves nothing that is clear, and only what lacks where the gap is too small", () => {
    expect(separatingMove(pointFigure([14, 5]), area, 1)?.distance).toBe(0);
    // by hand: 3-4-5 from the corner, 6 wanted
    expect(separatingMove(pointFigure([13, 14]), area, 6)?.distance).toBeCloseTo(1, 12);
  });

  it("pulls a line out lengthways or sideways, whichever is shorter", () => {
    const through = lineFigure([
      [8, -5],
      [8, 15],
    ]);
    expect(separatingMove(through, area, 0)?.distance).toBeCloseTo(2, 12);
    const tip = lineFigure([
      [5, 9],
      [5, 30],
    ]);
    expect(separatingMove(tip, area, 0)?.direction).toEqual([0, 1]);
    expect(separatingMove(pointFigure([1, 1]), pointFigure([1, 1]), 2)?.distance).toBe(2);
    expect(separatingMove(lineFigure([]), area, 1)).toBeNull();
  });

  it("is enough: after the move the clear distance is the gap", () => {
    fc.assert(
      fc.property(starRing, starRing, plotPoint, (one, two, [east]) => {
        const gap = Math.abs(east) / 10;
        const fixed = areaFigure(polygonOf(two));
        const move = separatingMove(areaFigure(polygonOf(one)), fixed, gap);
        if (move === null) throw new Error("both have vertices");
        const there = one.map(([x, y]): Point => [
          x + move.direction[0] * move.distance,
          y + move.direction[1] * move.distance,
        ]);
        expect(nearest(areaFigure(polygonOf(there)), fixed)?.distance).toBeGreaterThan(gap - 1e-9);
      }),
      seeded,
    );
  });
});
