// Shapes that several tests of the geometry use, and the moves under which nothing may change.

import * as fc from "fast-check";
import type { Point } from "../../src/geometry/point.ts";

/** Every property test runs from this seed, so that a failure comes back. */
export const seeded = { seed: 20260501, numRuns: 300 };

export const square: readonly Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
export const hole: readonly Point[] = [
  [4, 4],
  [6, 4],
  [6, 6],
  [4, 6],
];

/** A point of a plot, on a centimetre grid so that touching and overlapping do happen. */
export const plotPoint: fc.Arbitrary<Point> = fc
  .tuple(fc.integer({ min: -2000, max: 2000 }), fc.integer({ min: -2000, max: 2000 }))
  .map(([east, north]): Point => [east / 100, north / 100]);

/** A star-shaped ring about a centre: simple by construction, counter-clockwise. */
export const starRing: fc.Arbitrary<readonly Point[]> = fc
  .tuple(plotPoint, fc.array(fc.integer({ min: 100, max: 1500 }), { minLength: 3, maxLength: 12 }))
  .map(([[east, north], radii]) =>
    radii.map((radius, i): Point => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [east + (radius / 100) * Math.cos(angle), north + (radius / 100) * Math.sin(angle)];
    }),
  );

export interface Move {
  readonly east: number;
  readonly north: number;
  readonly angle: number;
  readonly mirrored: 1 | -1;
}

/** A shift, a turn and perhaps a mirroring. */
export const anyMove: fc.Arbitrary<Move> = fc.record({
  east: fc.integer({ min: -5000, max: 5000 }),
  north: fc.integer({ min: -5000, max: 5000 }),
  angle: fc.integer({ min: 0, max: 628 }).map((hundredths) => hundredths / 100),
  mirrored: fc.constantFrom<(1 | -1)[]>(1, -1),
});

export function moved(move: Move, [x, y]: Point): Point {
  const east = x * move.mirrored;
  const cosine = Math.cos(move.angle);
  const sine = Math.sin(move.angle);
  return [move.east + east * cosine - y * sine, move.north + east * sine + y * cosine];
}

export function allMoved(move: Move, points: readonly Point[]): readonly Point[] {
  return points.map((point) => moved(move, point));
}
