// A read file: its plain data, and the line and column of every entry.

import { isAlias, isMap, isSeq } from "yaml";
import type { Alias, LineCounter, Node, Pair, YAMLMap } from "yaml";
import type { Path, Position } from "../model/path.ts";

/** A file as it was read. Whatever could not be read as meant is left out of `data`, and `isSpoiled` says where. */
export interface SourceText {
  readonly file: string;
  /** Plain data: objects, lists, text, numbers, true, false, null. An alias stands as the very thing it points at. */
  readonly data: unknown;
  /**
   * Line and column of an entry's key or value, counted from 1. Where the path leads nowhere, the key of the nearest
   * entry above. A path through an alias leads to where the thing is written; a path that ends at one, to the alias.
   */
  readonly locate: (path: Path, what: "key" | "value") => Position;
  /** Whether something at this path, or around it, was left out because of a problem already told. */
  readonly isSpoiled?: (path: Path) => boolean;
}

/** What the walk over the nodes leaves behind for looking things up. */
export interface NodeIndex {
  readonly pairs: WeakMap<YAMLMap, ReadonlyMap<string, Pair>>;
  readonly targets: WeakMap<Alias, Node>;
  /** Keys left out of an object of the data. */
  readonly leftOut: WeakMap<object, ReadonlySet<string>>;
  /** Objects of the data that may lack more than is known, since their text is damaged. */
  readonly damaged: WeakSet<object>;
}

/** Node offset to line and column. */
export function positionAt(lines: LineCounter, offset: number): Position {
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

/** The node of a map entry or list item, with its key where it has one. */
interface Step {
  readonly key: Node | null;
  readonly value: Node | null;
}

function stepInto(node: Node | null, step: string | number, index: NodeIndex): Step | null {
  const at = isAlias(node) ? (index.targets.get(node) ?? null) : node;
  if (isMap(at)) {
    const pair = index.pairs.get(at)?.get(String(step));
    return pair === undefined ? null : { key: pair.key as Node | null, value: pair.value as Node | null };
  }
  if (!isSeq(at) || typeof step !== "number") return null;
  const item = at.items[step];
  return item === undefined ? null : { key: null, value: item as Node | null };
}

/** Makes `locate` for one document. */
export function makeLocate(root: Node | null, lines: LineCounter, index: NodeIndex): SourceText["locate"] {
  return (path, what) => {
    let at: Step = { key: null, value: root };
    for (const step of path) {
      const next = stepInto(at.value, step, index);
      if (next === null) return startOf(at, "key", lines);
      at = next;
    }
    return startOf(at, what, lines);
  };
}

function startOf(step: Step, what: "key" | "value", lines: LineCounter): Position {
  const wanted = what === "key" ? (step.key ?? step.value) : (step.value ?? step.key);
  const range = wanted?.range;
  // An empty value (`height:` and nothing behind it) has no width of its own: its key is what can be seen.
  const empty = range !== undefined && range !== null && range[0] === range[1];
  const offset = (empty ? step.key?.range?.[0] : undefined) ?? range?.[0] ?? 0;
  return positionAt(lines, offset);
}

/** Makes `isSpoiled` for one document. */
export function makeIsSpoiled(data: unknown, index: NodeIndex): (path: Path) => boolean {
  return (path) => {
    let at = data;
    for (const step of path) {
      if (typeof at !== "object" || at === null) return false;
      if (index.leftOut.get(at)?.has(String(step)) === true) return true;
      const present = Object.hasOwn(at, step);
      if (!present) return index.damaged.has(at);
      at = (at as Record<string | number, unknown>)[step];
    }
    return false;
  };
}
