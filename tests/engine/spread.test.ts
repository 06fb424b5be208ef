// Doubt by propagation against Monte Carlo (seeded), and its independence of how the plan is turned.

import { describe, expect, it } from "vitest";
import { readPlain, spread } from "../../src/engine/spread.ts";
import { distance } from "../../src/geometry/point.ts";
import { ringArea } from "../../src/geometry/ring.ts";
import { footOn } from "../../src/geometry/segment.ts";
import { jumpAskedFor } from "../../src/measures/equivalent-jump-height.ts";
import type { NumberBook, Quantity, Read } from "../../src/model/quantity.ts";
import type { Point } from "../../src/model/reading.ts";
import { bookOf, type Entry, normalDraws, seeded } from "./numbers.ts";

/** Standard deviation of a value over draws of all causes. */
function monteCarlo(value: (read: Read) => number, book: NumberBook, draws: number, seed: number): number {
  const normal = normalDraws(seeded(seed));
  const causes = [...new Set(book.sways.flatMap((sway) => [...sway.keys()]))];
  let sum = 0;
  let squares = 0;
  for (let draw = 0; draw < draws; draw++) {
    const z = new Map(causes.map((cause) => [cause, normal()]));
    const result = value((quantity: Quantity) => {
      let moved = book.values[quantity.id] as number;
      for (const [cause, part] of book.sways[quantity.id] ?? []) moved += part * (z.get(cause) as number);
      return moved;
    });
    sum += result;
    squares += result * result;
  }
  return Math.sqrt(squares / draws - (sum / draws) ** 2);
}

const point = (read: Read, q: readonly Quantity[], i: number): Point => [
  read(q[2 * i] as Quantity),
  read(q[2 * i + 1] as Quantity),
];

interface Case {
  readonly name: string;
  readonly entries: readonly Entry[];
  readonly value: (read: Read, q: readonly Quantity[]) => number;
}

const smooth: readonly Case[] = [
  {
    name: "distance of two pegs",
    entries: [
      [0, 0.02],
      [0, 0.02],
      [12.4, 0.02],
      [5.3, 0.03],
    ],
    value: (r, q) => distance(point(r, q, 0), point(r, q, 1)),
  },
  {
    name: "pegs that share a tape",
    entries: [
      { value: 0, sway: {} },
      { value: 0, sway: {} },
      { value: 30, sway: { 1000: 0.02 } },
      { value: 0, sway: { 1001: 0.01 } },
      { value: 55, sway: { 1000: 0.035 } },
      { value: 8, sway: { 1001: 0.01, 1002: 0.02 } },
    ],
    value: (r, q) => distance(point(r, q, 1), point(r, q, 2)),
  },
  {
    name: "peg to the middle of a wall",
    entries: [
      [4, 0.02],
      [3, 0.02],
      [0, 0.02],
      [0, 0.02],
      [10, 0.02],
      [1, 0.02],
    ],
    value: (r, q) => footOn([point(r, q, 1), point(r, q, 2)], point(r, q, 0)).distance,
  },
  {
    name: "fall of a drain",
    entries: [
      [49.094, 0.003],
      [48.94, 0.003],
      [15, 0.02],
    ],
    value: (r, q) => (r(q[0] as Quantity) - r(q[1] as Quantity)) / r(q[2] as Quantity),
  },
  {
    name: "area of a yard",
    entries: [
      [0, 0.03],
      [0, 0.03],
      [18.2, 0.03],
      [0.4, 0.03],
      [17.6, 0.03],
      [12.1, 0.03],
      [-0.3, 0.03],
      [11.5, 0.03],
    ],
    value: (r, q) => ringArea([0, 1, 2, 3].map((i) => point(r, q, i))),
  },
  {
    name: "rise asked for by a leap",
    entries: [
      [1.5, 0.05],
      [0.8, 0.03],
    ],
    value: (r, q) => jumpAskedFor(r(q[0] as Quantity), r(q[1] as Quantity)),
  },
];

