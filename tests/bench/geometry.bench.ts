// How long the geometry takes. Run by hand: npx vitest bench --run --config tests/vitest.config.ts tests/bench/geometry
// Shapes come from formulas, so that every run measures the same.

import { bench, describe } from "vitest";
import { boxOf } from "../../src/geometry/box.ts";
import { areaFigure, type Figure } from "../../src/geometry/figure.ts";
import { indexBoxes } from "../../src/geometry/index-boxes.ts";
import { nearestPairs } from "../../src/geometry/near-pairs.ts";
import { nearest } from "../../src/geometry/nearest.ts";
import { grown, intersection, union } from "../../src/geometry/overlay.ts";
import type { Point } from "../../src/geometry/point.ts";
import { polygonOf } from "../../src/geometry/polygon.ts";
import { whereInRing } from "../../src/geometry/ring.ts";
import { cutAndFill } from "../../src/terrain/cut-and-fill.ts";
import { buildNet } from "../../src/terrain/net.ts";
import { sectionAlong } from "../../src/terrain/section.ts";
import { levelPlane } from "../../src/terrain/surface.ts";

function star(count: number, centre: Point): readonly Point[] {
  return Array.from({ length: count }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / count;
    const radius = 6 + 3 * Math.sin(7 * angle);
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

const [small, beside] = [star(12, [0, 0]), star(12, [25, 3])];
const [large, over] = [star(1000, [0, 0]), star(1000, [5, 3])];
const figureOf = (ring: readonly Point[]): Figure => areaFigure(polygonOf(ring));

describe("plane figures", () => {
  bench("clear distance, 12 against 12 vertices", () => void nearest(figureOf(small), figureOf(beside)));
  bench("every near pair, 12 against 12 vertices", () => void nearestPairs(figureOf(small), figureOf(beside), 10));
  bench("point in a ring of 1000", () => void whereInRing(large, [1, 1]));
  bench("shared area, 12 against 12 vertices", () =>
    void intersection([polygonOf(small)], [polygonOf(star(12, [5, 3]))]));
  bench("shared area, 1000 against 1000 vertices", () => void intersection([polygonOf(large)], [polygonOf(over)]));
  bench("1000 stars merged", () => {
    union(Array.from({ length: 1000 }, (_, i) => polygonOf(star(8, [9 * (i % 32), 9 * Math.floor(i / 32)]))));
  });
  bench("12 vertices grown by 3 m", () => void grown([polygonOf(small)], 3, { corners: "round" }));
});

describe("index", () => {
  const boxes = Array.from({ length: 5000 }, (_, i) => boxOf(star(4, [13 * (i % 70), 13 * Math.floor(i / 70)])));
  bench("5000 boxes, all within 5 m of each", () => {
    const index = indexBoxes(boxes);
    for (const box of boxes) if (box !== null) index.within(box, 5);
  });
});

describe("ground", () => {
  const points = Array.from({ length: 900 }, (_, i): Point => {
    const [column, row] = [i % 30, Math.floor(i / 30)];
    return [5 * column + Math.sin(i), 5 * row + Math.cos(3 * i)];
  });
  const bank = Array.from({ length: 29 }, (_, i) => 31 * i);
  const levels = points.map(([x, y]) => 0.02 * x + Math.sin(y / 20));
  const { net } = buildNet(points, [bank]);
  bench("net over 900 points with a breakline", () => void buildNet(points, [bank]));
  bench("cut and fill over 900 points", () => void (net === null ? null : cutAndFill({ net, levels }, levelPlane(1))));
  bench("section across 900 points", () => {
    if (net !== null)
      sectionAlong({ net, levels }, [
        [2, 2],
        [140, 131],
      ]);
  });
});
