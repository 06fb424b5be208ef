// The reach of a crown from its trunk, however the plan gives it: `crown.radius`, by sides, or the whole width.

import { type Feature, isQuantity, type Properties, type Property, propertyOf } from "../model/plan.ts";
import type { Quantity } from "../model/quantity.ts";
import type { BookWriter } from "./number-book.ts";
import { scaled } from "./sway.ts";

/** Every tree with a crown gets one `crown.radius`: the longest of its sides, or half of its spread. */
export function withCrowns(features: readonly Feature[], book: BookWriter): readonly Feature[] {
  return features.map((feature) => {
    const crown = feature.kind === "tree" ? feature.properties["crown"] : undefined;
    if (!isGroup(crown) || isQuantity(crown["radius"])) return feature;
    const radius = longest(crown["radius"], book) ?? halfOf(propertyOf(feature, "crown.spread"), feature, book);
    return radius ? { ...feature, properties: { ...feature.properties, crown: { ...crown, radius } } } : feature;
  });
}

function isGroup(property: Property | undefined): property is Properties {
  return typeof property === "object" && !Array.isArray(property);
}

/** The longest reach of a crown given by its sides: what lies on a shorter side is judged with more care than it needs. */
function longest(sides: Property | undefined, book: BookWriter): Quantity | null {
  if (!isGroup(sides)) return null;
  const { values } = book.finish();
  const reaches = Object.values(sides).filter(isQuantity);
  if (reaches.length === 0) return null;
  return reaches.reduce((a, b) => ((values[b.id] ?? 0) > (values[a.id] ?? 0) ? b : a));
}

function halfOf(spread: Property | undefined, { place }: Feature, book: BookWriter): Quantity | null {
  if (!isQuantity(spread)) return null;
  const { values, sways } = book.finish();
  const whole = { value: values[spread.id] ?? 0, sway: sways[spread.id] ?? new Map<number, number>() };
  return book.seal(scaled(whole, 0.5), "length", place);
}