describe("against Monte Carlo, 100 000 draws", () => {
  it.each(smooth)("$name", ({ entries, value }) => {
    const { book, quantities } = bookOf(entries);
    const live = (read: Read) => value(read, quantities);
    const propagated = spread(live, readPlain(book), book).u;
    const drawn = monteCarlo(live, book, 100_000, 20261125);
    expect(Math.abs(propagated / drawn - 1)).toBeLessThan(0.03);
  });
  it("gives the published area doubt (209.605 m2, u 0.644; COMPUTED both ways)", () => {
    const yard = smooth[4] as Case;
    const { book, quantities } = bookOf(yard.entries);
    const { value, u } = spread((read) => yard.value(read, quantities), readPlain(book), book);
    expect(value).toBeCloseTo(209.605, 3);
    expect(u).toBeCloseTo(0.644, 3);
  });
  it("gives the published distance doubt (13.48518 m, u 0.036056; COMPUTED)", () => {
    const { book, quantities } = bookOf([
      [0, 0.02],
      [0, 0.02],
      [12.4, 0.03],
      [5.3, 0.03],
    ]);
    const { value, u } = spread(
      (read) => distance(point(read, quantities, 0), point(read, quantities, 1)),
      readPlain(book),
      book,
    );
    expect(value).toBeCloseTo(13.48518, 5);
    expect(u).toBeCloseTo(0.036056, 5);
  });
});

/** A corner of a building seen from a peg: both walls are as near. Each candidate (the corner) has one doubt at every angle. */
describe("the corner gives one doubt at every angle", () => {
  const doubtAt = (angle: number, mirror: 1 | -1, shift: Point): number => {
    const turn = ([x, y]: Point): Point => [
      shift[0] + Math.cos(angle) * mirror * x - Math.sin(angle) * y,
      shift[1] + Math.sin(angle) * mirror * x + Math.cos(angle) * y,
    ];
    const spots = [turn([-2, -1.5]), turn([0, 0])];
    const { book, quantities } = bookOf(
      spots.flatMap(([x, y]): Entry[] => [
        [x, 0.019],
        [y, 0.019],
      ]),
    );
    return spread((read) => distance(point(read, quantities, 0), point(read, quantities, 1)), readPlain(book), book).u;
  };
  it("moved, turned and mirrored, to 1e-6", () => {
    const first = doubtAt(0, 1, [0, 0]);
    expect(first).toBeCloseTo(0.019 * Math.SQRT2, 6);
    for (let degrees = 0; degrees < 360; degrees += 7) {
      for (const mirror of [1, -1] as const)
        expect(Math.abs(doubtAt((degrees * Math.PI) / 180, mirror, [431.2, -88.7]) - first)).toBeLessThan(1e-6);
    }
  });
});

describe("kinks", () => {
  it("takes the larger one-sided change at a touch and says so", () => {
    const { book, quantities } = bookOf([
      [0, 0.02],
      [0, 0.02],
      [0, 0.02],
      [0, 0.02],
    ]);
    const result = spread(
      (read) => distance(point(read, quantities, 0), point(read, quantities, 1)),
      readPlain(book),
      book,
    );
    expect(result.kinked).toBe(true);
    expect(result.u).toBeGreaterThan(0.02);
  });
  it("does not call a straight reading kinked", () => {
    const { book, quantities } = bookOf([
      [3, 0.1],
      [4, 0.1],
    ]);
    expect(
      spread((read) => read(quantities[0] as Quantity) - read(quantities[1] as Quantity), readPlain(book), book).kinked,
    ).toBe(false);
  });
});

describe("shares", () => {
  it("are squares of contributions over the whole", () => {
    const { book, quantities } = bookOf([
      [10, 0.03],
      [4, 0.04],
    ]);
    const { u, contributions } = spread(
      (read) => read(quantities[0] as Quantity) + read(quantities[1] as Quantity),
      readPlain(book),
      book,
    );
    expect(u).toBeCloseTo(0.05, 9);
    expect([...contributions.values()].map((part) => (part / u) ** 2)).toEqual([
      expect.closeTo(0.36, 9),
      expect.closeTo(0.64, 9),
    ]);
  });
  it("adds the method's own doubt in squares", () => {
    const { book, quantities } = bookOf([[10, 0.03]]);
    expect(spread((read) => read(quantities[0] as Quantity), readPlain(book), book, 0.04).u).toBeCloseTo(0.05, 9);
  });
});
