// A node of the plan's data that remembers where it stands in the file, also after options and changes laid over it.

import type { Path, Place } from "../model/path.ts";
import type { SourceText } from "../reading/source-text.ts";

/** One node. `over` holds the children that an option or a change has put in place of the written ones. */
export interface Node {
  readonly data: unknown;
  readonly place: Place;
  readonly over?: ReadonlyMap<string, Node | null>;
  readonly text: PassedOver;
}

/** What of a text is passed over: nodes told of as broken, and what was left out already when it was read. */
export interface PassedOver {
  readonly skip: ReadonlySet<string>;
  readonly isSpoiled: (path: Path) => boolean;
}

type Mapping = Readonly<Record<string, unknown>>;

/** Key of a path in the set of nodes to skip. No name holds a control character. */
export function skipKey(path: Path): string {
  return path.map(String).join("\u0000");
}

/** The root of a text; nodes at the `broken` paths are treated as if they were not written. */
export function rootNode(
  { file, data, isSpoiled }: Pick<SourceText, "file" | "data" | "isSpoiled">,
  broken: readonly Path[],
): Node {
  const text = { skip: new Set(broken.map(skipKey)), isSpoiled: isSpoiled ?? (() => false) };
  return { data, place: { file, path: [] }, text };
}

/** Whether something was written at a path below the root that is passed over: it has been told of already. */
export function isLost(root: Node, path: Path): boolean {
  const { skip, isSpoiled } = root.text;
  return path.some((_, i) => skip.has(skipKey(path.slice(0, i + 1)))) || isSpoiled(path);
}

/** Whether something in a mapping is passed over, so that what seems to be missing in it may have been written. */
export function isDamaged(node: Node): boolean {
  if (!isMapping(node.data)) return false;
  const { path } = node.place;
  return (
    Object.keys(node.data).some((key) => node.text.skip.has(skipKey([...path, key]))) ||
    node.text.isSpoiled([...path, ""])
  );
}

/** Whether data is a mapping (a plain object). */
export function isMapping(data: unknown): data is Mapping {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

/** The child under a key of a mapping or an index of a list; null where there is none or it is broken. */
export function child(node: Node | null, key: string | number): Node | null {
  if (node === null) return null;
  const laidOver = node.over?.get(String(key));
  if (laidOver !== undefined) return laidOver;
  const { data } = node;
  if (typeof data !== "object" || data === null || !Object.hasOwn(data, key)) return null;
  const path = [...node.place.path, key];
  if (node.text.skip.has(skipKey(path))) return null;
  return { data: (data as Mapping)[key], place: { file: node.place.file, path }, text: node.text };
}

/** Whether nothing is written under a key; false also where what is written there is broken and told of already. */
export function isAbsent(node: Node, key: string): boolean {
  const laid = node.over?.get(key);
  if (laid !== undefined) return laid === null;
  if (node.text.isSpoiled([...node.place.path, key])) return false;
  return !isMapping(node.data) || !Object.hasOwn(node.data, key);
}

/** The node reached by several keys. */
export function descend(node: Node | null, ...keys: readonly (string | number)[]): Node | null {
  return keys.reduce<Node | null>((at, key) => child(at, key), node);
}

/** Keys and children of a mapping in the order written; empty for anything else. */
export function entries(node: Node | null): readonly (readonly [string, Node])[] {
  if (node === null || !isMapping(node.data)) return [];
  const keys = new Set([...Object.keys(node.data), ...(node.over?.keys() ?? [])]);
  return [...keys].flatMap((key) => {
    const inner = child(node, key);
    return inner === null ? [] : [[key, inner] as const];
  });
}

/** Items of a list; empty for anything else. */
export function items(node: Node | null): readonly Node[] {
  if (node === null || !Array.isArray(node.data)) return [];
  return node.data.flatMap((_, index) => child(node, index) ?? []);
}

/** Whether an entry of a list could not be read: that was told of then, and its list says nothing more. */
export function lacksEntries(node: Node | null): boolean {
  return node !== null && Array.isArray(node.data) && items(node).length < node.data.length;
}

/** The text of a node, trimmed; null where it is not a text. */
export function textOf(node: Node | null): string | null {
  return node !== null && typeof node.data === "string" ? node.data.trim() : null;
}

/** The texts of a list, or of one text standing alone. */
export function textsOf(node: Node | null): readonly Node[] {
  if (textOf(node) !== null) return [node as Node];
  return items(node).filter((item) => textOf(item) !== null);
}

/** `base` with `change` laid over it: mappings are merged key by key, everything else is replaced. */
export function laidOver(base: Node, change: Node): Node {
  if (!isMapping(base.data) || !isMapping(change.data)) return change;
  const over = new Map<string, Node | null>(base.over ?? []);
  for (const [key, node] of entries(change)) {
    const below = child(base, key);
    over.set(key, below === null ? node : laidOver(below, node));
  }
  return { ...base, over };
}

/** `base` without some keys. */
export function without(base: Node, keys: Iterable<string>): Node {
  const over = new Map<string, Node | null>(base.over ?? []);
  for (const key of keys) over.set(key, null);
  return { ...base, over };
}
