// Stands: what an animal can leap from beside a fence, where its edge is and how high.

import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import type { Missing } from "../model/reading.ts";
import { groundFigure, type LiveFigure, liveSpot, roundFigure } from "./live-figure.ts";

/** A stand: the figure whose edge is leapt from, and its height above the ground. */
export interface Stand {
  readonly edge: LiveFigure;
  readonly height: Quantity;
}

/** Property that tells how high each kind of stand is. */
const heightProperty: Readonly<Record<string, string>> = {
  wall: "height",
  bank: "height",
  heap: "height",
  obstacle: "height",
  tank: "height",
  building: "eaves",
  tree: "clearance_under",
};

/** The stand that a feature makes, or what would have to be known; null where it makes none. */
export function standOf(feature: Feature): Stand | { readonly missing: readonly Missing[] } | null {
  const property = heightProperty[feature.kind];
  const edge = edgeOf(feature);
  if (property === undefined || !edge || propertyOf(feature, "buried") === true) return null;
  const height = propertyOf(feature, property);
  const words = feature.kind === "tree" ? "height of the lowest branch" : property;
  const missing = [
    ...(isQuantity(height) ? [] : [lack(feature, property, `the ${words}`)]),
    ...(lacksCrown(feature) ? [crownAsked(feature)] : []),
  ];
  return isQuantity(height) && missing.length === 0 ? { edge, height } : { missing };
}

function lack(feature: Feature, property: string, what: string): Missing {
  return {
    feature,
    property,
    asks: `${what} of ${feature.kind} "${feature.name}"`,
    dimension: "length",
    why: "missing",
  };
}

/** Whether a tree's branches reach nobody knows how far. */
export function lacksCrown(feature: Feature): boolean {
  return feature.kind === "tree" && !isQuantity(propertyOf(feature, "crown.radius"));
}

/** Asks how far the branches of a tree reach. */
export function crownAsked(tree: Feature): Missing {
  return lack(tree, "crown.radius", "the radius of the crown");
}

/** A tree is leapt from within its crown, everything else from its outline. */
function edgeOf(feature: Feature): LiveFigure | null {
  const radius = propertyOf(feature, "crown.radius");
  if (feature.kind === "tree" && feature.shape?.form === "point" && isQuantity(radius))
    return roundFigure(liveSpot(feature.shape.at), (read) => read(radius));
  return groundFigure(feature);
}
