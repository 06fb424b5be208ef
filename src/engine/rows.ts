// Which rows of a card apply to a subject: by place, by condition, by element; doubtful conditions count as applying.

import type { Card, Condition, Limit } from "../model/card.ts";
import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Missing, Subject } from "../model/reading.ts";
import { propertyWords } from "./requirement.ts";

/** A row that applies, for one element of `for_each` (null where there is none). */
export interface AppliedRow {
  readonly limit: Limit;
  readonly element: string | null;
  readonly fellBack: boolean;
}

export type Rows =
  | { readonly is: "rows"; readonly rows: readonly AppliedRow[]; readonly missing: readonly Missing[] }
  | { readonly is: "no-limit-here" }
  | { readonly is: "out-of-scope" };

/** How a condition stands: a number in doubt may be on either side. */
export type Holds = "yes" | "no" | "perhaps" | readonly Missing[];
export type TestCondition = (condition: Condition, subject: Subject) => Holds;

/** The chain of a place up to `anywhere`. */
export function chainOf(place: string, parents: ReadonlyMap<string, string>): readonly string[] {
  const chain: string[] = [];
  let at: string | undefined = place;
  while (at !== undefined && at !== "anywhere" && !chain.includes(at)) {
    chain.push(at);
    at = parents.get(at);
  }
  return [...chain, "anywhere"];
}

/** Rows for a subject. The nearest place with an applying row wins along each chain; specific chains go before fall-backs. */
export function rowsFor(
  card: Card,
  subject: Subject,
  chains: readonly (readonly string[])[],
  test: TestCondition,
): Rows {
  const reachable = card.limits.filter((limit) => chains.some((chain) => chain.includes(limit.where)));
  if (reachable.length === 0) return { is: "no-limit-here" };
  const missing: Missing[] = [];
  const applying = new Set(reachable.filter((limit) => applies(limit, subject, test, missing)));
  const won = chains.map((chain) => winners(chain, applying));
  const specific = won.flat().filter((limit) => limit.where !== "anywhere");
  const chosen = [...new Set(specific.length > 0 ? specific : won.flat())];
  const elsewhere = card.limits.some((limit) => limit.where !== "anywhere");
  const rows = chosen.flatMap((limit) =>
    elements(limit, subject).map((element) => ({ limit, element, fellBack: limit.where === "anywhere" && elsewhere })),
  );
  if (rows.length === 0 && missing.length === 0) return { is: "out-of-scope" };
  return { is: "rows", rows, missing };
}

function winners(chain: readonly string[], applying: ReadonlySet<Limit>): readonly Limit[] {
  for (const place of chain) {
    const here = [...applying].filter((limit) => limit.where === place);
    if (here.length > 0) return here;
  }
  return [];
}

function applies(limit: Limit, subject: Subject, test: TestCondition, missing: Missing[]): boolean {
  const wanted: Missing[] = [];
  for (const condition of limit.when) {
    const holds = test(condition, subject);
    if (holds === "no") return false;
    if (typeof holds !== "string") wanted.push(...holds);
  }
  missing.push(...wanted);
  return wanted.length === 0;
}

/** The words of a `for_each` list; a single null where the row has none; empty where the feature has no such list. */
function elements(limit: Limit, subject: Subject): readonly (string | null)[] {
  if (!limit.forEach) return [null];
  const [role = "", ...rest] = limit.forEach.split(".");
  const feature = subject[role];
  const list = feature ? propertyOf(feature, rest.join(".")) : undefined;
  if (typeof list === "string") return [list];
  return Array.isArray(list) ? list.filter((word): word is string => typeof word === "string") : [];
}

/** Tests a condition on a plain property; numbers are handed to `inBand`. */
export function testProperty(
  condition: Condition,
  subject: Subject,
  inBand: (condition: Condition, subject: Subject) => Holds,
): Holds {
  const [role = "", ...rest] = condition.of.split(".");
  const feature = subject[role];
  if (!feature) return "no";
  const property = rest.join(".");
  const value =
    property === "kind" ? feature.kind : property === "existing" ? feature.existing : propertyOf(feature, property);
  if (!("is" in condition)) {
    if (isQuantity(value)) return inBand(condition, subject);
    return [
      {
        feature,
        property,
        asks: `the ${propertyWords(property)} of ${feature.kind} "${feature.name}"`,
        why: "missing",
      },
    ];
  }
  const wanted = Array.isArray(condition.is) ? condition.is : [condition.is];
  if (value === undefined)
    return wanted.includes(false)
      ? "yes"
      : typeof wanted[0] === "boolean"
        ? "no"
        : [
            {
              feature,
              property,
              asks: `the ${propertyWords(property)} of ${feature.kind} "${feature.name}"`,
              why: "missing",
            },
          ];
  if (Array.isArray(value)) return value.some((word) => wanted.includes(word as string)) ? "yes" : "no";
  return wanted.includes(value) ? "yes" : "no";
}
