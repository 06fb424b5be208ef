// The box around a feature on the ground, kept for as long as the read it was taken with.

import { type Box, boxOf } from "../geometry/box.ts";
import { figureBox } from "../geometry/figure.ts";
import type { Feature } from "../model/plan.ts";
import type { Read, Spot } from "../model/quantity.ts";
import { figureAt, groundFigure } from "./live-figure.ts";
import { readOfShape } from "./moved-read.ts";

const kept = new WeakMap<Read, WeakMap<Feature, Box | null>>();

/** Upright box around the ground figure of a feature, metres; null where it has no shape. */
export function groundBox(feature: Feature, given: Read): Box | null {
  const read = readOfShape(feature, given);
  const ofRead = kept.get(read) ?? new WeakMap<Feature, Box | null>();
  kept.set(read, ofRead);
  const known = ofRead.get(feature);
  if (known !== undefined) return known;
  const box = boxAt(feature, read);
  ofRead.set(feature, box);
  return box;
}

function boxAt(feature: Feature, read: Read): Box | null {
  const spots = cornersOf(feature);
  if (spots) return boxOf(spots.map((spot) => [read(spot.east), read(spot.north)]));
  const figure = groundFigure(feature);
  return figure && figureBox(figureAt(figure, read));
}

/** The spots that are the corners of the figure themselves; null where they have to be worked out. */
function cornersOf({ shape }: Feature): readonly Spot[] | null {
  if (shape?.form === "point") return [shape.at];
  if (shape?.form === "circle") return [shape.centre];
  if (shape?.form === "outline" && shape.holes.length === 0) return shape.outline;
  return shape?.form === "line" && !shape.width ? shape.line : null;
}
