// Areas laid over areas: what they share, what they cover, what is left. The only file that imports the clipping package.

import {
  booleanOpDWithPolyTree,
  ClipType,
  EndType,
  FillRule,
  inflatePathsD,
  JoinType,
  PolyTreeD,
  type PathsD,
  type PolyPathD,
} from "clipper2-ts";
import type { Point } from "./point.ts";
import { ringsOf, type Polygon } from "./polygon.ts";
import { counterClockwise } from "./ring.ts";

// The package works on a grid of 10^-6 m; its own default would be a centimetre.
const decimals = 6;
// Beyond this the grid's whole numbers would no longer be exact.
const farthest = 1e7;
/** How far a drawn arc may lie inside the true one, metres, where nothing else is said. */
const arcSlack = 0.001;
/** A mitre longer than this many offsets is cut off square. */
const longestMitre = 5;

/**
 * What two lists of areas share. Areas of one list may overlap each other. Result: areas that do not overlap,
 * outlines counter-clockwise, holes clockwise, vertices on a grid of 10^-6 m. Null where a coordinate is not
 * finite or not below 10^7 m. Rings of fewer than three points hold no area and are passed over.
 */
export function intersection(a: readonly Polygon[], b: readonly Polygon[]): readonly Polygon[] | null {
  return combined(ClipType.Intersection, a, b);
}

/** What the areas of a list cover together; null as for `intersection`. */
export function union(areas: readonly Polygon[]): readonly Polygon[] | null {
  return combined(ClipType.Union, areas, []);
}

/** What is left of the areas `a` without those of `b`; null as for `intersection`. */
export function difference(a: readonly Polygon[], b: readonly Polygon[]): readonly Polygon[] | null {
  return combined(ClipType.Difference, a, b);
}

/** How corners are made when an area is grown: `round` by arcs that lie at most `arcSlack` metres inside. */
export interface Corners {
  readonly corners: "round" | "mitre";
  readonly arcSlack?: number;
}

/**
 * Areas grown by `by` metres on all sides (shrunk where below 0). Arcs are inscribed: the edge lies at most
 * `arcSlack` short of the true offset, so decide distances by `nearest`, not by this. Null as for `intersection`.
 */
export function grown(areas: readonly Polygon[], by: number, corners: Corners): readonly Polygon[] | null {
  const origin = originOf(areas.flatMap(ringsOf));
  if (origin === null || !Number.isFinite(by)) return null;
  const join = corners.corners === "round" ? JoinType.Round : JoinType.Miter;
  // Grown one by one, areas that overlap would lose their common edges; so they are merged first.
  const merged = combined(ClipType.Union, areas, []);
  if (merged === null) return null;
  const paths = toPaths(merged, origin);
  const slack = corners.arcSlack ?? arcSlack;
  const inflated = inflatePathsD(paths, by, join, EndType.Polygon, longestMitre, decimals, slack);
  return fromTree(ClipType.Union, inflated, [], origin);
}

/** How a strip ends: cut off `square` at the last point, or in a half circle. */
export interface StripEnds extends Corners {
  readonly ends: "square" | "round";
}

/** The strip within `reach` metres of a line. Null as for `intersection`; empty for a line without length. */
export function stripAlong(line: readonly Point[], reach: number, how: StripEnds): readonly Polygon[] | null {
  const origin = originOf([line]);
  if (origin === null || !Number.isFinite(reach) || reach < 0) return null;
  if (reach === 0 || line.every(([x, y]) => x === line[0]?.[0] && y === line[0][1])) return [];
  const join = how.corners === "round" ? JoinType.Round : JoinType.Miter;
  const ends = how.ends === "round" ? EndType.Round : EndType.Butt;
  const path = [line.map(([x, y]) => ({ x: x - origin[0], y: y - origin[1] }))];
  const inflated = inflatePathsD(path, reach, join, ends, longestMitre, decimals, how.arcSlack ?? arcSlack);
  return fromTree(ClipType.Union, inflated, [], origin);
}

function combined(type: ClipType, a: readonly Polygon[], b: readonly Polygon[]): readonly Polygon[] | null {
  const origin = originOf([...a, ...b].flatMap(ringsOf));
  if (origin === null) return null;
  return fromTree(type, toPaths(a, origin), toPaths(b, origin), origin);
}

/** A whole-metre point near the figures, to which all is shifted so that no digits are lost; null for bad numbers. */
function originOf(rings: readonly (readonly Point[])[]): Point | null {
  const first = rings.find((ring) => ring.length > 0)?.[0] ?? [0, 0];
  for (const ring of rings) {
    // Written so that NaN fails too.
    for (const [x, y] of ring) if (!(Math.abs(x) < farthest && Math.abs(y) < farthest)) return null;
  }
  return [Math.round(first[0]), Math.round(first[1])];
}

/** Outlines counter-clockwise, holes clockwise: under the non-zero rule areas then add up and holes are cut out. */
function toPaths(areas: readonly Polygon[], [east, north]: Point): PathsD {
  const paths: PathsD = [];
  for (const area of areas) {
    for (const [i, ring] of ringsOf(area).entries()) {
      if (ring.length < 3) continue;
      const turned = i === 0 ? counterClockwise(ring) : counterClockwise(ring).toReversed();
      paths.push(turned.map(([x, y]) => ({ x: x - east, y: y - north })));
    }
  }
  return paths;
}

function fromTree(type: ClipType, subject: PathsD, clip: PathsD, origin: Point): readonly Polygon[] {
  const tree = new PolyTreeD();
  booleanOpDWithPolyTree(type, subject, clip, tree, FillRule.NonZero, decimals);
  return polygonsUnder(tree, origin);
}

/** Every outline of the tree with its holes; an outline inside a hole is an area of its own. */
function polygonsUnder(node: PolyPathD, origin: Point): readonly Polygon[] {
  const polygons: Polygon[] = [];
  for (let i = 0; i < node.count; i++) {
    const outline = node.child(i);
    const holes: (readonly Point[])[] = [];
    for (let j = 0; j < outline.count; j++) {
      const hole = outline.child(j);
      holes.push(ringFrom(hole, origin));
      polygons.push(...polygonsUnder(hole, origin));
    }
    polygons.push({ outline: ringFrom(outline, origin), holes });
  }
  return polygons;
}

function ringFrom(node: PolyPathD, [east, north]: Point): readonly Point[] {
  return (node.poly ?? []).map(({ x, y }): Point => [x + east, y + north]);
}
