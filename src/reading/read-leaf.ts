// The ends of a document's tree: scalars and aliases; and the state that the walk over the tree carries along.

import type { Alias, Node, Pair, Scalar, YAMLMap } from "yaml";
import type { ProblemCode } from "../model/problem.ts";
import type { NodeRange } from "./breaches.ts";
import type { SyntaxFault } from "./closed-words.ts";
import { decimalCommaWords, isDecimalComma } from "./comma-traps.ts";
import { nearestWord } from "./nearest-word.ts";
import { deepestNesting } from "./parse-tokens.ts";
import { quoted } from "./problem-list.ts";

/** Most uses of aliases in one file. */
const mostAliasUses = 1_000;
/** Most entries that aliases may stand for in all. Each is walked again by everything that reads the data. */
const mostBorrowed = 100_000;

/** What an entry turned into. Data `undefined` means that it is left out because of a problem already told. */
export interface Held {
  readonly data: unknown;
  /** Entries within, aliases written out. */
  readonly size: number;
  /** Levels within, aliases written out. */
  readonly height: number;
  /** Left out because its syntax is broken, so that what stands around it may be broken too. */
  readonly isBroken?: true;
}

export const leftOut: Held = { data: undefined, size: 1, height: 0 };
export const broken: Held = { ...leftOut, isBroken: true };

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

/** What an alias stands for. */
export function readAlias(walk: Walk, alias: Alias, level: number): Held {
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

/** A text, number, flag or nothing. */
export function readScalar(walk: Walk, scalar: Scalar): Held {
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
