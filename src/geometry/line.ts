// A line of straight pieces through two or more points, walked from its first point to its last.

import { between, distance, samePoint, type Point } from "./point.ts";
import { footOn, leftOf, type Segment } from "./segment.ts";
import { sideOf } from "./orientation.ts";
import { dot, minus, norm, times, type Vector } from "./vector.ts";

/** The straight pieces of a line, in order. Piece i runs from vertex i to vertex i + 1. */
export function piecesOf(line: readonly Point[]): readonly Segment[] {
  return line.slice(1).map((end, i): Segment => [line[i] as Point, end]);
}

/** Length of a line, metres. */
export function lineLength(line: readonly Point[]): number {
  let sum = 0;
  for (const [start, end] of piecesOf(line)) sum += distance(start, end);
  return sum;
}

/** Run of every vertex: metres walked from the start of the line. */
export function runsOf(line: readonly Point[]): readonly number[] {
  let run = 0;
  return line.map((point, i) => (run += i === 0 ? 0 : distance(line[i - 1] as Point, point)));
}

/** A place on a line: the point, the direction walked there (length 1), and the piece it lies on. */
export interface PlaceOnLine {
  readonly point: Point;
  readonly direction: Vector;
  readonly piece: number;
}

// Less than any tape can tell: keeps a run read back from the same line from falling off its end.
const runSlack = 1e-9;

/**
 * The place `run` metres along a line. At a bend the direction is that of the piece which begins there, at the
 * end that of the last piece. Null where the run lies before the start or past the end, or the line has no length.
 */
export function placeAtRun(line: readonly Point[], run: number): PlaceOnLine | null {
  if (!(run >= -runSlack)) return null;
  let left = Math.max(0, run);
  let last: PlaceOnLine | null = null;
  for (const [piece, [start, end]] of piecesOf(line).entries()) {
    const length = distance(start, end);
    if (length === 0) continue;
    const direction = times(minus(end, start), 1 / length);
    if (left < length) return { point: between(start, end, left / length), direction, piece };
    left -= length;
    last = { point: end, direction, piece };
  }
  return left <= runSlack ? last : null;
}

/** The point `run` metres along the line and `left` metres to the left of it; null off its ends. */
export function pointAtRun(line: readonly Point[], run: number, left = 0): Point | null {
  const place = placeAtRun(line, run);
  if (place === null) return null;
  const [east, north] = place.direction;
  return [place.point[0] - north * left, place.point[1] + east * left];
}

/** Where a point lies with regard to a line: how far along, how far to its left. */
export interface RunAndLeft {
  /** Metres from the start; below 0 before the start, above the line's length past its end. */
  readonly run: number;
  /** Metres to the left (below 0: right). Before the start and past the end: from the end piece carried on. */
  readonly left: number;
  readonly foot: Point;
  readonly piece: number;
  readonly distance: number;
}

interface FootOnLine {
  readonly run: number;
  readonly share: number;
  readonly foot: Point;
  readonly piece: number;
}

/** Run and offset of `point` at the nearest foot on the line; the first such foot where several are as near. Null for a line without length. */
export function runAndLeft(line: readonly Point[], point: Point): RunAndLeft | null {
  let best: FootOnLine | null = null;
  let least = Number.POSITIVE_INFINITY;
  let run = 0;
  const pieces = piecesOf(line);
  for (const [piece, segment] of pieces.entries()) {
    const length = distance(segment[0], segment[1]);
    if (length === 0) continue;
    const { foot, share, distance: off } = footOn(segment, point);
    if (off < least) [best, least] = [{ run: run + share * length, share, foot, piece }, off];
    run += length;
  }
  if (best === null) return null;
  const segment = pieces[best.piece] as Segment;
  const past = runPastEnd(segment, point, { atStart: best.run === 0, atEnd: best.run >= run });
  const left = past !== 0 ? leftOf(segment, point) : leftAtFoot(line, best, point);
  return { run: best.run + past, left, foot: best.foot, piece: best.piece, distance: least };
}

/** Metres past the end of the line (below 0: before its start), along the end piece carried on. */
function runPastEnd(
  [start, end]: Segment,
  point: Point,
  foot: { readonly atStart: boolean; readonly atEnd: boolean },
): number {
  const way = minus(end, start);
  if (foot.atEnd) return Math.max(0, dot(minus(point, end), way) / norm(way));
  if (foot.atStart) return Math.min(0, dot(minus(point, start), way) / norm(way));
  return 0;
}

/** Signed distance at a foot inside a piece or at a bend. A point whose foot is a bend lies on its outer side. */
function leftAtFoot(line: readonly Point[], { share, foot, piece }: FootOnLine, point: Point): number {
  const segment: Segment = [line[piece] as Point, line[piece + 1] as Point];
  if (share > 0 && share < 1) return leftOf(segment, point);
  const before = line.slice(0, share === 0 ? piece : piece + 1).findLast((end) => !samePoint(end, foot));
  const after = line.slice(share === 0 ? piece + 1 : piece + 2).find((end) => !samePoint(end, foot));
  if (before === undefined || after === undefined)
    return sideOf(segment[0], segment[1], point) * distance(foot, point) || 0;
  // Mostly both pieces tell. Where a point lies in line with one of them, or a bend is but rounding, one may tell the wrong side.
  const [one, other] = [sideOf(before, foot, point), sideOf(foot, after, point)];
  const bend = sideOf(before, foot, after);
  const side = one === other || bend === 0 ? one : -bend;
  return side * distance(foot, point) || 0;
}

/** The same line walked the other way. */
export function reversedLine(line: readonly Point[]): readonly Point[] {
  return line.toReversed();
}

/** The stretch of a line between two runs (metres), with its bends; empty where nothing of the line lies between. */
export function stretchOf(line: readonly Point[], from: number, to: number): readonly Point[] {
  const runs = runsOf(line);
  const length = runs.at(-1) ?? 0;
  const start = Math.max(0, from);
  const end = Math.min(length, to);
  if (!(start < end)) return [];
  const first = placeAtRun(line, start);
  const last = placeAtRun(line, end);
  if (first === null || last === null) return [];
  const inner = line.filter((_, i) => (runs[i] as number) > start && (runs[i] as number) < end);
  return [first.point, ...inner, last.point];
}
