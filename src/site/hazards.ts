// Which features answer a word of the plan's `none` list.

import { type Feature, propertyOf } from "../model/plan.ts";

type Test = (feature: Feature) => boolean;
const word = (feature: Feature, property: string): string => {
  const value = propertyOf(feature, property);
  return typeof value === "string" ? value : "";
};
const isService =
  (...kinds: readonly string[]): Test =>
  (feature) =>
    feature.kind === "service" && kinds.includes(word(feature, "kind"));
const has =
  (kind: string, property: string): Test =>
  (feature) =>
    feature.kind === kind && propertyOf(feature, property) !== undefined && propertyOf(feature, property) !== false;
const isWater =
  (...kinds: readonly string[]): Test =>
  (feature) =>
    feature.kind === "water" && kinds.includes(word(feature, "kind"));

const tests: Readonly<Record<string, Test>> = {
  "overhead lines": has("service", "overhead"),
  "buried services": has("service", "buried"),
  wells: isWater("well", "borehole", "spring"),
  springs: isWater("spring"),
  watercourses: isWater("stream", "ditch", "river", "brook", "rhyne"),
  ponds: isWater("pond", "lake"),
  septic: (feature) => feature.kind === "septic tank" || feature.kind === "drainage field",
  gas: (feature) => isService("gas")(feature) || (feature.kind === "tank" && word(feature, "holds") === "gas"),
  oil: (feature) => feature.kind === "tank" && word(feature, "holds").includes("oil"),
  "veteran trees": has("tree", "veteran"),
  "protected trees": has("tree", "protected"),
  "overhead branches": has("tree", "clearance_under"),
  "retaining walls": has("wall", "retains"),
  "deep digs": (feature) => feature.kind === "excavation",
  "live fences": has("fence", "live_wires"),
  "unknown fill": (feature) => feature.kind === "stock",
  asbestos: (feature) => feature.kind === "stock" || has("heap", "suspect")(feature),
  slurry: (feature) => feature.kind === "tank" && word(feature, "holds") === "slurry",
  livestock: (feature) => feature.kind === "animals",
  "public way": (feature) => feature.kind === "road" || has("route", "public")(feature),
};

/** Whether a feature is (part of) the hazard that a word names; a word without a test of its own is a kind of feature. */
export function isHazard(hazard: string, feature: Feature): boolean {
  const test = tests[hazard];
  if (test) return test(feature);
  return feature.kind === hazard || `${feature.kind}s` === hazard;
}
