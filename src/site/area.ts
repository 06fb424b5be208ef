// The area that a live figure covers at a read.

import { ringAround } from "../geometry/circle.ts";
import { type Polygon, polygonOf } from "../geometry/polygon.ts";
import type { Read } from "../model/quantity.ts";
import { figureAt, type LiveFigure } from "./live-figure.ts";

/** A round thing is taken as a ring of sides no farther than this outside it, metres. */
const ringSlack = 0.0005;

/** The polygon of a figure; null for a line or a bare point. */
export function areaAt(figure: LiveFigure, read: Read): Polygon | null {
  const plain = figureAt(figure, read);
  if (plain.area) return plain.area;
  const only =
    plain.chains.length === 1 && plain.chains[0]?.points.length === 1 ? plain.chains[0].points[0] : undefined;
  const radius = figure.grow(read);
  return only && radius > 0 ? polygonOf(ringAround({ centre: only, radius }, ringSlack, "around")) : null;
}
