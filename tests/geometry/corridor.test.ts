// Expected numbers: by hand (COMPUTED).
import { describe, expect, it } from "vitest";
import { corridorPairs } from "../../src/geometry/corridor.ts";
import type { Point } from "../../src/geometry/point.ts";

const left: readonly Point[] = [
  [0, 4],
  [10, 3],
  [20, 4],
];
const right: readonly Point[] = [
  [0, 0],
  [20, 0],
];

describe("narrow places of a way", () => {
  it("finds the pinch and both ends", () => {
    const found = corridorPairs(left, right, 4);
    expect(Math.min(...found.map(({ distance }) => distance))).toBe(3);
    expect(found.some(({ vertexOf, vertex }) => vertexOf === "a" && vertex === 1)).toBe(true);
    expect(corridorPairs(left, right, 2.9)).toEqual([]);
  });

  it("does not look through the lines", () => {
    const hooked: readonly Point[] = [
      [0, 4],
      [20, 4],
      [20, 6],
      [0, 6],
    ];
    const found = corridorPairs(hooked, right, 10);
    expect(found.some(({ distance }) => distance === 6)).toBe(false);
    expect(found.some(({ distance }) => distance === 4)).toBe(true);
  });

  it("says where the lines cross", () => {
    expect(
      corridorPairs(
        [
          [5, 3],
          [5, -2],
        ],
        right,
        1,
      ),
    ).toMatchObject([{ how: "crossing", distance: -2 }]);
  });
});
