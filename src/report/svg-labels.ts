// Where words go on a drawing: one after another, each in the first place that is free, with a leader line if that is far off.

import type { Point } from "../model/reading.ts";
import { forEachSegment } from "./svg-lines.ts";
import type { Box } from "./svg-paper.ts";

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A place for a box of words, wanted best first. */
export interface Candidate {
  readonly x: number;
  readonly y: number;
  /** What it costs to stand here rather than in the best place. */
  readonly cost: number;
  /** The point it belongs to, at which a leader line ends. */
  readonly to: Point;
}

/** A box that has its place. */
export interface Placed {
  readonly box: Box;
  readonly to: Point;
}

/** Cost of one line of the drawing under the words. */
const lineCost = 1.5;
const cell = 12;

/** What is taken already: boxes that nothing may touch, and lines that words would rather not cross. */
export class Taken {
  private readonly boxes = new Map<string, Box[]>();
  private readonly segments = new Map<string, (readonly [Point, Point])[]>();
  private readonly within: Box;

  constructor(within: Box) {
    this.within = within;
  }

  addBox(box: Box): void {
    for (const key of cellsOf(box)) push(this.boxes, key, box);
  }

  addLine(points: readonly Point[]): void {
    forEachSegment(points, (from, to, size) => {
      const pieces = Math.min(200, Math.ceil(size / cell));
      for (let index = 0; index < pieces; index++) {
        const a = between(from, to, index / pieces);
        const b = between(from, to, (index + 1) / pieces);
        for (const key of cellsOf(boxAround(a, b))) push(this.segments, key, [a, b]);
      }
    });
  }

  /** The cheapest free place for a box of this size, or null where none of the candidates is free. */
  place(size: Size, candidates: readonly Candidate[]): Placed | null {
    let best: Placed | null = null;
    let least = Infinity;
    for (const { x, y, cost, to } of candidates) {
      if (cost >= least) continue;
      const box = { x, y, ...size };
      if (!inside(box, this.within) || this.blocked(box)) continue;
      const whole = cost + lineCost * this.crossings(box);
      if (whole >= least) continue;
      least = whole;
      best = { box, to };
    }
    if (best) this.addBox(best.box);
    return best;
  }

  private blocked(box: Box): boolean {
    return cellsOf(box).some((key) => (this.boxes.get(key) ?? []).some((other) => overlap(box, other)));
  }

  private crossings(box: Box): number {
    let count = 0;
    for (const key of cellsOf(box))
      for (const [from, to] of this.segments.get(key) ?? []) if (crosses(from, to, box)) count += 1;
    return count;
  }
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

function between(from: Point, to: Point, part: number): Point {
  return [from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part];
}

function boxAround(a: Point, b: Point): Box {
  return {
    x: Math.min(a[0], b[0]),
    y: Math.min(a[1], b[1]),
    width: Math.abs(a[0] - b[0]),
    height: Math.abs(a[1] - b[1]),
  };
}

/** Keys of the cells that a box touches; a box of no sensible size touches none. */
function cellsOf(box: Box): readonly string[] {
  const keys: string[] = [];
  const [west, east] = [Math.floor(box.x / cell), Math.floor((box.x + box.width) / cell)];
  const [north, south] = [Math.floor(box.y / cell), Math.floor((box.y + box.height) / cell)];
  if (!((east - west + 1) * (south - north + 1) < 5000)) return keys;
  for (let x = west; x <= east; x++) for (let y = north; y <= south; y++) keys.push(`${x},${y}`);
  return keys;
}

function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

function inside(box: Box, within: Box): boolean {
  return (
    box.x >= within.x &&
    box.y >= within.y &&
    box.x + box.width <= within.x + within.width &&
    box.y + box.height <= within.y + within.height
  );
}

/** Whether a segment touches a box (clipping after Liang and Barsky). */
function crosses(from: Point, to: Point, box: Box): boolean {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let enter = 0;
  let leave = 1;
  const sides = [
    [-dx, from[0] - box.x],
    [dx, box.x + box.width - from[0]],
    [-dy, from[1] - box.y],
    [dy, box.y + box.height - from[1]],
  ] as const;
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room < 0) return false;
    } else if (step < 0) enter = Math.max(enter, room / step);
    else leave = Math.min(leave, room / step);
  }
  return enter <= leave;
}

const directions: readonly Point[] = Array.from({ length: 16 }, (_, index) => {
  const angle = -Math.PI / 4 + (index * Math.PI) / 8;
  return [Math.cos(angle), Math.sin(angle)];
});

/** How far a box leans to the side of its direction: beyond 45 degrees off it stands clear with its whole width. */
const lean = (part: number) => Math.min(1, Math.max(-1, part * 1.6));

/** Places around a point, nearest first: the box stands off the point by each of the distances, in sixteen directions. */
export function placesAround(to: Point, size: Size, distances: readonly number[]): readonly Candidate[] {
  return distances.flatMap((distance, ring) =>
    directions.map(([dx, dy], index) => ({
      x: to[0] + dx * distance + (lean(dx) * size.width) / 2 - size.width / 2,
      y: to[1] + dy * distance + (lean(dy) * size.height) / 2 - size.height / 2,
      cost: ring * 2 + index * 0.01 + distance * 0.12,
      to,
    })),
  );
}

/** The place right on a point. */
export function placeOn(to: Point, size: Size): Candidate {
  return { x: to[0] - size.width / 2, y: to[1] - size.height / 2, cost: 0, to };
}

/** The point of a box that lies nearest to a point. */
export function nearestOf(box: Box, [x, y]: Point): Point {
  return [Math.min(box.x + box.width, Math.max(box.x, x)), Math.min(box.y + box.height, Math.max(box.y, y))];
}
