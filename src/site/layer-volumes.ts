// How much of a material the layers of a surface take.

import { polygonArea } from "../geometry/polygon.ts";
import { type Feature, isQuantity, type Properties, type Property, propertyOf } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import { areaAt } from "./area.ts";
import { groundFigure } from "./live-figure.ts";

/** One layer of a surface: what it is of, and how thick, in which state. */
export interface Layer {
  readonly of: string;
  readonly thickness: Quantity | null;
  readonly state: "compacted" | "loose";
}

function isGroup(property: Property): property is Properties {
  return typeof property === "object" && !Array.isArray(property) && !isQuantity(property);
}

/** Layers of a surface, from the top downwards; rolled where the plan does not say. */
export function layersOf(surface: Feature): readonly Layer[] {
  const layers = propertyOf(surface, "layers");
  if (!Array.isArray(layers)) return [];
  return (layers as readonly Property[]).filter(isGroup).map((layer) => ({
    of: typeof layer["of"] === "string" ? layer["of"] : "",
    thickness: isQuantity(layer["thickness"]) ? layer["thickness"] : null,
    state: layer["state"] === "loose" ? "loose" : "compacted",
  }));
}

/** Area of a feature on the ground, m2; 0 for a line or a point. */
export function groundArea(feature: Feature, read: Read): number {
  const figure = groundFigure(feature);
  const area = figure && areaAt(figure, read);
  return area ? polygonArea(area) : 0;
}
