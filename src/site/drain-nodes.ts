// The nodes of a drain: where it starts, ends and is opened, what stands there, and how deep its invert lies.

import { type Feature, isQuantity, type Property, propertyOf } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";

/** A number that follows from the plan and can be read again with moved numbers. */
export type LiveNumber = (read: Read) => number;

/** The features of a kind that stand, by the plan's key (`chambers`). */
export type StandingOf = (kind: string) => readonly Feature[];

/** Kinds that a drain can run through or end in. */
export const nodeKinds = ["chambers", "outfalls", "septic_tanks", "soakaways", "tanks", "drainage_fields"] as const;

/** A place on a drain that has a name or a level. */
export interface DrainNode {
  /** A peg, corner or feature by its name; `point 2` where it has none. */
  readonly name: string;
  readonly spot: Spot;
  /** The chamber, tank, outfall ... that stands there. */
  readonly feature: Feature | null;
  /** The drain's own number for its invert there. */
  readonly own: Quantity | null;
  /** Invert there, from whichever number of the plan gives it. */
  readonly invert: LiveNumber | null;
}

/** Nodes of a drain in the order of its line. */
export function drainNodes(drain: Feature, standingOf: StandingOf): readonly DrainNode[] {
  const line = drain.shape?.form === "line" ? drain.shape.line : [];
  const features = nodeKinds.flatMap((kind) => [...standingOf(kind)]);
  const last = line.length - 1;
  return line.map((spot, index) => {
    const named = index === last ? (spot.name ?? wordOf(propertyOf(drain, "leads_to"))) : spot.name;
    const feature = features.find((one) => one.name === named) ?? null;
    const own = ownInvert(drain, named);
    const end = index === 0 ? "upper" : index === last ? "lower" : "between";
    return {
      name: named ?? `point ${index + 1}`,
      spot,
      feature,
      own,
      invert: own ? (read) => read(own) : feature ? invertOf(feature, end) : null,
    };
  });
}

const wordOf = (property: Property | undefined): string | undefined =>
  typeof property === "string" ? property : undefined;

/** Names may hold dots, so the group is looked into by hand. */
function ownInvert(drain: Feature, name: string | undefined): Quantity | null {
  const inverts = drain.properties["inverts"];
  if (name === undefined || typeof inverts !== "object" || Array.isArray(inverts)) return null;
  const own = (inverts as Readonly<Record<string, Property>>)[name];
  return isQuantity(own) ? own : null;
}

/** Invert that a feature gives to a drain which starts, ends or passes there; null where it gives none. */
export function invertOf(feature: Feature, end: "upper" | "lower" | "between"): LiveNumber | null {
  const number = (name: string): LiveNumber | null => {
    const quantity = propertyOf(feature, name);
    return isQuantity(quantity) ? (read) => read(quantity) : null;
  };
  switch (feature.kind) {
    case "chamber":
      return number("invert") ?? below(number("cover"), number("depth"));
    case "outfall":
      return number("level");
    case "septic tank":
      return number(end === "upper" ? "outlet" : "inlet");
    case "soakaway":
      return number("inlet");
    case "tank":
      return end === "upper" ? number("outlet") : null;
    default:
      return null;
  }
}

function below(top: LiveNumber | null, depth: LiveNumber | null): LiveNumber | null {
  return top && depth ? (read) => top(read) - depth(read) : null;
}
