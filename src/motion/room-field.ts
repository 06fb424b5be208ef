// How far every place is from the boundary of its ground, on a square grid: a quick first look for a search.

import type { Checked } from "./checked.ts";
import { liesOnGround } from "./ground.ts";
import type { Boundary } from "./ground.ts";
import type { Box } from "./lattice.ts";
import type { Pose } from "./pose.ts";

/** Side of a square, m; a place lies no farther than 0.71 of it from the middle of its square. */
const square = 0.25;
export const fieldError = square * Math.SQRT1_2;

/** Distance from the boundary (m), negative off the ground, to within `fieldError`. */
export interface RoomField {
  readonly box: Box;
  readonly columns: number;
  readonly rows: number;
  readonly distance: Float32Array;
}

/** The field over a box, seen from the middles of its squares. */
export function roomField(boundary: Boundary, box: Box): RoomField {
  const columns = Math.max(1, Math.ceil((box.right - box.left) / square));
  const rows = Math.max(1, Math.ceil((box.high - box.low) / square));
  const distance = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [x, y] = [box.left + (column + 0.5) * square, box.low + (row + 0.5) * square];
      const sign = liesOnGround(boundary, x, y) ? 1 : -1;
      distance[row * columns + column] = sign * distanceFrom(boundary, x, y);
    }
  }
  return { box, columns, rows, distance };
}

function distanceFrom(boundary: Boundary, x: number, y: number): number {
  const { ax, ay, bx, by } = boundary;
  let squared = Infinity;
  for (let i = 0; i < boundary.count; i++) {
    const [px, py] = [x - ax[i]!, y - ay[i]!];
    const [dx, dy] = [bx[i]! - ax[i]!, by[i]! - ay[i]!];
    const t = Math.max(0, Math.min(1, (px * dx + py * dy) / (dx * dx + dy * dy)));
    squared = Math.min(squared, (px - t * dx) ** 2 + (py - t * dy) ** 2);
  }
  return Math.sqrt(squared);
}

/** Room at a place; minus infinity beyond the field. */
export function roomAt({ box, columns, rows, distance }: RoomField, x: number, y: number): number {
  const column = Math.floor((x - box.left) / square);
  const row = Math.floor((y - box.low) / square);
  if (column < 0 || row < 0 || column >= columns || row >= rows) return -Infinity;
  return distance[row * columns + column]!;
}

/** A rectangle, or the two tyres of an axle, as equal circles along the middle line, looked at in the field of its ground. */
export interface Probe {
  readonly field: RoomField;
  /** Radius of circles that cover it, and of circles that it covers, m. */
  readonly covers: number;
  readonly within: number;
  /** Middles of the circles in the frame of the axle, m. */
  readonly along: readonly number[];
}

/** Probes of a body and its tyres; fields are made once for every ground. */
export function probesOf(parts: readonly Checked[], box: Box, fields: Map<Boundary, RoomField>): readonly Probe[] {
  return parts.flatMap(({ boundary, rectangle, envelope }): readonly Probe[] => {
    const [back, front, , left] = rectangle as unknown as readonly [number, number, number, number];
    // The right tyre of an axle goes with the left one.
    if (envelope.part === "tyre" && left <= 0) return [];
    const field = fields.get(boundary) ?? roomField(boundary, box);
    fields.set(boundary, field);
    const count = Math.max(1, Math.ceil((front - back) / left));
    const piece = (front - back) / count;
    const along = Array.from({ length: count }, (_, i) => back + (i + 0.5) * piece);
    return [{ field, covers: Math.hypot(left, piece / 2), within: left, along }];
  });
}

/** Least room of the middles of a probe at a pose, m. */
export function roomOfProbe({ field, along }: Probe, pose: Pose): number {
  const [c, s] = [Math.cos(pose.heading), Math.sin(pose.heading)];
  let least = Infinity;
  for (const at of along) least = Math.min(least, roomAt(field, pose.x + at * c, pose.y + at * s));
  return least;
}
