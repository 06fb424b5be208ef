// Edges of a ground seen from the ground: unit directions, normals that point onto it, and the corners that jut in.

import type { Checked } from "./checked.ts";
import { liesOnGround } from "./ground.ts";
import type { Boundary } from "./ground.ts";

/** A prepared envelope with what is needed to tell how far it is from each edge, and which way leads off it. */
export interface Walls {
  readonly checked: Checked;
  readonly length: Float64Array;
  /** Unit direction of each edge. */
  readonly ex: Float64Array;
  readonly ey: Float64Array;
  /** Unit normal of each edge towards the ground. */
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  /** 1 where the vertex at the start of an edge juts into the ground. */
  readonly juts: Uint8Array;
}

/** How far beside an edge it is looked for the ground, m. */
const beside = 1e-5;

export function wallsOf(checked: Checked): Walls {
  const { boundary } = checked;
  const { count, ax, ay, bx, by } = boundary;
  const [length, ex, ey, nx, ny] = [0, 0, 0, 0, 0].map(() => new Float64Array(count)) as FiveArrays;
  for (let i = 0; i < count; i++) {
    const long = Math.hypot(bx[i]! - ax[i]!, by[i]! - ay[i]!);
    length[i] = long;
    ex[i] = (bx[i]! - ax[i]!) / long;
    ey[i] = (by[i]! - ay[i]!) / long;
    const middleX = (ax[i]! + bx[i]!) / 2;
    const middleY = (ay[i]! + by[i]!) / 2;
    const toLeft = liesOnGround(boundary, middleX - beside * ey[i]!, middleY + beside * ex[i]!) ? 1 : -1;
    nx[i] = -ey[i]! * toLeft;
    ny[i] = ex[i]! * toLeft;
  }
  return { checked, length, ex, ey, nx, ny, juts: juttingVertices(boundary, { ex, ey, nx, ny }) };
}

type FiveArrays = [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];

interface Directions {
  readonly ex: Float64Array;
  readonly ey: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
}

/** A vertex juts in where the outgoing edge bends away from the ground side of the incoming one. */
function juttingVertices(boundary: Boundary, { ex, ey, nx, ny }: Directions): Uint8Array {
  const juts = new Uint8Array(boundary.count);
  const { ringStarts } = boundary;
  for (let ring = 0; ring + 1 < ringStarts.length; ring++) {
    for (let i = ringStarts[ring]!; i < ringStarts[ring + 1]!; i++) {
      const before = i === ringStarts[ring]! ? ringStarts[ring + 1]! - 1 : i - 1;
      juts[i] = ex[i]! * nx[before]! + ey[i]! * ny[before]! < -1e-9 ? 1 : 0;
    }
  }
  return juts;
}
