// Expected numbers: by hand (COMPUTED).
import { describe, expect, it } from "vitest";
import { lengthWithin, stretchesOutside, stretchesWithin } from "../../src/geometry/clip-line.ts";
import { polygonOf } from "../../src/geometry/polygon.ts";
import { hole, square } from "./figures.ts";

const frame = polygonOf(square, [hole]);

describe("stretches of a line", () => {
  it("stop at the edge and at the hole", () => {
    const within = stretchesWithin(
      [
        [-5, 5],
        [15, 5],
      ],
      [frame],
    );
    expect(within).toEqual([
      {
        from: 5,
        to: 9,
        line: [
          [0, 5],
          [4, 5],
        ],
      },
      {
        from: 11,
        to: 15,
        line: [
          [6, 5],
          [10, 5],
        ],
      },
    ]);
    expect(
      stretchesOutside(
        [
          [-5, 5],
          [15, 5],
        ],
        [frame],
      ).map(({ from, to }) => [from, to]),
    ).toEqual([
      [0, 5],
      [9, 11],
      [15, 20],
    ]);
    expect(
      lengthWithin(
        [
          [-5, 5],
          [15, 5],
        ],
        [frame],
      ),
    ).toBe(8);
  });

  it("keep their bends, and go on over repeated points", () => {
    const [only] = stretchesWithin(
      [
        [2, 2],
        [2, 2],
        [8, 2],
        [8, 8],
      ],
      [frame],
    );
    expect(only).toEqual({
      from: 0,
      to: 12,
      line: [
        [2, 2],
        [8, 2],
        [8, 8],
      ],
    });
  });

  it("count a run along the edge as within", () => {
    expect(
      lengthWithin(
        [
          [-2, 0],
          [12, 0],
        ],
        [frame],
      ),
    ).toBe(10);
    expect(
      stretchesWithin(
        [
          [-2, -1],
          [12, -1],
        ],
        [frame],
      ),
    ).toEqual([]);
  });

  it("join over areas that touch or overlap", () => {
    const next = polygonOf(square.map(([x, y]) => [x + 10, y]));
    expect(
      stretchesWithin(
        [
          [1, 1],
          [19, 1],
        ],
        [frame, next],
      ).map(({ from, to }) => [from, to]),
    ).toEqual([[0, 18]]);
    expect(
      lengthWithin(
        [
          [1, 1],
          [9, 1],
        ],
        [frame, frame],
      ),
    ).toBe(8);
  });

  it("find nothing in nothing", () => {
    expect(stretchesWithin([], [frame])).toEqual([]);
    expect(
      stretchesWithin(
        [
          [1, 1],
          [2, 2],
        ],
        [],
      ),
    ).toEqual([]);
    expect(
      stretchesOutside(
        [
          [1, 1],
          [2, 1],
        ],
        [],
      ),
    ).toEqual([
      {
        from: 0,
        to: 1,
        line: [
          [1, 1],
          [2, 1],
        ],
      },
    ]);
  });
});
