// The box around a feature on the ground, kept for as long as the read it was taken with.

import { type Box } from "../geometry/box.ts";
import { figureBox } from "../geometry/figure.ts";
import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { figureAt, groundFigure } from "./live-figure.ts";

const kept = new WeakMap<Read, WeakMap<Feature, Box | null>>();

/** Upright box around the ground figure of a feature, metres; null where it has no shape. */
export function groundBox(feature: Feature, read: Read): Box | null {
  const ofRead = kept.get(read) ?? new WeakMap<Feature, Box | null>();
  kept.set(read, ofRead);
  const known = ofRead.get(feature);
  if (known !== undefined) return known;
  const figure = groundFigure(feature);
  const box = figure && figureBox(figureAt(figure, read));
  ofRead.set(feature, box);
  return box;
}
