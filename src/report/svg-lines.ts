// Lines on paper: paths, points at equal steps, lines beside a line, the scalloped ring of a crown.

import type { Point } from "../model/reading.ts";
import { figure } from "./markup.ts";

/** Path data of a line, or of a closed outline. */
export function pathOf(points: readonly Point[], end: "open" | "closed" = "open"): string {
  const steps = points.map(([x, y], index) => `${index === 0 ? "M" : "L"}${figure(x)},${figure(y)}`);
  return steps.length === 0 ? "" : steps.join("") + (end === "closed" ? "Z" : "");
}

export function circlePath([x, y]: Point, radius: number): string {
  const r = figure(radius);
  return `M${figure(x - radius)},${figure(y)}A${r},${r} 0 1 1 ${figure(x + radius)},${figure(y)}A${r},${r} 0 1 1 ${figure(x - radius)},${figure(y)}Z`;
}

/** A place on a line with the direction it runs in there (unit vector). */
export interface Station {
  readonly at: Point;
  readonly along: Point;
}

/** Most stations that one line is cut into; a longer line gets longer steps. */
const mostStations = 2000;

/** Places along a line, `step` apart, the first half a step in. */
export function stations(points: readonly Point[], step: number): readonly Station[] {
  const length = lengthOf(points);
  const gap = Math.max(step, length / mostStations);
  const found: Station[] = [];
  let next = gap / 2;
  let walked = 0;
  forEachSegment(points, (from, to, size) => {
    const along: Point = [(to[0] - from[0]) / size, (to[1] - from[1]) / size];
    for (; next <= walked + size; next += gap) {
      const part = next - walked;
      found.push({ at: [from[0] + along[0] * part, from[1] + along[1] * part], along });
    }
    walked += size;
  });
  return found;
}

export function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  forEachSegment(points, (_from, _to, size) => {
    sum += size;
  });
  return sum;
}

/** Calls back for each segment that has a length. */
export function forEachSegment(points: readonly Point[], visit: (from: Point, to: Point, size: number) => void): void {
  for (let index = 1; index < points.length; index++) {
    const from = points[index - 1];
    const to = points[index];
    if (!from || !to) continue;
    const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (size > 1e-9 && Number.isFinite(size)) visit(from, to, size);
  }
}

/** The line beside a line, `aside` to the right of its direction on paper; corners are mitred, at most three times over. */
export function beside(points: readonly Point[], aside: number): readonly Point[] {
  const normals: Point[] = [];
  const kept: Point[] = [];
  forEachSegment(points, (from, to, size) => {
    if (kept.length === 0) kept.push(from);
    kept.push(to);
    normals.push([-(to[1] - from[1]) / size, (to[0] - from[0]) / size]);
  });
  return kept.map(([x, y], index) => {
    const before = normals[index - 1] ?? normals[index] ?? [0, 0];
    const after = normals[index] ?? before;
    const sum: Point = [before[0] + after[0], before[1] + after[1]];
    const share = Math.max(2 / 3, (sum[0] * sum[0] + sum[1] * sum[1]) / 2);
    return [x + (sum[0] * aside) / share, y + (sum[1] * aside) / share];
  });
}

/** The ring of a crown: outward scallops about `lobe` wide. */
export function crownPath([x, y]: Point, radius: number, lobe: number): string {
  const count = Math.min(90, Math.max(7, Math.round((2 * Math.PI * radius) / lobe)));
  const on = (index: number): Point => {
    const angle = (2 * Math.PI * index) / count;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  };
  const r = figure(radius * Math.sin(Math.PI / count) * 1.15);
  const steps = Array.from({ length: count }, (_, index) => {
    const [toX, toY] = on(index + 1);
    return `A${r},${r} 0 0 1 ${figure(toX)},${figure(toY)}`;
  });
  const [startX, startY] = on(0);
  return `M${figure(startX)},${figure(startY)}${steps.join("")}Z`;
}

/** Middle of a line by length; of a single point, the point. */
export function middleOf(points: readonly Point[]): Station | null {
  const [first] = points;
  if (!first) return null;
  const length = lengthOf(points);
  if (length === 0) return { at: first, along: [1, 0] };
  return stations(points, length)[0] ?? { at: first, along: [1, 0] };
}

/** Centre of an outline by area; where that is no help, the mean of its corners. */
export function centreOf(points: readonly Point[]): Point {
  const [origin] = points;
  if (!origin) return [0, 0];
  let area = 0;
  let x = 0;
  let y = 0;
  points.forEach((from, index) => {
    const to = points[(index + 1) % points.length] ?? from;
    const [ax, ay, bx, by] = [from[0] - origin[0], from[1] - origin[1], to[0] - origin[0], to[1] - origin[1]];
    const cross = ax * by - bx * ay;
    area += cross;
    x += (ax + bx) * cross;
    y += (ay + by) * cross;
  });
  if (Math.abs(area) > 1e-6) return [origin[0] + x / (3 * area), origin[1] + y / (3 * area)];
  const mean = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  return [mean(0), mean(1)];
}
