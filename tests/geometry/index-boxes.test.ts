import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxDistance, boxesMeet, type Box } from "../../src/geometry/box.ts";
import { indexBoxes } from "../../src/geometry/index-boxes.ts";
import { plotPoint, seeded } from "./figures.ts";

const at = (east: number, north: number, size = 1): Box => ({
  west: east,
  south: north,
  east: east + size,
  north: north + size,
});
const anyBox = fc.tuple(plotPoint, fc.integer({ min: 0, max: 500 })).map(([[x, y], cm]) => at(x, y, cm / 100));

describe("index of boxes", () => {
  it("answers in order of the list, passing over what has no box", () => {
    const index = indexBoxes([at(0, 0), null, at(5, 0), at(Number.NaN, 0), at(0.5, 0.5)]);
    expect(index.meeting(at(1, 1))).toEqual([0, 4]);
    expect(index.within(at(2, 0), 2)).toEqual([0, 2, 4]);
    expect(index.within(at(2, 0), 1.9)).toEqual([0, 4]);
  });

  it("measures reach round the corner: 3-4-5", () => {
    const index = indexBoxes([at(4, 5)]);
    expect(index.within(at(0, 0), 5)).toEqual([0]);
    expect(index.within(at(0, 0), 4.99)).toEqual([]);
  });

  it("finds nothing in nothing", () => {
    expect(indexBoxes([]).meeting(at(0, 0))).toEqual([]);
    expect(indexBoxes([null]).within(at(0, 0), 1e9)).toEqual([]);
  });

  it("finds what looking at every box finds", () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 60 }), anyBox, fc.integer({ min: 0, max: 900 }), (boxes, box, cm) => {
        const index = indexBoxes(boxes);
        const all = boxes.map((_, i) => i);
        expect(index.meeting(box)).toEqual(all.filter((i) => boxesMeet(boxes[i] as Box, box)));
        expect(index.within(box, cm / 100)).toEqual(all.filter((i) => boxDistance(boxes[i] as Box, box) <= cm / 100));
      }),
      seeded,
    );
  });
});
