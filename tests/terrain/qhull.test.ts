// The net against an independent triangulation: Qhull through SciPy, values stored with the script that made them
// (make-nets.py). COMPUTED.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/point.ts";
import { ringArea } from "../../src/geometry/ring.ts";
import { cutAndFill } from "../../src/terrain/cut-and-fill.ts";
import { buildNet } from "../../src/terrain/net.ts";
import { cornersOf, groundAt, levelPlane, planeOf, slopeOf, type Surface } from "../../src/terrain/surface.ts";

interface ByQhull {
  readonly count: number;
  readonly shift: number;
  readonly triangles: readonly number[] | null;
  readonly number: number;
  readonly levels: readonly (number | null)[];
  readonly net_volume: number;
  readonly steepest: number;
  readonly mean_slope: number;
}

const table = new URL("../tables/nets.qhull.json", import.meta.url);
const { nets } = JSON.parse(readFileSync(table, "utf8")) as { nets: readonly ByQhull[] };

/** The same field of points by the same formula. */
function fieldOf({ count, shift }: ByQhull): Surface {
  const points = Array.from({ length: count }, (_, i): Point => [
    ((i * 0.7548776662 + shift) % 1) * 60,
    ((i * 0.569840291 + 2 * shift) % 1) * 40,
  ]);
  const levels = points.map(
    ([east, north]) => 100 + 0.04 * east + 0.8 * Math.sin(north / 7) + 0.5 * Math.cos(east / 9),
  );
  const { net } = buildNet(points, []);
  if (net === null) throw new Error("these points make a net");
  return { net, levels };
}

const triangleNumbers = ({ net }: Surface): readonly number[] =>
  Array.from({ length: net.corners.length / 3 }, (_, t) => t);

describe.each(nets.map((net) => [net.count, net] as const))("%d levels, against Qhull", (_, expected) => {
  const surface = fieldOf(expected);
  const numbers = triangleNumbers(surface);

  it("makes the same triangles", () => {
    expect(numbers.length).toBe(expected.number);
    if (expected.triangles === null) return;
    const own = numbers
      .map((t) => [0, 1, 2].map((k) => surface.net.corners[3 * t + k] as number).sort((a, b) => a - b))
      .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0) || (a[2] ?? 0) - (b[2] ?? 0));
    expect(own.flat()).toEqual(expected.triangles);
  });
  it("gives the same levels between them, and none outside", () => {
    expected.levels.forEach((level, i) => {
      const at: Point = [((i * 0.3819660113) % 1) * 60, ((i * 0.7236067977) % 1) * 40];
      const own = groundAt(surface, at)?.level ?? null;
      if (level === null) expect(own).toBeNull();
      else expect(Math.abs((own ?? Number.NaN) - level)).toBeLessThan(1e-10);
    });
  });
  it("gives the same slopes and the same volume above level 100", () => {
    const sloped = numbers.map((t) => {
      const plane = planeOf(surface, t);
      return { slope: plane === null ? Number.NaN : slopeOf(plane), area: ringArea(cornersOf(surface, t).points) };
    });
    const whole = sloped.reduce((sum, { area }) => sum + area, 0);
    const mean = sloped.reduce((sum, { slope, area }) => sum + slope * area, 0) / whole;
    // Both work in doubles, to 1e-16; a triangle some thousand times as long as wide magnifies that as much.
    expect(Math.abs(Math.max(...sloped.map(({ slope }) => slope)) / expected.steepest - 1)).toBeLessThan(1e-10);
    expect(Math.abs(mean / expected.mean_slope - 1)).toBeLessThan(1e-12);
    const { cut, fill } = cutAndFill(surface, levelPlane(100));
    expect(Math.abs(cut - fill - expected.net_volume)).toBeLessThan(1e-9);
  });
});
