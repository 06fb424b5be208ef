// Which rows of a card apply to a subject: by place, by condition, by element; doubtful conditions count as applying.

import type { Card, Condition, Limit } from "../model/card.ts";
import { type Feature, propertyOf, roleAndProperty } from "../model/plan.ts";
import type { Missing, Subject } from "../model/reading.ts";
import { type Holds, missingOf, nothingSupposed, silenceOf, type Supposed } from "./test-property.ts";

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

export type TestCondition = (condition: Condition, subject: Subject) => Holds;

/** Id of the row that the plan's own limit makes; it stands beside whatever else applies. */
export const ownersRow = "your-entry";

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

export interface RowsQuestion {
  readonly card: Card;
  readonly subject: Subject;
  readonly chains: readonly (readonly string[])[];
  readonly test: TestCondition;
  readonly supposed: Supposed;
}

/**
 * Rows for a subject. Elements of a list are judged apart: for each of them, and for the rows without `for_each`, the
 * nearest place with an applying row wins along each chain; specific chains go before fall-backs.
 */
export function rowsFor(question: RowsQuestion): Rows {
  const { card, subject, chains, test, supposed } = question;
  const reachable = reachableOf(card, chains);
  const onlyWished = reachable.every((limit) => limit.id === ownersRow) && reachable.length < card.limits.length;
  if (reachable.length === 0 || onlyWished) {
    const elsewhere = card.limits.some((limit) => mightSpeak(limit, question));
    return { is: elsewhere ? "no-limit-here" : "out-of-scope" };
  }
  const missing = new Set<Missing>(useUnsaid(reachable, question));
  const held = reachable.flatMap((limit): readonly Held[] => {
    if (limit.forEach && !elements(limit.forEach, subject, supposed).some((element) => speaksOf(limit, element)))
      return noneHeld;
    const holds = applies(limit, subject, test);
    return holds === "no" ? noneHeld : [{ limit, holds }];
  });
  const lists =
    held.length < 2 ? held.map(({ limit }) => limit.forEach) : [...new Set(held.map(({ limit }) => limit.forEach))];
  const rows = lists.flatMap((list) => {
    const own = lists.length === 1 ? held : held.filter(({ limit }) => limit.forEach === list);
    return elements(list, subject, supposed).flatMap((element) => {
      const spoken = own.filter(({ limit }) => speaksOf(limit, element));
      const { won, waits } = chosen(chains, spoken);
      for (const one of waits) missing.add(one);
      return won.map((limit) => ({ limit, element, fellBack: fellBack(limit, card) }));
    });
  });
  if (rows.length === 0 && missing.size === 0) return { is: "out-of-scope" };
  return { is: "rows", rows, missing: [...missing] };
}

const noneHeld: readonly Held[] = [];

const reached = new WeakMap<readonly (readonly string[])[], WeakMap<Card, readonly Limit[]>>();

/** Rows of a card for any place of the chains; the same for every subject. */
function reachableOf(card: Card, chains: readonly (readonly string[])[]): readonly Limit[] {
  const ofChains = reached.get(chains) ?? new WeakMap<Card, readonly Limit[]>();
  reached.set(chains, ofChains);
  const known =
    ofChains.get(card) ?? card.limits.filter((limit) => chains.some((chain) => chain.includes(limit.where)));
  ofChains.set(card, known);
  return known;
}

/** Whether a row of another place would speak of the subject at all; what is missing for that counts as it might. */
function mightSpeak(limit: Limit, { subject, test, supposed }: RowsQuestion): boolean {
  const named = elements(limit.forEach, subject, supposed).some((element) => speaksOf(limit, element));
  return named && applies(limit, subject, test) !== "no";
}

/** A row whose conditions hold, or would have to be told more before they can. */
interface Held {
  readonly limit: Limit;
  readonly holds: "yes" | readonly Missing[];
}

interface Chosen {
  readonly won: readonly Limit[];
  /** What rows of the deciding places wait for. */
  readonly waits: readonly Missing[];
}

function chosen(chains: readonly (readonly string[])[], held: readonly Held[]): Chosen {
  const [only, second] = held;
  // One alone stands, wherever it is from: only rows for a place of the chains are held.
  if (only && !second) return only.holds === "yes" ? { won: [only.limit], waits: [] } : { won: [], waits: only.holds };
  const owners = held.filter(({ limit }) => limit.id === ownersRow);
  const published = held.filter(({ limit }) => limit.id !== ownersRow);
  const nearest = chains.flatMap((chain) => atNearestPlace(chain, published));
  const specific = nearest.filter(({ limit }) => limit.where !== "anywhere");
  const standing = [...new Set([...owners, ...(specific.length > 0 ? specific : nearest)])];
  return {
    won: standing.flatMap(({ limit, holds }) => (holds === "yes" ? [limit] : [])),
    waits: standing.flatMap(({ holds }) => (holds === "yes" ? [] : holds)),
  };
}

