// Which drains come to a thing, directly or through chambers and other drains.

import { type Feature, propertyOf } from "../model/plan.ts";
import { drainNodes, type StandingOf } from "./drain-nodes.ts";

/** Drains whose water reaches a feature, each once, nearest first. */
export function drainsInto(feature: Feature, standingOf: StandingOf): readonly Feature[] {
  const all = standingOf("drains").map((drain) => ({ drain, names: namesOf(drain, standingOf) }));
  const found: Feature[] = [];
  const queue = [feature.name];
  const looked = new Set(queue);
  for (let name = queue.shift(); name !== undefined; name = queue.shift()) {
    for (const { drain, names } of all) {
      if (found.includes(drain) || !endsAt(drain, names, name)) continue;
      found.push(drain);
      for (const next of [drain.name, ...names.slice(0, -1)]) if (!looked.has(next)) queue.push(next);
      for (const next of [drain.name, ...names]) looked.add(next);
    }
  }
  return found;
}

/** Names of the nodes of a drain in order. */
function namesOf(drain: Feature, standingOf: StandingOf): readonly string[] {
  return drainNodes(drain, standingOf).map((node) => node.name);
}

function endsAt(drain: Feature, names: readonly string[], name: string): boolean {
  return names.at(-1) === name || propertyOf(drain, "leads_to") === name;
}
