// The keys of a group: their text, their place, and those that cannot stand.

import { isScalar } from "yaml";
import type { Node, Pair, YAMLMap } from "yaml";
import type { ProblemCode } from "../model/problem.ts";
import type { NodeRange } from "./breaches.ts";
import { quoted } from "./problem-list.ts";
import type { FaultWords } from "./closed-words.ts";

/** A key as it is written. */
export function keyText(pair: Pair): string {
  const { key } = pair;
  if (isScalar(key)) return typeof key.value === "string" ? key.value : (key.source ?? String(key.value));
  return typeof key === "string" ? key : "";
}

/** From the key of an entry up to the next key. */
export function rangeOfEntry(map: YAMLMap, at: number): NodeRange {
  const from = startOfKey(map.items[at]) ?? 0;
  const end = (startOfKey(map.items[at + 1]) ?? Infinity) - 1;
  return [from, end, Math.min(end, map.range?.[2] ?? end)];
}

/** Offset of a key. */
export function startOfKey(pair: Pair | undefined): number | undefined {
  return (pair?.key as Node | null | undefined)?.range?.[0];
}

/** A key that cannot stand: written twice, a merge key, or the one name that JavaScript keeps for itself. */
export function badKey(name: string, lineOfFirst: number | null): (FaultWords & { code: ProblemCode }) | null {
  if (lineOfFirst !== null) {
    return {
      code: "duplicate-key",
      expected: "each key once",
      got: `${quoted(name)} for the second time; the first is on line ${lineOfFirst}`,
      hint: "keep one of them, or rename one; only the first was read",
    };
  }
  if (name === "<<") {
    return {
      code: "unknown-key",
      expected: "the properties written out",
      got: 'a merge key "<<"',
      hint: "merge keys are not read; write the properties out, or use an alias (*name) for a whole value",
    };
  }
  if (name !== "__proto__") return null;
  return {
    code: "bad-name",
    expected: "a name that begins with a letter",
    got: quoted(name),
    hint: "choose another name",
  };
}
