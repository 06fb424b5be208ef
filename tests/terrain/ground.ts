// Ground that several tests stand on, and random points for the net.

import * as fc from "fast-check";
import type { Point } from "../../src/geometry/point.ts";
import { buildNet, type Net } from "../../src/terrain/net.ts";
import type { Surface } from "../../src/terrain/surface.ts";

/** Every property test runs from this seed, so that a failure comes back. */
export const seeded = { seed: 20260502, numRuns: 150 };

/** Points on a grid of 10 cm, so that some lie on one line; none twice. */
export const scattered: fc.Arbitrary<readonly Point[]> = fc
  .uniqueArray(fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 })), {
    minLength: 3,
    maxLength: 40,
    selector: ([x, y]) => `${x} ${y}`,
  })
  .map((points) => points.map(([x, y]): Point => [x / 10, y / 10]));

export function netOver(points: readonly Point[], breaklines: readonly (readonly number[])[] = []): Net {
  const { net } = buildNet(points, breaklines);
  if (net === null) throw new Error("these points make a net");
  return net;
}

/** A surface from points with levels. */
export function surfaceOver(
  spots: readonly (readonly [number, number, number])[],
  breaklines: readonly (readonly number[])[] = [],
): Surface {
  const net = netOver(
    spots.map(([x, y]): Point => [x, y]),
    breaklines,
  );
  return { net, levels: spots.map(([, , z]) => z) };
}

/** A grid of `size` by `size` points 5 m apart over a formula. */
export function gridSurface(size: number, level: (x: number, y: number) => number): Surface {
  const spots = Array.from({ length: size * size }, (_, i) => {
    const [x, y] = [5 * (i % size), 5 * Math.floor(i / size)];
    return [x, y, level(x, y)] as const;
  });
  return surfaceOver(spots);
}
