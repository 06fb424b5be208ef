// The texts of a plan taken together: the plan's own file first, then the files it includes.

import { kinds, type KindKey } from "../model/kinds.ts";
import { descend, entries, isLost, items, type Node } from "./node.ts";

/** The root of every text of the plan. */
export interface Texts {
  readonly roots: readonly Node[];
}

/** One feature as written: kind, name, and its node with options and changes laid over it. */
export interface FeatureText {
  readonly kind: KindKey;
  readonly name: string;
  readonly node: Node;
}

/** The node under some keys in the first text that has it. */
export function firstAt({ roots }: Texts, ...keys: readonly string[]): Node | null {
  for (const root of roots) {
    const node = descend(root, ...keys);
    if (node !== null) return node;
  }
  return null;
}

/** Entries of a mapping under some keys, over all texts. */
export function allEntries({ roots }: Texts, ...keys: readonly string[]): readonly (readonly [string, Node])[] {
  return roots.flatMap((root) => entries(descend(root, ...keys)));
}

/** Items of a list under some keys, over all texts. */
export function allItems({ roots }: Texts, ...keys: readonly string[]): readonly Node[] {
  return roots.flatMap((root) => items(descend(root, ...keys)));
}

/** The keys under which features stand, in the order of the vocabulary. */
export const kindKeys = Object.keys(kinds) as readonly KindKey[];

/** Tells of a name what it would be, had it not been passed over: a kind of feature, a peg, or nothing. */
export type LostNames = (name: string) => KindKey | "peg" | null;

/** Names of things that were written but are passed over; nothing more is said about them. */
export function lostNames({ roots }: Texts, option?: string): LostNames {
  const under = [[], ...(option === undefined ? [] : [["options", option, "add"]])];
  const isGone = (...path: readonly string[]): boolean => roots.some((root) => isLost(root, path));
  return (name) => {
    if (isGone("survey", "stations", name)) return "peg";
    return kindKeys.find((kind) => under.some((path) => isGone(...path, kind, name))) ?? null;
  };
}

/** Every feature written under a root's kinds, in the order of the vocabulary and then of the file. */
export function featuresUnder(root: Node | null): readonly FeatureText[] {
  return kindKeys.flatMap((kind) => entries(descend(root, kind)).map(([name, node]) => ({ kind, name, node })));
}

/** Every feature of the texts, without options. */
export function featuresOf(texts: Texts): readonly FeatureText[] {
  return kindKeys.flatMap((kind) => allEntries(texts, kind).map(([name, node]) => ({ kind, name, node })));
}