/** Whether a row of any place stands in for the rows of other places. */
function fellBack(row: Limit, card: Card): boolean {
  return row.where === "anywhere" && row.id !== ownersRow && card.limits.some((limit) => limit.where !== "anywhere");
}

/** Rows of the nearest place that has any. A row that waits to be told more keeps farther places from deciding in its stead. */
function atNearestPlace(chain: readonly string[], held: readonly Held[]): readonly Held[] {
  for (const place of chain) {
    const here = held.filter(({ limit }) => limit.where === place);
    if (here.length > 0) return here;
  }
  return [];
}

/** The condition of a row on the element of its own `for_each` list. */
const ofElement = "each";

/** Whether a row speaks of an element: it does unless its `each` names others. */
function speaksOf(limit: Limit, element: string | null): boolean {
  if (element === null) return true;
  const named = limit.when.find((condition) => condition.of === ofElement);
  if (!named || !("is" in named)) return true;
  return Array.isArray(named.is) ? named.is.includes(element) : named.is === element;
}

/**
 * Whether all conditions of a row hold; what they lack where nothing speaks against them. The owner's own row holds
 * where a published one of any place would.
 */
function applies(limit: Limit, subject: Subject, test: TestCondition): "yes" | "no" | readonly Missing[] {
  if (limit.standsFor) {
    const published = limit.standsFor
      .filter((row) => elements(row.forEach, subject).some((element) => speaksOf(row, element)))
      .map((row) => applies(row, subject, test));
    if (published.includes("yes")) return "yes";
    return published.find((holds) => typeof holds !== "string") ?? "no";
  }
  const wanted: Missing[] = [];
  for (const condition of limit.when) {
    if (condition.of === ofElement) continue;
    const holds = test(condition, subject);
    if (holds === "no") return "no";
    if (typeof holds !== "string") wanted.push(...holds);
  }
  return wanted.length === 0 ? "yes" : wanted;
}

const noElement: readonly (string | null)[] = [null];

/** The words of a `for_each` list; a single null where the row has none; empty where the feature has no such list. */
function elements(
  forEach: string | undefined,
  subject: Subject,
  supposed: Supposed = nothingSupposed,
): readonly (string | null)[] {
  if (!forEach) return noElement;
  const word = supposed.get(forEach);
  if (typeof word === "string") return [word];
  const [role, property] = roleAndProperty(forEach);
  const feature = subject[role];
  const list = feature ? propertyOf(feature, property) : undefined;
  if (typeof list === "string") return [list];
  return Array.isArray(list) ? list.filter((word): word is string => typeof word === "string") : [];
}

/** Lists that tell what a thing is there for. Where all of those that a rule looks at are left out, it is asked for. */
const uses: ReadonlySet<string> = new Set(["for"]);
const keeps: ReadonlySet<string> = new Set(["keep_in", "keep_out"]);
/** Kinds that have a list of uses. */
const used: ReadonlySet<string> = new Set(["surface", "strip", "gate", "ramp", "steps"]);
/** Any use that no row names. */
const anyOther = "something else";

/** What is asked where rows look through a list that the plan leaves out. */
function useUnsaid(limits: readonly Limit[], { subject, supposed }: RowsQuestion): readonly Missing[] {
  const lists = listsOf(limits);
  return lists.flatMap((list) => {
    const [role = "", property = ""] = list.split(".");
    const feature = subject[role];
    if (!feature || supposed.has(list) || propertyOf(feature, property) !== undefined) return [];
    if (keeps.has(property))
      return feature.kind === "fence" && keepsNothing(feature) ? missingOf(feature, "keep_in") : [];
    if (!uses.has(property) || !used.has(feature.kind)) return [];
    const words = limits.filter((limit) => limit.forEach === list).map(usesNamed);
    if (words.includes(null)) return missingOf(feature, property);
    return silenceOf(feature, property, { of: list, answers: [...new Set(words.flat() as string[]), anyOther] });
  });
}

const listed = new WeakMap<readonly Limit[], readonly string[]>();

/** The lists that rows look through, each once. */
function listsOf(limits: readonly Limit[]): readonly string[] {
  const known = listed.get(limits) ?? [...new Set(limits.flatMap((limit) => limit.forEach ?? []))];
  listed.set(limits, known);
  return known;
}

function keepsNothing(fence: Feature): boolean {
  return [...keeps].every((property) => propertyOf(fence, property) === undefined);
}

/** The uses that a row names; null where it takes any. */
function usesNamed({ when }: Limit): readonly string[] | null {
  const named = when.find((condition) => condition.of === ofElement);
  if (!named || !("is" in named)) return null;
  return Array.isArray(named.is) ? named.is : [String(named.is)];
}
