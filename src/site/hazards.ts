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
/** Words of the `none` list that stand for a property of a kind. */
const properties: Readonly<Record<string, readonly [kind: string, property: string]>> = {
  "overhead lines": ["service", "overhead"],
  "buried services": ["service", "buried"],
  "veteran trees": ["tree", "veteran"],
  "protected trees": ["tree", "protected"],
  "overhead branches": ["tree", "clearance_under"],
  "retaining walls": ["wall", "retains"],
  "live fences": ["fence", "live_wires"],
};
function tells(kind: string, property: string, feature: Feature): boolean {
  const value = propertyOf(feature, property);
  return feature.kind === kind && value !== undefined && value !== false;
}
const isWater =
  (...kinds: readonly string[]): Test =>
  (feature) =>
    feature.kind === "water" && kinds.includes(word(feature, "kind"));

const tests: Readonly<Record<string, Test>> = {
  wells: isWater("well", "borehole", "spring"),
  springs: isWater("spring"),
  watercourses: (feature) =>
    isWater("stream", "ditch", "river", "brook", "rhyne")(feature) ||
    (feature.kind === "drain" && word(feature, "form") === "ditch"),
  ponds: isWater("pond", "lake"),
  septic: (feature) => feature.kind === "septic tank" || feature.kind === "drainage field",
  gas: (feature) => isService("gas")(feature) || (feature.kind === "tank" && word(feature, "holds") === "gas"),
  oil: (feature) => feature.kind === "tank" && /oil|petrol/.test(word(feature, "holds")),
  "deep digs": (feature) => feature.kind === "excavation",
  "unknown fill": (feature) => feature.kind === "stock",
  asbestos: (feature) => feature.kind === "stock" || tells("heap", "suspect", feature),
  slurry: (feature) => feature.kind === "tank" && word(feature, "holds") === "slurry",
  livestock: (feature) => feature.kind === "animals",
  "public way": (feature) => feature.kind === "road" || tells("route", "public", feature),
};

/** Whether a feature is (part of) the hazard that a word names; a word without a test of its own is a kind of feature. */
export function isHazard(hazard: string, feature: Feature): boolean {
  const told = Object.hasOwn(properties, hazard) ? properties[hazard] : undefined;
  if (told) return tells(...told, feature);
  const test = Object.hasOwn(tests, hazard) ? tests[hazard] : undefined;
  if (test) return test(feature);
  return feature.kind === hazard || `${feature.kind}s` === hazard;
}

const drawn = new WeakMap<readonly Feature[], Map<string, boolean>>();

/** Whether any of a plan's features is the hazard; looked for once for all rules that ask. */
export function isDrawn(hazard: string, features: readonly Feature[]): boolean {
  const known = drawn.get(features) ?? new Map<string, boolean>();
  drawn.set(features, known);
  const found = known.get(hazard) ?? features.some((feature) => isHazard(hazard, feature));
  known.set(hazard, found);
  return found;
}

/** Whether the plan has looked for what a property would tell, and there is none. */
export function isRuledOut(none: readonly string[], feature: Feature, property: string): boolean {
  return none.some((word) => {
    const [kind, told] = Object.hasOwn(properties, word) ? (properties[word] ?? []) : [];
    return feature.kind === kind && property === told;
  });
}
