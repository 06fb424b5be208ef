// Expected numbers: by hand (COMPUTED), on a line of 10 m east, then 10 m north.
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  lineLength,
  piecesOf,
  placeAtRun,
  pointAtRun,
  reversedLine,
  runAndLeft,
  runsOf,
  stretchOf,
} from "../../src/geometry/line.ts";
import { distance, type Point } from "../../src/geometry/point.ts";
import { allMoved, anyMove, moved, plotPoint, seeded } from "./figures.ts";

const elbow: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
];

describe("lines", () => {
  it("has length, pieces and runs", () => {
    expect(lineLength(elbow)).toBe(20);
    expect(lineLength([[1, 1]])).toBe(0);
    expect(piecesOf(elbow)).toHaveLength(2);
    expect(runsOf(elbow)).toEqual([0, 10, 20]);
    expect(reversedLine(elbow)[0]).toEqual([10, 10]);
  });

  it("finds the place at a run, with the direction walked", () => {
    expect(placeAtRun(elbow, 4)).toEqual({ point: [4, 0], direction: [1, 0], piece: 0 });
    expect(placeAtRun(elbow, 10)).toEqual({ point: [10, 0], direction: [0, 1], piece: 1 });
    expect(placeAtRun(elbow, 20)).toEqual({ point: [10, 10], direction: [0, 1], piece: 1 });
    expect(pointAtRun(elbow, 12, 1.5)).toEqual([8.5, 2]);
    expect(pointAtRun(elbow, 12, -1.5)).toEqual([11.5, 2]);
  });

  it("refuses a run off the line", () => {
    expect(placeAtRun(elbow, 20.001)).toBeNull();
    expect(placeAtRun(elbow, -0.001)).toBeNull();
    expect(placeAtRun(elbow, Number.NaN)).toBeNull();
    expect(pointAtRun(elbow, 21)).toBeNull();
    expect(placeAtRun([[1, 1]], 0)).toBeNull();
  });

  it.each([
    ["beside the first piece", [4, 3], 4, 3, 3],
    ["right of it", [4, -2], 4, -2, 2],
    ["outside the bend: 3-4-5", [13, -4], 10, -5, 5],
    ["before the start", [-3, 4], -3, 4, 5],
    ["past the end", [7, 14], 24, 3, 5],
    ["on the line", [6, 0], 6, 0, 0],
    ["on the end", [10, 10], 20, 0, 0],
  ] as const)("tells run and offset %s", (_, at, run, left, off) => {
    const found = runAndLeft(elbow, at);
    expect(found?.run).toBeCloseTo(run, 12);
    expect(found?.left).toBeCloseTo(left, 12);
    expect(found?.distance).toBeCloseTo(off, 12);
  });

  it("keeps to the left outside a bend to the right", () => {
    const found = runAndLeft(
      [
        [0, 0],
        [10, 0],
        [10, -10],
      ],
      [13, 4],
    );
    expect(found?.run).toBe(10);
    expect(found?.left).toBe(5);
  });

  it("is not misled by a bend straight on, or by repeated points", () => {
    const straight: readonly Point[] = [
      [0, 0],
      [5, 0],
      [5, 0],
      [10, 0],
    ];
    expect(runAndLeft(straight, [5, 2])?.left).toBe(2);
    expect(runAndLeft(straight, [5, -2])?.left).toBe(-2);
    expect(runAndLeft(straight, [7, -2])?.run).toBe(7);
    // A bend of a hair's breadth, as turning leaves it, tells no side.
    for (const hair of [1e-12, -1e-12]) {
      expect(
        runAndLeft(
          [
            [0, 0],
            [5, hair],
            [10, 0],
          ],
          [5, 2],
        )?.left,
      ).toBeCloseTo(2, 9);
      expect(
        runAndLeft(
          [
            [0, 0],
            [5, hair],
            [10, 0],
          ],
          [5, -2],
        )?.left,
      ).toBeCloseTo(-2, 9);
    }
    expect(runAndLeft([[2, 2]], [5, 2])).toBeNull();
  });

  it("finds a point again from its run and offset, wherever the foot is inside a piece", () => {
    let checked = 0;
    fc.assert(
      fc.property(fc.array(plotPoint, { minLength: 2, maxLength: 6 }), plotPoint, (line, at) => {
        const found = runAndLeft(line, at);
        fc.pre(found !== null && found.run > 1e-6 && found.run < lineLength(line) - 1e-6);
        if (found === null || runsOf(line).some((run) => Math.abs(run - found.run) < 1e-6)) return;
        const again = pointAtRun(line, found.run, found.left) as Point;
        expect(distance(again, at)).toBeLessThan(1e-9);
        expect(Math.abs(found.left)).toBeCloseTo(found.distance, 9);
        checked++;
      }),
      seeded,
    );
    expect(checked).toBeGreaterThan(50);
  });

  it("keeps run and offset under shift, turn and mirror (which swaps left and right)", () => {
    fc.assert(
      fc.property(fc.array(plotPoint, { minLength: 2, maxLength: 2 }), plotPoint, anyMove, (line, at, move) => {
        const here = runAndLeft(line, at);
        const there = runAndLeft(allMoved(move, line), moved(move, at));
        if (here === null || there === null) return;
        expect(there.run).toBeCloseTo(here.run, 7);
        expect(there.left).toBeCloseTo(here.left * move.mirrored, 7);
      }),
      seeded,
    );
  });

  it("cuts a stretch out, with its bends", () => {
    expect(stretchOf(elbow, 8, 13)).toEqual([
      [8, 0],
      [10, 0],
      [10, 3],
    ]);
    expect(stretchOf(elbow, -5, 5)).toEqual([
      [0, 0],
      [5, 0],
    ]);
    expect(stretchOf(elbow, 30, 40)).toEqual([]);
    expect(stretchOf(elbow, 5, 5)).toEqual([]);
  });
});
