// Parts of features that are subjects by themselves: runs of drains, gaps in walls, openings of buildings, layers.

import { keyOfKind } from "../model/kinds.ts";
import { type Feature, isQuantity, isSpot, type Properties, type Property } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { drainRuns, runProperties } from "./drain-runs.ts";
import { trenchOf } from "./trenches.ts";

/** Between the name of a whole and the name of its part: `kitchen, B3 to inspection 1`. */
const partMark = ", ";

/** The kind that each kind of part belongs to. */
export const wholeOf: Readonly<Record<string, string>> = {
  "drain run": "drain",
  gap: "wall",
  opening: "building",
  layer: "surface",
  flight: "steps",
  trench: "drain",
  "open ditch": "drain",
};

/** Parts of all features that stand, in the order of the plan. */
export function partsOf(standing: readonly Feature[], _read: Read, stage: number): readonly Feature[] {
  const standingOf = (kind: string) => standing.filter((feature) => keyOfKind(feature.kind) === kind);
  return standing.flatMap((feature) => {
    switch (feature.kind) {
      case "drain":
        return [
          ...drainRuns(feature, standingOf).map((run, index, runs) => ({
            ...partOf(feature, "drain run", run.name),
            shape: { form: "line" as const, line: run.line },
            properties: runProperties(runs, index),
          })),
          ...trenchOf(feature, stage),
          ...openDitch(feature),
        ];
      case "service":
        return trenchOf(feature, stage);
      case "wall":
        return listed(feature, "gaps", "gap");
      case "building":
        return listed(feature, "openings", "opening");
      case "surface":
        return listed(feature, "layers", "layer");
      case "steps":
        return [{ ...partOf(feature, "flight", `${feature.name}${partMark}the flight`), shape: feature.shape }];
      default:
        return [];
    }
  });
}

/** Whether a feature is called by this name, or is a part of what is. */
export function isCalled(name: string, called: string): boolean {
  return name === called || name.startsWith(`${called}${partMark}`);
}

/** The feature that a property is asked of: a run has the words of its drain, a layer has its own. */
export function askedOf(feature: Feature): Feature {
  return feature.partOf && feature.place === feature.partOf.place ? feature.partOf : feature;
}

function partOf(whole: Feature, kind: string, name: string): Feature {
  return { ...whole, kind, name, shape: null, partOf: whole };
}

/** A ditch that is drawn among the drains is a watercourse all the same. */
function openDitch(drain: Feature): readonly Feature[] {
  if (drain.properties["form"] !== "ditch") return [];
  const ditch = partOf(drain, "open ditch", drain.name);
  return [{ ...ditch, shape: drain.shape, properties: { ...drain.properties, kind: "ditch" } }];
}

/** One part for each group in a list of the whole, with the whole's own properties under `whole`. */
function listed(whole: Feature, list: string, kind: string): readonly Feature[] {
  const groups = whole.properties[list];
  if (!Array.isArray(groups)) return [];
  return (groups as readonly Property[]).flatMap((group, index) => {
    if (!isGroup(group)) return [];
    const own = typeof group["name"] === "string" ? group["name"] : `${kind} ${index + 1}`;
    const { at } = group;
    return [
      {
        ...partOf(whole, kind, `${whole.name}${partMark}${own}`),
        place: { file: whole.place.file, path: [...whole.place.path, list, index] },
        shape: isSpot(at) ? { form: "point" as const, at } : null,
        properties: { ...group, number: String(index + 1), whole: whole.properties },
      },
    ];
  });
}

function isGroup(property: Property): property is Properties {
  return typeof property === "object" && !Array.isArray(property) && !isQuantity(property) && !isSpot(property);
}
