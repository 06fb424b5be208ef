// The ground that a part of a vehicle must stay on, and its boundary in typed arrays.

import type { Point } from "../model/reading.ts";

/**
 * Ground as closed rings of plane metres, even-odd: outlines and their holes. No two rings may overlap or share an
 * edge (join them first). `obstacles` are filled rings that may lie anywhere, also across each other and the outline.
 */
export interface Ground {
  readonly rings: readonly (readonly Point[])[];
  readonly obstacles?: readonly (readonly Point[])[];
}

/** A boundary: edge i runs from (ax, ay)[i] to (bx, by)[i]; every vertex is the start of one edge. */
export interface Boundary {
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  /** First edge of each ring, and the count at the end; rings of the outline come before the obstacles. */
  readonly ringStarts: readonly number[];
  readonly outlineRings: number;
}

/** Boundary of a ground. Vertices that repeat the one before are left out. */
export function boundaryOf(ground: Ground): Boundary {
  const rings = [...ground.rings, ...(ground.obstacles ?? [])].map(withoutRepeats);
  const count = rings.reduce((sum, ring) => sum + ring.length, 0);
  const [ax, ay, bx, by] = [0, 0, 0, 0].map(() => new Float64Array(count)) as Coordinates;
  const ringStarts = [0];
  let edge = 0;
  for (const ring of rings) {
    for (const [i, from] of ring.entries()) {
      const to = ring[(i + 1) % ring.length] ?? from;
      ax[edge] = from[0];
      ay[edge] = from[1];
      bx[edge] = to[0];
      by[edge] = to[1];
      edge += 1;
    }
    ringStarts.push(edge);
  }
  return { count, ax, ay, bx, by, ringStarts, outlineRings: ground.rings.length };
}

type Coordinates = [Float64Array, Float64Array, Float64Array, Float64Array];

function withoutRepeats(ring: readonly Point[]): readonly Point[] {
  return ring.filter((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length];
    return before === undefined || ring.length === 1 || before[0] !== point[0] || before[1] !== point[1];
  });
}

/** Whether a point lies on the ground: inside the outline by even-odd and in no obstacle. Undecided on an edge. */
export function liesOnGround(boundary: Boundary, x: number, y: number): boolean {
  let inOutline = false;
  for (let ring = 0; ring + 1 < boundary.ringStarts.length; ring++) {
    const odd = crossesOddly(boundary, ring, x, y);
    if (ring < boundary.outlineRings) inOutline = inOutline !== odd;
    else if (odd) return false;
  }
  return inOutline;
}

function crossesOddly(boundary: Boundary, ring: number, x: number, y: number): boolean {
  const { ax, ay, bx, by, ringStarts } = boundary;
  let odd = false;
  for (let i = ringStarts[ring]!; i < ringStarts[ring + 1]!; i++) {
    if (ay[i]! > y === by[i]! > y) continue;
    if (x < ax[i]! + ((y - ay[i]!) / (by[i]! - ay[i]!)) * (bx[i]! - ax[i]!)) odd = !odd;
  }
  return odd;
}
