import { describe, expect, it } from "vitest";
import { ringNear, stretchNear } from "../../src/site/stretch-near.ts";
import type { Point } from "../../src/model/reading.ts";

const line = Array.from({ length: 41 }, (_, i): Point => [i * 0.5, 0]);

describe("the stretch of a line near a place", () => {
  it("reaches 4 m to both sides, and one point farther", () => {
    const near = stretchNear(line, [10, 0]);
    expect([near[0], near.at(-1)]).toEqual([
      [5.5, 0],
      [14.5, 0],
    ]);
  });
  it("leaves out what comes back near the place after going far", () => {
    const there: readonly Point[] = [...line, [20, 1], ...line.toReversed().map(([x]): Point => [x, 2])];
    expect(stretchNear(there, [10, 0]).every(([, y]) => y === 0)).toBe(true);
  });
  it("keeps a line of two points whole", () => {
    expect(
      stretchNear(
        [
          [0, 0],
          [30, 0],
        ],
        [3, 1],
      ),
    ).toHaveLength(2);
  });
  it("opens a ring on its far side", () => {
    const ring = Array.from({ length: 72 }, (_, i): Point => [
      20 * Math.cos((i * Math.PI) / 36),
      20 * Math.sin((i * Math.PI) / 36),
    ]);
    const near = ringNear(ring, [20, 0]);
    expect(near.every(([x]) => x > 15)).toBe(true);
    expect(near.length).toBeGreaterThan(4);
  });
});
