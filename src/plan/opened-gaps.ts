// Gaps that a change makes in a wall that stands: opened in that stage, though nobody writes it on the gap.

import { type Feature, isQuantity, type Property, type Properties, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import type { NumberBook } from "../model/quantity.ts";

/** Gaps whose ends differ by less than this are the same gap (metres: a tape laid twice). */
const same = 0.05;

/** Walls whose later version has gaps that the earlier has not: those get `opened_in`, where the plan does not say it. */
export function withOpenedGaps(
  features: readonly Feature[],
  stages: readonly string[],
  finish: () => Pick<NumberBook, "values">,
): readonly Feature[] {
  if (!features.some(isChangedWall)) return features;
  const { values } = finish();
  const read: Read = ({ id }) => values[id] as number;
  return features.map((feature) => {
    const before = features.find(
      (one) => isChangedWall(one) && one.name === feature.name && one.until === feature.from,
    );
    if (!before) return feature;
    const old = gapsOf(before);
    const gaps = gapsOf(feature).map((gap) =>
      gap["opened_in"] !== undefined || old.some((one) => isSame(one, gap, read))
        ? gap
        : { ...gap, opened_in: stages[feature.from] ?? true },
    );
    return gaps.length === 0 ? feature : { ...feature, properties: { ...feature.properties, gaps } };
  });
}

/** A version of a wall that a change takes the place of. */
function isChangedWall({ kind, superseded }: Feature): boolean {
  return kind === "wall" && superseded === true;
}

function gapsOf(wall: Feature): readonly Properties[] {
  const gaps = propertyOf(wall, "gaps");
  return Array.isArray(gaps) ? gaps.filter(isGroup) : [];
}

function isGroup(property: Property): property is Properties {
  return typeof property === "object" && !Array.isArray(property) && !isQuantity(property);
}

function isSame(a: Properties, b: Properties, read: Read): boolean {
  return ["from", "to"].every((end) => {
    const [one, other] = [a[end], b[end]];
    return isQuantity(one) && isQuantity(other) && Math.abs(read(one) - read(other)) < same;
  });
}
