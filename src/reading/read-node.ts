// From the nodes of a document to plain data, telling everything that is not what it seems on the way.

import { isAlias, isMap, isScalar, isSeq } from "yaml";
import type { Node, Pair, YAMLMap, YAMLSeq } from "yaml";
import { tightColonWords, trapInBrackets, trapsInBraces } from "./comma-traps.ts";
import type { Trap } from "./comma-traps.ts";
import { broken, leftOut, readAlias, readScalar } from "./read-leaf.ts";
import type { Held, Walk } from "./read-leaf.ts";
import { badKey, keyText, rangeOfEntry, startOfKey } from "./read-key.ts";

/**
 * Depth from which a group with broken syntax is left out as a whole: a feature under its kind. Above that (the whole
 * file, a section) only the broken entry is left out.
 */
const featureLevel = 2;

/** Reads a node and everything below it. `level` is its depth in the document. */
export function readNode(walk: Walk, node: unknown, level: number): Held {
  if (walk.gaveUp) return leftOut;
  if (isAlias(node)) return readAlias(walk, node, level);
  const anchor = isScalar(node) || isMap(node) || isSeq(node) ? node.anchor : undefined;
  if (anchor !== undefined) walk.anchors.set(anchor, { node: node as Node, held: null });
  const held = readOwn(walk, node, level);
  if (anchor !== undefined) walk.anchors.set(anchor, { node: node as Node, held });
  return held;
}

function readOwn(walk: Walk, node: unknown, level: number): Held {
  if (isMap(node)) return readMap(walk, node, level);
  if (isSeq(node)) return readList(walk, node, level);
  if (isScalar(node)) return readScalar(walk, node);
  return { data: null, size: 1, height: 0 };
}

function readList(walk: Walk, list: YAMLSeq, level: number): Held {
  const trap = list.flow === true ? trapInBrackets(list, walk.text) : null;
  if (trap !== null) {
    walk.tell(trap.code, trap);
    return leftOut;
  }
  const data: unknown[] = [];
  let size = 1;
  let height = 0;
  let isWhole = true;
  for (const item of list.items) {
    const held = readItem(walk, list, item, level + 1);
    if (held.isBroken === true) return broken;
    if (held.data === undefined) isWhole = false;
    data.push(held.data);
    size += held.size;
    height = Math.max(height, held.height);
  }
  // A list that lacks an item says something else than was meant, so it goes as a whole.
  return { data: isWhole ? data : undefined, size, height: height + 1 };
}

function readItem(walk: Walk, list: YAMLSeq, item: unknown, level: number): Held {
  if (list.flow === true && isScalar(item) && item.type === "PLAIN" && typeof item.value === "string") {
    const words = tightColonWords(item.value);
    if (words !== null) {
      walk.tell("not-yaml", { offset: item.range?.[0] ?? 0, ...words });
      return leftOut;
    }
  }
  return readNode(walk, item, level);
}

function readMap(walk: Walk, map: YAMLMap, level: number): Held {
  const traps = map.flow === true ? trapsInBraces(map, walk.text) : [];
  for (const trap of traps) walk.tell(trap.code, trap);
  const entries = readEntries(walk, map, { level, traps });
  walk.pairs.set(map, entries.pairs);
  // Where the traps leave nothing of a group, it was no group.
  if (traps.length > 0 && level > 0 && Object.keys(entries.data).length === 0) return leftOut;
  const isBreached = walk.takeBreaches(map.range);
  const isDamaged = isBreached || entries.isBroken;
  if (isDamaged && level >= featureLevel) return broken;
  if (isBreached && map.flow === true) return broken;
  if (entries.lacking.size > 0) walk.leftOut.set(entries.data, entries.lacking);
  if (isDamaged) walk.damaged.add(entries.data);
  return { data: entries.data, size: entries.size, height: entries.height + 1 };
}

interface Entries {
  readonly data: Record<string, unknown>;
  readonly pairs: ReadonlyMap<string, Pair>;
  readonly lacking: ReadonlySet<string>;
  /** Whether the syntax of an entry is broken: what follows it may have been swallowed. */
  readonly isBroken: boolean;
  readonly size: number;
  readonly height: number;
}

function readEntries(
  walk: Walk,
  map: YAMLMap,
  { level, traps }: { readonly level: number; readonly traps: readonly Trap[] },
): Entries {
  const strays = new Set(traps.flatMap((trap) => trap.strays));
  const spoiled = new Set(traps.flatMap((trap) => trap.spoiled));
  const data: Record<string, unknown> = {};
  const pairs = new Map<string, Pair>();
  const lacking = new Set<string>(spoiled);
  let anyBroken = false;
  let size = 1;
  let height = 0;
  for (const [i, pair] of map.items.entries()) {
    const name = keyText(pair);
    if (strays.has(pair)) continue;
    const first = startOfKey(pairs.get(name));
    const fault = badKey(name, first === undefined ? null : walk.lineOf(first));
    if (fault !== null) {
      walk.tell(fault.code, { offset: startOfKey(pair) ?? 0, ...fault });
      continue;
    }
    pairs.set(name, pair);
    const held = readNode(walk, pair.value, level + 1);
    size += held.size;
    height = Math.max(height, held.height);
    const isBroken = level < featureLevel && walk.takeBreaches(rangeOfEntry(map, i));
    anyBroken ||= isBroken || held.isBroken === true;
    if (held.data === undefined || spoiled.has(name) || isBroken) lacking.add(name);
    else data[name] = held.data;
  }
  return { data, pairs, lacking, isBroken: anyBroken, size, height };
}
