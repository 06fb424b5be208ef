// From the nodes of a document to plain data, telling everything that is not what it seems on the way.

import { isAlias, isMap, isScalar, isSeq } from "yaml";
import type { Alias, Node, Pair, Scalar, YAMLMap, YAMLSeq } from "yaml";
import type { ProblemCode } from "../model/problem.ts";
import type { NodeRange } from "./breaches.ts";
import { decimalCommaWords, isDecimalComma, tightColonWords, trapInBrackets, trapsInBraces } from "./comma-traps.ts";
import type { Trap } from "./comma-traps.ts";
import { nearestWord } from "./nearest-word.ts";
import { deepestNesting } from "./parse-tokens.ts";
import { quoted } from "./problem-list.ts";
import { badKey, keyText, rangeOfEntry, startOfKey } from "./read-key.ts";
import type { SyntaxFault } from "./closed-words.ts";

/** Most uses of aliases in one file. */
const mostAliasUses = 1_000;
/** Most entries that aliases may stand for in all. Each is walked again by everything that reads the data. */
const mostBorrowed = 100_000;

/**
 * Depth from which a group with broken syntax is left out as a whole: a feature under its kind. Above that (the whole
 * file, a section) only the broken entry is left out.
 */
const featureLevel = 2;

/** What an entry turned into. Data `undefined` means that it is left out because of a problem already told. */
interface Held {
  readonly data: unknown;
  /** Entries within, aliases written out. */
  readonly size: number;
  /** Levels within, aliases written out. */
  readonly height: number;
  /** Left out because its syntax is broken, so that what stands around it may be broken too. */
  readonly isBroken?: true;
}

const leftOut: Held = { data: undefined, size: 1, height: 0 };
const broken: Held = { ...leftOut, isBroken: true };

/** The state of one walk over one document. */
export interface Walk {
  readonly text: string;
  readonly tell: (code: ProblemCode, fault: SyntaxFault) => void;
  /** Whether the syntax is broken within a range, apart from what a range within it took already. */
  readonly takeBreaches: (range: NodeRange) => boolean;
  readonly lineOf: (offset: number) => number;
  readonly pairs: WeakMap<YAMLMap, ReadonlyMap<string, Pair>>;
  readonly targets: WeakMap<Alias, Node>;
  readonly leftOut: WeakMap<object, ReadonlySet<string>>;
  readonly damaged: WeakSet<object>;
  /** What each anchor holds; null while it is still being read. */
  readonly anchors: Map<string, { readonly node: Node; readonly held: Held | null }>;
  aliasUses: number;
  borrowed: number;
  /** Set once the file asks for more than is given; nothing of it is used then. */
  gaveUp: boolean;
}

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

function readAlias(walk: Walk, alias: Alias, level: number): Held {
  const offset = alias.range?.[0] ?? 0;
  walk.aliasUses++;
  if (walk.aliasUses > mostAliasUses) return giveUp(walk, offset, `more than ${mostAliasUses} uses of aliases`);
  const anchored = walk.anchors.get(alias.source);
  if (anchored === undefined) {
    const near = nearestWord(alias.source, [...walk.anchors.keys()]);
    walk.tell("unknown-name", {
      offset,
      expected: "an alias whose & mark stands further up",
      got: quoted(`*${alias.source}`),
      hint: near === null ? `write &${alias.source} before the entry that is meant` : `did you mean *${near}?`,
    });
    return leftOut;
  }
  if (anchored.held === null) {
    walk.tell("circular", {
      offset,
      expected: "an alias to something that is complete",
      got: `${quoted(`*${alias.source}`)} inside the very entry it stands for`,
      hint: "write the entry out",
    });
    return leftOut;
  }
  walk.targets.set(alias, anchored.node);
  walk.borrowed += anchored.held.size;
  if (walk.borrowed > mostBorrowed) {
    return giveUp(walk, offset, `aliases that stand for more than ${mostBorrowed} entries`);
  }
  if (level + anchored.held.height > deepestNesting) return giveUp(walk, offset, "aliases that nest ever deeper");
  return anchored.held;
}

function giveUp(walk: Walk, offset: number, got: string): Held {
  walk.gaveUp = true;
  walk.tell("too-many-aliases", {
    offset,
    expected: "a file that uses aliases (*name) sparingly",
    got,
    hint: "write the entries out; nothing of this file was read",
  });
  return leftOut;
}

function readScalar(walk: Walk, scalar: Scalar): Held {
  const { value } = scalar;
  const offset = scalar.range?.[0] ?? 0;
  if (typeof value === "number" && !Number.isFinite(value)) {
    walk.tell("not-a-number", {
      offset,
      expected: "a number",
      got: quoted(scalar.source ?? String(value)),
      hint: "leave the entry out, or write unknown where that is allowed, if the number is not known",
    });
    return leftOut;
  }
  if (typeof value === "string" && scalar.type === "PLAIN" && isDecimalComma(value)) {
    walk.tell("decimal-comma", { offset, ...decimalCommaWords(value), hint: `write ${value.replaceAll(",", ".")}` });
    return leftOut;
  }
  const isPlain = value === null || ["string", "number", "boolean"].includes(typeof value);
  return { data: isPlain ? value : (scalar.source ?? null), size: 1, height: 0 };
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
