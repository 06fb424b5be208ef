// What is measured from and to: a point, a line, or an area, as chains of vertices.

import { boxOf, type Box } from "./box.ts";
import type { Point } from "./point.ts";
import { ringsOf, type Polygon } from "./polygon.ts";
import type { Segment } from "./segment.ts";

/** Vertices in order. A closed chain has a side from its last vertex back to its first. */
export interface Chain {
  readonly points: readonly Point[];
  readonly ends: "open" | "closed";
}

/** One or more chains. `area` where the inside belongs to the figure; its outline is chain 0, its holes follow. */
export interface Figure {
  readonly chains: readonly Chain[];
  readonly area: Polygon | null;
}

/** A single point. */
export function pointFigure(at: Point): Figure {
  return { chains: [{ points: [at], ends: "open" }], area: null };
}

/** A line, of no width. */
export function lineFigure(line: readonly Point[]): Figure {
  return { chains: [{ points: line, ends: "open" }], area: null };
}

/** A closed line, of no width: what lies within it is not part of it. */
export function ringFigure(ring: readonly Point[]): Figure {
  return { chains: [{ points: ring, ends: "closed" }], area: null };
}

/** An area with its inside. */
export function areaFigure(polygon: Polygon): Figure {
  return { chains: ringsOf(polygon).map((points): Chain => ({ points, ends: "closed" })), area: polygon };
}

/** Number of sides. A lone point counts as one side without length, so that every figure has something to meet. */
export function sideCount(chain: Chain): number {
  const count = chain.points.length;
  return chain.ends === "closed" || count <= 1 ? count : count - 1;
}

/** Side i of a chain, from vertex i to the next. */
export function sideAt(chain: Chain, i: number): Segment {
  const { points } = chain;
  return [points[i] as Point, points[(i + 1) % points.length] as Point];
}

/** The vertices before and after vertex i, as far as the chain has them. */
export function neighboursOf(chain: Chain, i: number): readonly Point[] {
  const { points, ends } = chain;
  const count = points.length;
  if (ends === "closed") return [points[(i + count - 1) % count] as Point, points[(i + 1) % count] as Point];
  return [points[i - 1], points[i + 1]].filter((point) => point !== undefined);
}

/** Bounding box of a figure; null where it has no vertices. */
export function figureBox(figure: Figure): Box | null {
  return boxOf(figure.chains.flatMap((chain) => chain.points));
}
