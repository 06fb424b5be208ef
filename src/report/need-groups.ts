// Needs as they are asked on the page: all questions about one thing in one line, all hazards in one question.

import { kinds, type KindKey } from "../model/kinds.ts";
import type { Need } from "../model/finding.ts";
import { clean } from "./clean.ts";

/** One line of the page: what is asked, and the needs that it stands for. */
export interface AskedTogether {
  readonly asks: string;
  readonly needs: readonly Need[];
}

/** Needs in their order, those about one thing together, and all hazards that nobody has spoken of. */
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
  const where = [need.at?.file, need.stakes, need.reason];
  if (hazardOf(need) !== null) return JSON.stringify(["hazard", ...where]);
  const thing = thingOf(need);
  return need.reason === "missing" && thing ? JSON.stringify([thing, need.at?.file]) : null;
}

/** The hazard that a need asks after: `whether there are wells: draw them, or put "wells" under none ...`. */
function hazardOf({ reason, asks }: Need): string | null {
  if (reason !== "unsaid") return null;
  return /^whether there (?:is|are) .*\bput "([^"]+)" under none\b/.exec(asks)?.[1] ?? null;
}

/** `building "hay barn"`, from the path of what is asked for. */
function thingOf({ path }: Need): string | null {
  const [key = "", name = ""] = path.split("/");
  return Object.hasOwn(kinds, key) && name !== "" ? `${kinds[key as KindKey]} "${name}"` : null;
}

function asksOf(group: readonly Need[]): string {
  const [first] = group;
  if (!first || group.length === 1) return clean(first?.asks ?? "");
  const hazards = group.flatMap((need) => hazardOf(need) ?? []);
  if (hazards.length > 0) return hazardsAsked(hazards.map(clean));
  const thing = thingOf(first) ?? "";
  return clean(`${thing}: ${group.map(({ asks }) => withoutThing(asks, thing)).join("; ")}`);
}

function hazardsAsked(hazards: readonly string[]): string {
  const list = `${hazards.slice(0, -1).join(", ")} or ${hazards.at(-1) ?? ""}`;
  return `whether there is any of this on the plot or near it: ${list}. Draw what is there. What you looked for and did not find goes under none, as none: [${hazards[0] ?? ""}, ${hazards[1] ?? ""}]`;
}

/** `the height of fence "hens"` -> `the height`; `where stock "shale" comes from` -> `where it comes from`. */
function withoutThing(asks: string, thing: string): string {
  const short = asks.endsWith(` of ${thing}`) ? asks.slice(0, -` of ${thing}`.length) : asks.replace(thing, "it");
  return short.replace(/,$/, "");
}
