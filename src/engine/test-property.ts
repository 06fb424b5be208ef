// What a condition of a row asks of a property, and what is missing where the plan is silent.

import { askedOf } from "../site/parts.ts";
import { askWords } from "../model/property-words.ts";
import type { Condition } from "../model/card.ts";
import { hasSorts, keyOfKind } from "../model/kinds.ts";
import { type Feature, isQuantity, type Property, propertyOf, roleAndProperty } from "../model/plan.ts";
import type { Missing, Subject } from "../model/reading.ts";

/** How a condition stands: a number in doubt may be on either side. */
export type Holds = "yes" | "no" | "perhaps" | readonly Missing[];

/** What is supposed to have been said where the plan is silent, by `role.property`. */
export type Supposed = ReadonlyMap<string, boolean | string>;
export const nothingSupposed: Supposed = new Map();

/** What a property is tested with: numbers are handed to `inBand`; `isRuledOut` knows what the plan lists as looked for and not there. */
export interface PropertyTest {
  readonly inBand: (condition: Condition, subject: Subject) => Holds;
  readonly supposed?: Supposed;
  readonly isRuledOut?: (feature: Feature, property: string) => boolean;
}

/**
 * Tests a condition on a plain property. Where true or false is asked of what is no yes or no (a group, a number, a
 * text), true means that the plan gives it, and false that it does not.
 */
export function testProperty(condition: Condition, subject: Subject, test: PropertyTest): Holds {
  const [role, property] = roleAndProperty(condition.of);
  const feature = subject[role];
  if (!feature) return "no";
  const value = test.supposed?.get(condition.of) ?? valueOf(feature, property);
  if (!("is" in condition)) return isQuantity(value) ? test.inBand(condition, subject) : missingOf(feature, property);
  const wanted = Array.isArray(condition.is) ? condition.is : [condition.is];
  const asksWhether = typeof wanted[0] === "boolean";
  if (property === "kind" && wanted.includes(feature.kind)) return "yes";
  if (property === "kind" && value === undefined && !mayHaveKind(feature, wanted)) return "no";
  const asks = condition.silent === "ask" || property === "existing";
  if (value === undefined && asks && !test.isRuledOut?.(feature, property))
    return asksWhether
      ? silenceOf(feature, property, { of: condition.of, answers: [false, true] })
      : missingOf(feature, property);
  if (value === undefined) return wanted.includes(false) ? "yes" : asksWhether ? "no" : missingOf(feature, property);
  if (asksWhether)
    return wanted.includes(isSaidSo(value, () => asks && isNothing(condition, subject, test))) ? "yes" : "no";
  if (Array.isArray(value)) return value.some((word) => wanted.includes(word as string)) ? "yes" : "no";
  return wanted.includes(value) ? "yes" : "no";
}

/** Whether what the plan gives means yes: it does where it is no yes or no, but for a figure of nothing. */
function isSaidSo(value: Property, saysNothing: () => boolean): boolean {
  return typeof value === "boolean" ? value : !(isQuantity(value) && saysNothing());
}

/** Whether a figure is surely nothing (0 kPa). */
function isNothing({ of }: Condition, subject: Subject, { inBand }: PropertyTest): boolean {
  return inBand({ of, upTo: 0 }, subject) === "yes";
}

/** Whether a thing whose sort is unsaid may be of one of these sorts: not where they are kinds of feature, nor where its kind has no sorts. */
function mayHaveKind(feature: Feature, wanted: readonly (string | boolean)[]): boolean {
  return hasSorts.has(feature.kind) && !wanted.every((word) => keyOfKind(String(word)));
}

export function missingOf(feature: Feature, property: string): readonly Missing[] {
  const whole = askedOf(feature);
  const asks = askWords(property, `${whole.kind} "${whole.name}"`);
  return [{ feature: whole, property, asks, why: "missing" }];
}

export function silenceOf(
  feature: Feature,
  property: string,
  silence: NonNullable<Missing["silence"]>,
): readonly Missing[] {
  return missingOf(feature, property).map((missing) => ({ ...missing, silence }));
}

/** A property of a feature; whether it stands already is one too: what is changed to take more ground is as new. */
function valueOf(feature: Feature, property: string): Property | undefined {
  if (property !== "existing") return propertyOf(feature, property);
  if (feature.standingUnsaid) return undefined;
  return feature.existing && feature.reworked !== true;
}

/** Whether a trench is dug at all where nobody has said whether what lies in it is new: asked, or `none` where it is supposed to be there. */
export function digUnsaid(subject: Subject, supposed: Supposed = nothingSupposed): readonly Missing[] | "none" | null {
  for (const [role, feature] of Object.entries(subject)) {
    if (feature.kind !== "trench" || !feature.standingUnsaid || !feature.partOf) continue;
    const of = `${role}.existing`;
    if (supposed.get(of) === true) return "none";
    if (!supposed.has(of)) return silenceOf(feature.partOf, "existing", { of, answers: [false, true] });
  }
  return null;
}
