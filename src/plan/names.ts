// Every name of the plan, kinds and pegs together: what it belongs to, whether it is well formed, and the nearest one.

import { kinds, type KindKey } from "../model/kinds.ts";
import { nearestWord } from "../reading/nearest-word.ts";
import type { Node } from "./node.ts";
import type { FeatureText, LostNames } from "./sources.ts";
import type { Troubles } from "./troubles.ts";

/** What a name stands for. */
export type Named =
  | { readonly is: "peg"; readonly name: string; readonly node: Node }
  | { readonly is: "feature"; readonly kind: KindKey; readonly name: string; readonly node: Node };

export interface Names {
  readonly find: (name: string) => Named | null;
  /** What a name would be that is written but passed over; nothing more is said of it. */
  readonly lost: LostNames;
  /** `did you mean "goat fence"?`, or words for when nothing is near. */
  readonly hint: (name: string, instead?: string) => string;
}

/** Where names stand. */
export interface NameTexts {
  readonly pegs: readonly (readonly [string, Node])[];
  readonly features: readonly FeatureText[];
  readonly lost: LostNames;
}

const wellFormed = /^\p{L}[\p{L}\p{M}\p{N}_]*(?: [\p{L}\p{M}\p{N}_]+)*$/u;

/** Gathers the names of pegs and features; two things of one name are a problem and the first keeps it. */
export function gatherNames({ pegs, features, lost }: NameTexts, troubles: Troubles): Names {
  const found = new Map<string, Named>();
  const take = (named: Named): void => {
    const before = found.get(named.name);
    if (!wellFormed.test(named.name)) reportBadName(named, troubles);
    if (before === undefined) found.set(named.name, named);
    else reportTaken(named, before, troubles);
  };
  for (const [name, node] of pegs) take({ is: "peg", name, node });
  for (const feature of features) take({ is: "feature", ...feature });
  const all = [...found.keys()];
  const hint = (name: string, instead = "write it into the plan, or use a name that is there"): string => {
    if (/^\d+$/.test(name) && found.has(`P${name}`)) return `did you mean "P${name}"?`;
    const near = nearestWord(name, all);
    return near === null ? instead : `did you mean "${near}"?`;
  };
  return { find: (name) => found.get(name) ?? null, lost: (name) => (found.has(name) ? null : lost(name)), hint };
}

function reportBadName(named: Named, troubles: Troubles): void {
  const bare = /^\d+$/.test(named.name);
  troubles.report(named.node, {
    code: "bad-name",
    part: "key",
    expected: "a name that starts with a letter and holds letters, digits, spaces and underscores",
    got: `"${named.name}"`,
    hint: bare ? `write P${named.name}` : "leave out hyphens, dots, commas and slashes",
  });
}

function reportTaken(named: Named, before: Named, troubles: Troubles): void {
  const whose = before.is === "peg" ? "a peg" : `a ${kinds[before.kind]}`;
  const same = named.is === "peg" || before.is === "peg";
  troubles.report(named.node, {
    code: "name-taken",
    part: "key",
    expected: "a name that nothing else in the plan has",
    got: `"${named.name}", which is ${whose} already`,
    hint: same
      ? "a peg that a thing stands on is written once, in the thing's own place; or give one of them another name"
      : "give one of them another name",
  });
}
