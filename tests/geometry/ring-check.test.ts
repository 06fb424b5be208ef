import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polygonOf } from "../../src/geometry/polygon.ts";
import { lineFaults, polygonFaults, ringFaults } from "../../src/geometry/ring-check.ts";
import { piecesOf } from "../../src/geometry/line.ts";
import { meeting } from "../../src/geometry/segment.ts";
import { hole, plotPoint, seeded, square } from "./figures.ts";

describe("faults of a line", () => {
  it("finds none in an honest line", () => {
    expect(
      lineFaults([
        [0, 0],
        [10, 0],
        [10, 10],
      ]),
    ).toEqual([]);
  });

  it.each([
    ["one point", [[1, 1]], [{ is: "too-few-points", ring: 0, points: 1 }]],
    [
      "the same point twice",
      [
        [1, 1],
        [1, 1],
      ],
      [{ is: "too-few-points", ring: 0, points: 1 }],
    ],
    ["no points", [], [{ is: "too-few-points", ring: 0, points: 0 }]],
    [
      "no number",
      [
        [0, 0],
        [Number.NaN, 1],
      ],
      [{ is: "not-a-number", ring: 0, vertex: 1 }],
    ],
    [
      "a point given twice",
      [
        [0, 0],
        [5, 0],
        [5, 1e-7],
        [9, 0],
      ],
      [{ is: "repeated-point", ring: 0, vertex: 2, at: [5, 1e-7] }],
    ],
    [
      "a spike",
      [
        [0, 0],
        [10, 0],
        [4, 0],
      ],
      [{ is: "spike", ring: 0, vertex: 1, at: [10, 0] }],
    ],
    [
      "a loop",
      [
        [0, 0],
        [10, 0],
        [10, 5],
        [5, 5],
        [5, -5],
      ],
      [{ is: "sides-cross", ring: 0, sides: [0, 3], at: [5, 0] }],
    ],
    [
      "an end on the line",
      [
        [0, 0],
        [10, 0],
        [10, 5],
        [5, 5],
        [5, 0],
      ],
      [{ is: "sides-touch", ring: 0, sides: [0, 3], at: [5, 0] }],
    ],
  ] as const)("%s", (_, line, faults) => {
    expect(lineFaults(line)).toEqual(faults);
  });
});

describe("crossings of a line with itself", () => {
  it("are those found by looking at every two sides", () => {
    let crossings = 0;
    fc.assert(
      fc.property(fc.array(plotPoint, { minLength: 4, maxLength: 8 }), (line) => {
        const found = lineFaults(line).flatMap((fault) => (fault.is === "sides-cross" ? [fault.sides] : []));
        const sides = piecesOf(line);
        const all = sides.flatMap((a, i) =>
          sides.flatMap((b, j) => (j > i && meeting(a, b) === "cross" ? [[i, j]] : [])),
        );
        expect(found).toEqual(all);
        crossings += all.length;
      }),
      seeded,
    );
    expect(crossings).toBeGreaterThan(100);
  });
});

describe("faults of a ring", () => {
  it("finds none in a square", () => {
    expect(ringFaults(square)).toEqual([]);
  });

  it.each([
    [
      "two points",
      [
        [0, 0],
        [10, 0],
      ],
      ["too-few-points"],
    ],
    [
      "two points, one twice",
      [
        [0, 0],
        [10, 0],
        [10, 0],
      ],
      ["too-few-points"],
    ],
    [
      "all on a line",
      [
        [0, 0],
        [10, 0],
        [5, 0],
      ],
      ["no-area"],
    ],
    ["first point again at the end", [...square, [0, 0]], ["repeated-point"]],
    [
      "a bow tie",
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
      ["sides-cross"],
    ],
    [
      "a spike of which the arms are unlike",
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [10, 15],
        [10, 12],
        [0, 10],
      ],
      ["spike", "sides-touch"],
    ],
    [
      "no number",
      [
        [0, 0],
        [10, 0],
        [Number.POSITIVE_INFINITY, 1],
      ],
      ["not-a-number"],
    ],
  ] as const)("%s", (_, ring, faults) => {
    expect(ringFaults(ring).map(({ is }) => is)).toEqual(faults);
  });

  it("says where and which sides cross", () => {
    expect(
      ringFaults([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    ).toEqual([{ is: "sides-cross", ring: 0, sides: [0, 2], at: [5, 5] }]);
  });
});

describe("faults of an area", () => {
  const moved = (east: number, north: number) => hole.map(([x, y]) => [x + east, y + north] as const);

  it("finds none in a frame, nor where a hole touches at a point", () => {
    expect(polygonFaults(polygonOf(square, [hole]))).toEqual([]);
    expect(
      polygonFaults(
        polygonOf(square, [
          [
            [0, 5],
            [2, 4],
            [2, 6],
          ],
        ]),
      ),
    ).toEqual([]);
    expect(polygonFaults(polygonOf(square, [hole, moved(2, 2)]))).toEqual([]);
  });

  it("finds a hole outside, over the edge, in another hole, across another", () => {
    expect(polygonFaults(polygonOf(square, [moved(10, 0)]))).toMatchObject([{ is: "hole-outside", ring: 1 }]);
    expect(polygonFaults(polygonOf(square, [moved(5, 0)]))).toMatchObject([
      { is: "rings-cross", rings: [0, 1], at: [10, 4] },
    ]);
    expect(polygonFaults(polygonOf(square, [hole, moved(1, 1)]))).toMatchObject([{ is: "rings-cross", rings: [1, 2] }]);
    const small = hole.map(([x, y]) => [5 + (x - 5) / 2, 5 + (y - 5) / 2] as const);
    expect(polygonFaults(polygonOf(square, [hole, small]))).toMatchObject([{ is: "hole-in-hole", ring: 2, within: 1 }]);
    expect(polygonFaults(polygonOf(square, [small, hole]))).toMatchObject([{ is: "hole-in-hole", ring: 1, within: 2 }]);
    expect(polygonFaults(polygonOf(square, [hole, hole]))).toMatchObject([{ is: "hole-in-hole" }]);
  });

  it("looks at each ring before it looks at how they lie", () => {
    expect(
      polygonFaults(
        polygonOf(square, [
          [
            [40, 40],
            [41, 41],
          ],
        ]),
      ),
    ).toEqual([{ is: "too-few-points", ring: 1, points: 2 }]);
  });
});
