// Which features a card is about at a stage, and which pairs lie within its reach.

import type { Card, RoleChoice } from "../model/card.ts";
import type { Feature, Shape } from "../model/plan.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { Subject } from "../model/reading.ts";

/** Whether a feature stands at the end of a stage. */
export function standsAt(feature: Feature, stage: number): boolean {
  return feature.from <= stage && (feature.until === null || stage < feature.until);
}

/** West, south, east, north of a feature's shape; null where it has none. */
export type Extent = readonly [number, number, number, number];

/** Extent of a shape at the plan's own values. */
export function extentOf(shape: Shape | null, read: Read): Extent | null {
  if (!shape) return null;
  const half =
    shape.form === "circle" ? read(shape.across) / 2 : shape.form === "line" && shape.width ? read(shape.width) / 2 : 0;
  const spots =
    shape.form === "point"
      ? [shape.at]
      : shape.form === "circle"
        ? [shape.centre]
        : shape.form === "line"
          ? shape.line
          : shape.outline;
  const axis = (quantities: readonly Quantity[]) => quantities.map(read);
  const east = axis(spots.map((spot) => spot.east));
  const north = axis(spots.map((spot) => spot.north));
  if (east.length === 0) return null;
  return [Math.min(...east) - half, Math.min(...north) - half, Math.max(...east) + half, Math.max(...north) + half];
}

/** Gap between two extents along the worse axis; negative where they overlap on both. */
function extentGap(a: Extent, b: Extent): number {
  return Math.max(a[0] - b[2], b[0] - a[2], a[1] - b[3], b[1] - a[3]);
}

/** Features that can play a role; `everything` is all that has a shape, `site` is none of them. */
export function choose(role: RoleChoice, standing: readonly Feature[]): readonly Feature[] {
  if (role.kinds.includes("everything")) return standing.filter((feature) => feature.shape !== null && !feature.partOf);
  return standing.filter((feature) => role.kinds.includes(feature.kind));
}

/** All subjects of a card at a stage: single features, or pairs within reach, unordered where both sides select the same kind. */
export function subjectsOf(
  card: Card,
  standing: readonly Feature[],
  extent: (feature: Feature) => Extent | null,
): readonly Subject[] {
  const abouts = choose(card.about, standing);
  const { against, within } = card;
  if (!against) return abouts.map((feature) => ({ [card.about.role]: feature }));
  const others = choose(against, standing);
  const order = new Map(standing.map((feature, index) => [feature, index]));
  const both = new Set(others.filter((feature) => abouts.includes(feature)));
  const subjects: Subject[] = [];
  for (const about of abouts) {
    for (const other of others) {
      if (other === about || other.partOf === about || about.partOf === other) continue;
      if (both.has(about) && both.has(other) && (order.get(about) ?? 0) > (order.get(other) ?? 0)) continue;
      if (withinReach(extent(about), extent(other), within))
        subjects.push({ [card.about.role]: about, [against.role]: other });
    }
  }
  return subjects;
}

function withinReach(a: Extent | null, b: Extent | null, reach: number | null): boolean {
  if (!a || !b || reach === null) return true;
  return extentGap(a, b) <= reach;
}
