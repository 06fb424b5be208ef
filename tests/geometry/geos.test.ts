// Second opinion: every expected number is what GEOS 3.11 says of the same shape (COMPUTED, stored by geos-fixture.py).
import { describe, expect, it } from "vitest";
import { stretchesOutside, lengthWithin } from "../../src/geometry/clip-line.ts";
import { convexHull } from "../../src/geometry/convex-hull.ts";
import { areaFigure, lineFigure } from "../../src/geometry/figure.ts";
import { lineLength } from "../../src/geometry/line.ts";
import { distanceTo, nearest } from "../../src/geometry/nearest.ts";
import { difference, grown, intersection, stripAlong, union } from "../../src/geometry/overlay.ts";
import { polygonOf, totalArea, type Polygon } from "../../src/geometry/polygon.ts";
import { polygonFaults } from "../../src/geometry/ring-check.ts";
import { ringArea, ringCentroid } from "../../src/geometry/ring.ts";
import { geos } from "./geos.ts";

// Areas: the grid of 10^-6 m moves an edge of 50 m by at most 5e-5 m2. Lengths: rounding only.
const areaSlack = 2e-4;
const lengthSlack = 1e-9;
const areaOf = (found: readonly Polygon[] | null): number => (found === null ? Number.NaN : totalArea(found));

describe(`against ${geos.source}`, () => {
  it("clear distances", () => {
    for (const { a, b, distance, line, lineDistance, point, pointDistance } of geos.pairs) {
      const other = areaFigure(polygonOf(b));
      expect(Math.abs((nearest(areaFigure(polygonOf(a)), other)?.distance ?? 1e9) - distance)).toBeLessThan(
        lengthSlack,
      );
      expect(Math.abs((nearest(lineFigure(line), other)?.distance ?? 1e9) - lineDistance)).toBeLessThan(lengthSlack);
      const off = distanceTo(areaFigure(polygonOf(a)), point);
      expect(Math.abs((off ?? 1e9) - pointDistance)).toBeLessThan(lengthSlack);
    }
    expect(geos.pairs.length).toBeGreaterThan(80);
    expect(geos.pairs.filter(({ distance }) => distance > 0).length).toBeGreaterThan(10);
  });

  it("areas shared, covered and left, also where edges all but coincide", () => {
    for (const { a, b, ...wanted } of geos.pairs) {
      const [one, two] = [[polygonOf(a)], [polygonOf(b)]];
      expect(Math.abs(areaOf(intersection(one, two)) - wanted.intersection)).toBeLessThan(areaSlack);
      expect(Math.abs(areaOf(union([...one, ...two])) - wanted.union)).toBeLessThan(areaSlack);
      expect(Math.abs(areaOf(difference(one, two)) - wanted.difference)).toBeLessThan(areaSlack);
    }
  });

  it("areas made smaller, and strips along a line", () => {
    for (const { a, line, inset, strip } of geos.pairs) {
      expect(Math.abs(areaOf(grown([polygonOf(a)], -1, { corners: "mitre" })) - inset)).toBeLessThan(areaSlack);
      const along = stripAlong(line.slice(0, 2), 1.5, { ends: "square", corners: "round" });
      expect(Math.abs(areaOf(along) - strip)).toBeLessThan(areaSlack);
    }
  });

  it("stretches of a line within an area", () => {
    for (const { a, line, lineWithin } of geos.pairs) {
      const areas = [polygonOf(a)];
      const within = lengthWithin(line, areas);
      const outside = stretchesOutside(line, areas).reduce((sum, { from, to }) => sum + to - from, 0);
      expect(Math.abs(within - lineWithin)).toBeLessThan(1e-7);
      expect(Math.abs(within + outside - lineLength(line))).toBeLessThan(1e-7);
    }
  });

  it("centroids and hulls", () => {
    for (const { a, centroid, hull } of geos.pairs) {
      expect(Math.abs(ringArea(convexHull(a)) - hull)).toBeLessThan(1e-9);
      expect(ringCentroid(a)?.[0]).toBeCloseTo(centroid[0], 9);
      expect(ringCentroid(a)?.[1]).toBeCloseTo(centroid[1], 9);
    }
  });

  it.each(geos.shapes)("agrees whether $name is a sound area ($says)", ({ outline, holes, valid }) => {
    expect(polygonFaults(polygonOf(outline, holes)).length === 0).toBe(valid);
  });
});
