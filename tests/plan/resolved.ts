// Resolves plan texts for the tests of this folder, and looks at the numbers in what comes out.

import { fileURLToPath } from "node:url";
import type { Feature, Plan, Property } from "../../src/model/plan.ts";
import { swayLength, type Quantity, type Spot } from "../../src/model/quantity.ts";
import { resolvePlan, type ResolveOptions, type Resolved } from "../../src/plan/resolve-plan.ts";
import { readYaml } from "../../src/reading/read-yaml.ts";
import type { SourceText } from "../../src/reading/source-text.ts";
import { kindsFrom } from "../house/compile-kinds.ts";

export const kindTable = kindsFrom(fileURLToPath(new URL("../../schemas", import.meta.url)));

/** The text read as YAML; it must be readable. */
export function sourceOf(text: string, file = "plan.yaml"): SourceText {
  const { document, problems } = readYaml(file, text);
  if (document === null || problems.length > 0) throw new Error(JSON.stringify(problems));
  return document;
}

/** A plan text resolved, together with any texts it includes. */
export function resolveText(text: string, options: ResolveOptions = {}): Resolved {
  return resolvePlan({ source: sourceOf(text), broken: [] }, kindTable, options);
}

/** A plan text that must resolve without a problem. */
export function planOf(text: string, options: ResolveOptions = {}): Plan {
  const { plan, problems } = resolveText(text, options);
  if (problems.length > 0) throw new Error(JSON.stringify(problems, null, 1));
  return plan;
}

export const valueOf = (plan: Plan, quantity: Quantity): number => plan.numbers.values[quantity.id] as number;
export const uOf = (plan: Plan, quantity: Quantity): number => swayLength(plan.numbers.sways[quantity.id] as never);

/** East and north of a spot. */
export const pointOf = (plan: Plan, spot: Spot): readonly [number, number] => [
  valueOf(plan, spot.east),
  valueOf(plan, spot.north),
];

export function featureOf(plan: Plan, name: string): Feature {
  const feature = plan.features.find((one) => one.name === name);
  if (feature === undefined) throw new Error(`no ${name}`);
  return feature;
}

/** The points of a feature's shape. */
export function spotsOf(feature: Feature): readonly Spot[] {
  const { shape } = feature;
  if (shape === null) throw new Error(`${feature.name} has no shape`);
  if (shape.form === "point") return [shape.at];
  if (shape.form === "circle") return [shape.centre];
  return shape.form === "line" ? shape.line : shape.outline;
}

/** Standard uncertainty of a function of quantities with the given slopes: u^2 = sum over causes of (sum of slope x sway)^2. */
export function spread(plan: Plan, parts: readonly (readonly [slope: number, of: Quantity])[]): number {
  const byCause = new Map<number, number>();
  for (const [slope, of] of parts) {
    for (const [cause, by] of plan.numbers.sways[of.id] ?? [])
      byCause.set(cause, (byCause.get(cause) ?? 0) + slope * by);
  }
  return swayLength(byCause);
}

/** A number of a feature by its dotted property name. */
export function numberOf(feature: Feature, dotted: string): Quantity {
  let at: Property | undefined = feature.properties;
  for (const step of dotted.split(".")) at = (at as Readonly<Record<string, Property>> | undefined)?.[step];
  if (typeof at !== "object" || !("dimension" in at)) throw new Error(`${dotted} of ${feature.name} is no number`);
  return at as unknown as Quantity;
}
