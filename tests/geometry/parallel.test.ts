// Expected numbers: by hand (COMPUTED).
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { piecesOf } from "../../src/geometry/line.ts";
import { parallelLine, parallelRing } from "../../src/geometry/parallel.ts";
import type { Point } from "../../src/geometry/point.ts";
import { ringArea, ringLength } from "../../src/geometry/ring.ts";
import { leftOf } from "../../src/geometry/segment.ts";
import { plotPoint, seeded, square } from "./figures.ts";

const elbow: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
];

describe("a line beside another", () => {
  it("mitres the corner, on either side", () => {
    expect(parallelLine(elbow, 1.5)).toEqual({
      points: [
        [0, 1.5],
        [8.5, 1.5],
        [8.5, 10],
      ],
      turned: [],
    });
    expect(parallelLine(elbow, -1.5)?.points).toEqual([
      [0, -1.5],
      [11.5, -1.5],
      [11.5, 10],
    ]);
  });

  it("says which pieces came out backwards", () => {
    const short: readonly Point[] = [
      [0, 0],
      [10, 0],
      [10, 2],
      [0, 2],
    ];
    expect(parallelLine(short, 1.5)?.turned).toEqual([1]);
    expect(parallelLine(short, 0.5)?.turned).toEqual([]);
  });

  it("gives a bend straight back two corners", () => {
    const there: readonly Point[] = [
      [0, 0],
      [10, 0],
      [0, 0],
    ];
    expect(parallelLine(there, 1)?.points).toEqual([
      [0, 1],
      [10, 1],
      [10, -1],
      [0, -1],
    ]);
  });

  it("counts repeated points once, and has no parallel to a point", () => {
    expect(parallelLine([[0, 0], ...elbow], 1)?.points).toHaveLength(3);
    expect(
      parallelLine(
        [
          [1, 1],
          [1, 1],
        ],
        1,
      ),
    ).toBeNull();
    expect(parallelLine([], 1)).toBeNull();
  });

  it("every piece lies at the offset from the piece it follows", () => {
    let checked = 0;
    fc.assert(
      fc.property(
        fc.array(plotPoint, { minLength: 2, maxLength: 7 }),
        fc.integer({ min: -300, max: 300 }),
        (line, cm) => {
          const beside = parallelLine(line, cm / 100);
          if (beside === null || beside.points.length !== line.length) return;
          for (const [i, piece] of piecesOf(line).entries()) {
            for (const end of [beside.points[i], beside.points[i + 1]]) {
              // A mitre of a sharp bend is long: rounding grows with it.
              const reach = Math.max(1, Math.hypot((end as Point)[0], (end as Point)[1]));
              expect(Math.abs(leftOf(piece, end as Point) - cm / 100)).toBeLessThan(1e-9 * reach * reach);
              checked++;
            }
          }
        },
      ),
      seeded,
    );
    expect(checked).toBeGreaterThan(1000);
  });
});

describe("a ring inside another", () => {
  it("insets the square by 1 m all round", () => {
    const inner = parallelRing(square, 1)?.points as readonly Point[];
    expect(inner).toEqual([
      [1, 1],
      [9, 1],
      [9, 9],
      [1, 9],
    ]);
    expect(parallelRing([...square, [0, 0]], 1)?.points).toEqual(inner);
  });

  it("grows by edge x offset + corners: A + P d + 4 d2 for a rectangle", () => {
    const outer = parallelRing(square, -2)?.points as readonly Point[];
    expect(ringArea(outer)).toBeCloseTo(ringArea(square) + ringLength(square) * 2 + 4 * 2 * 2, 9);
  });

  it("says when nothing is left", () => {
    expect(parallelRing(square, 6)?.turned).toEqual([0, 1, 2, 3]);
    expect(parallelRing([[0, 0]], 1)).toBeNull();
  });
});
