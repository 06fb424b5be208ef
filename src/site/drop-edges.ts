// Edges that a wheel can go over: the crest of a bank, the rim of water, the top of a wall that holds ground back.

import { type Feature, propertyOf } from "../model/plan.ts";
import { isSpot } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import { holdsPoint } from "../geometry/polygon.ts";
import { figureAt, groundFigure, type LiveFigure, liveSpot } from "./live-figure.ts";
import { sideOfLine } from "./sides.ts";
import type { Point, Scene } from "../model/reading.ts";

/** An edge, and whether a point beside it stands above the drop. */
export interface DropEdge {
  readonly figure: LiveFigure;
  readonly isAbove: (at: Point) => boolean;
}

/** The edge of a thing that a wheel can go over; null for other things. */
export function dropEdge(feature: Feature, { read }: Pick<Scene, "read">): DropEdge | null {
  const figure = groundFigure(feature);
  if (!figure) return null;
  if (feature.kind === "water") return { figure, isAbove: () => true };
  // What lies over a dig is what it is dug for, or is closed while it stands open.
  if (feature.kind === "excavation") return { figure, isAbove: (at) => !isWithin(figure, at, read) };
  if (feature.kind === "wall") {
    const side = propertyOf(feature, "retains.side");
    return side === "left" || side === "right"
      ? { figure, isAbove: (at) => sideOfLine(feature, at, read) === side }
      : null;
  }
  const [crest, toe] = [spotsOf(feature, "crest"), spotsOf(feature, "toe")];
  if (feature.kind !== "bank" || crest.length < 2) return null;
  const line: LiveFigure = { chains: [{ points: crest.map(liveSpot), ends: "open" }], solid: false, grow: () => 0 };
  const asLine: Feature = { ...feature, shape: { form: "line", line: crest } };
  const [foot] = toe;
  const below = foot ? sideOfLine(asLine, liveSpot(foot)(read), read) : null;
  return { figure: line, isAbove: (at) => below === null || sideOfLine(asLine, at, read) !== below };
}

function isWithin(figure: LiveFigure, at: Point, read: Read): boolean {
  const { area } = figureAt(figure, read);
  return area !== null && holdsPoint(area, at);
}

function spotsOf(feature: Feature, property: string): readonly Spot[] {
  const value = propertyOf(feature, property);
  return Array.isArray(value) ? (value as readonly unknown[]).filter((one): one is Spot => isSpot(one as Spot)) : [];
}
