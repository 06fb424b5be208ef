// Needs as they are asked on the page: all questions about one thing in one line.

import { kinds, type KindKey } from "../model/kinds.ts";
import type { Need } from "../model/finding.ts";
import { clean } from "./clean.ts";

/** One line of the page: what is asked, and the needs that it stands for. */
export interface AskedTogether {
  readonly asks: string;
  readonly needs: readonly Need[];
}

/** Needs in their order, those about one thing together. */
export function askedTogether(needs: readonly Need[]): readonly AskedTogether[] {
  const groups = new Map<string, Need[]>();
  needs.forEach((need, index) => {
    const key = groupKey(need) ?? `${index}`;
    groups.set(key, [...(groups.get(key) ?? []), need]);
  });
  return [...groups.values()].map((group) => ({ asks: asksOf(group), needs: group }));
}

/** Null where a need stands by itself. */
function groupKey(need: Need): string | null {
  const thing = thingOf(need);
  return need.reason === "missing" && thing ? JSON.stringify([thing, need.at?.file]) : null;
}

/** `building "hay barn"`, from the path of what is asked for. */
function thingOf({ path }: Need): string | null {
  const [key = "", name = ""] = path.split("/");
  return Object.hasOwn(kinds, key) && name !== "" ? `${kinds[key as KindKey]} "${name}"` : null;
}

function asksOf(group: readonly Need[]): string {
  const [first] = group;
  if (!first || group.length === 1) return clean(first?.asks ?? "");
  const thing = thingOf(first) ?? "";
  return clean(`${thing}: ${group.map(({ asks }) => withoutThing(asks, thing)).join("; ")}`);
}

/** `the height of fence "hens"` -> `the height`; `where stock "shale" comes from` -> `where it comes from`. */
function withoutThing(asks: string, thing: string): string {
  const short = asks.endsWith(` of ${thing}`) ? asks.slice(0, -` of ${thing}`.length) : asks.replace(thing, "it");
  return short.replace(/,$/, "");
}
