// What the drawing is given: walls with their gaps, posts as wide as they are.

import { describe, expect, it } from "vitest";
import { readPlain } from "../../src/engine/spread.ts";
import { pictureOf } from "../../src/site/picture.ts";
import { planWith } from "../measures/rig.ts";

const marksOf = (keys: Readonly<Record<string, unknown>>) => {
  const plan = planWith(keys);
  return pictureOf(plan, 0, readPlain(plan.numbers), null).marks;
};

describe("a wall with a gateway", () => {
  const wall = {
    line: [
      [0, 0],
      [20, 0],
    ],
    thickness: 0.5,
    existing: true,
  };
  it("is drawn in two pieces, and written at the longer", () => {
    const marks = marksOf({ walls: { march: { ...wall, gaps: [{ from: 6, to: 9, kind: "gateway" }] } } });
    expect(marks.map((mark) => [mark.points, mark.label])).toEqual([
      [
        [
          [0, 0],
          [6, 0],
        ],
        "",
      ],
      [
        [
          [9, 0],
          [20, 0],
        ],
        "march",
      ],
    ]);
    for (const mark of marks) expect(mark.width).toBe(0.5);
  });
  it("is drawn whole without one", () => {
    expect(marksOf({ walls: { march: wall } }).map((mark) => mark.points)).toEqual([
      [
        [0, 0],
        [20, 0],
      ],
    ]);
  });
});

describe("a post given by its middle", () => {
  it("is drawn as wide as it is across", () => {
    const [mark] = marksOf({ obstacles: { bin: { at: [3, 4], across: 2.4, kind: "other", existing: true } } });
    expect(mark).toMatchObject({ form: "circle", radius: 1.2, points: [[3, 4]] });
  });
});
