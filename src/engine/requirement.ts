// A requirement of a row, turned into margins that can be read and nudged together with the reading.

import type { Bound, Requirement, Table } from "../model/card.ts";
import { isQuantity, propertyOf, roleAndProperty } from "../model/plan.ts";
import { askedOf } from "../site/parts.ts";
import { askWords } from "../model/property-words.ts";
import type { Quantity, Read } from "../model/quantity.ts";
import type { Missing, Subject } from "../model/reading.ts";

/** A bound that can be evaluated; `u` is the doubt of a table's own value. */
export interface LiveBound {
  readonly value: (read: Read) => number;
  readonly u: number;
  /** Source of a table's own figure; it stands before the row's. */
  readonly source?: string;
}

/** A requirement with live bounds. */
export type LiveRequirement =
  | { readonly sense: "at_least" | "at_most"; readonly bound: LiveBound }
  | { readonly sense: "between"; readonly low: LiveBound; readonly high: LiveBound };

export type Settled =
  | { readonly live: LiveRequirement }
  | { readonly missing: readonly Missing[] }
  | { readonly noRow: string };

/** What is needed to settle a bound: the subject, the element of `for_each`, the tables. */
export interface BoundContext {
  readonly subject: Subject;
  readonly element: string | null;
  readonly tables: ReadonlyMap<string, Table>;
}

/** Makes a requirement live, or says what is missing, or that no figure is stated. */
export function settle(requirement: Requirement, context: BoundContext): Settled {
  if (requirement.sense !== "between") {
    const bound = settleBound(requirement.bound, context);
    return "value" in bound ? { live: { sense: requirement.sense, bound } } : bound;
  }
  const low = settleBound(requirement.low, context);
  if (!("value" in low)) return low;
  const high = settleBound(requirement.high, context);
  return "value" in high ? { live: { sense: "between", low, high } } : high;
}

type SettledBound = LiveBound | { readonly missing: readonly Missing[] } | { readonly noRow: string };

function settleBound(bound: Bound, context: BoundContext): SettledBound {
  switch (bound.from) {
    case "number":
      return { value: () => bound.value, u: 0 };
    case "table":
      return fromTable(bound, context);
    case "times":
      return fromProperty(bound.of, context, (number) =>
        Math.max(bound.downTo ?? -Infinity, Math.min(bound.upTo ?? Infinity, bound.times * number)),
      );
    case "over":
      return fromProperty(bound.over, context, (number) => bound.times / number);
    case "plan":
      return fromProperty(bound.property, context, (number) => number);
  }
}

function fromTable(bound: Extract<Bound, { from: "table" }>, { element, tables }: BoundContext): SettledBound {
  const key = element ?? "";
  const cell = tables.get(bound.table)?.rows.get(key)?.[bound.column];
  if (!cell || Number.isNaN(cell.value)) return { noRow: key };
  return { value: () => cell.value, u: cell.u, ...(cell.source ? { source: cell.source } : {}) };
}

function fromProperty(dotted: string, { subject }: BoundContext, form: (number: number) => number): SettledBound {
  const found = numberOf(dotted, subject);
  if ("missing" in found) return found;
  return { value: (read) => form(read(found.quantity)), u: 0 };
}

/** A number of a role by `role.property`. */
export function numberOf(
  dotted: string,
  subject: Subject,
): { readonly quantity: Quantity } | { readonly missing: readonly Missing[] } {
  const [role, property] = roleAndProperty(dotted);
  const feature = subject[role];
  if (!feature) return { missing: [] };
  const found = propertyOf(feature, property);
  if (isQuantity(found)) return { quantity: found };
  const whole = askedOf(feature);
  const asks = askWords(property, `${whole.kind} "${whole.name}"`);
  return { missing: [{ feature: whole, property, asks, why: "missing" }] };
}

/** Margins inside a requirement, as functions of the same read as the reading. */
export function margins(
  requirement: LiveRequirement,
  value: (read: Read) => number,
): { readonly inside: (read: Read) => number; readonly other?: (read: Read) => number; readonly u: number } {
  if (requirement.sense === "between") {
    const { low, high } = requirement;
    return {
      inside: (read) => value(read) - low.value(read),
      other: (read) => high.value(read) - value(read),
      u: Math.max(low.u, high.u),
    };
  }
  const { bound } = requirement;
  if (requirement.sense === "at_least") return { inside: (read) => value(read) - bound.value(read), u: bound.u };
  return { inside: (read) => bound.value(read) - value(read), u: bound.u };
}
