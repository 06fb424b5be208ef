// Where the end of a drain run meets what takes its water: the next drain, a tank, an outfall.

import { type Feature, featureWords, propertyOf } from "../model/plan.ts";
import { drainNodes, type DrainNode, invertOf, type LiveNumber, type StandingOf } from "./drain-nodes.ts";
import type { DrainRun } from "./drain-runs.ts";

/** What takes the water at the lower end of a run. */
export interface Taker {
  readonly feature: Feature;
  readonly words: string;
  /** Invert at which it takes the water; null where that is not known. */
  readonly invert: LiveNumber | null;
}

/** Everything that takes the water of a run at its lower node, the drain's own next run left out. */
export function takersOf(run: DrainRun, standingOf: StandingOf): readonly Taker[] {
  if (!endsDrain(run)) return [];
  const { feature, name } = run.lower;
  const onward = standingOf("drains").flatMap((drain) => {
    if (drain === run.drain) return [];
    const nodes = drainNodes(drain, standingOf);
    const joined = nodes.findIndex((node, index) => index < nodes.length - 1 && isNamed(node, name));
    const node = nodes[joined] ?? (drain.name === leadsTo(run.drain) ? nodes[0] : undefined);
    return node ? [{ feature: drain, words: featureWords(drain), invert: node.invert }] : [];
  });
  const itself = feature ? [{ feature, words: featureWords(feature), invert: invertOf(feature, "lower") }] : [];
  return [...onward, ...itself];
}

/** Whether a run is the last of its drain. */
function endsDrain(run: DrainRun): boolean {
  const { shape } = run.drain;
  return shape?.form === "line" && shape.line.at(-1) === run.lower.spot;
}

const isNamed = (node: DrainNode, name: string): boolean => node.spot.name === name;

function leadsTo(drain: Feature): string | undefined {
  const to = propertyOf(drain, "leads_to");
  return typeof to === "string" ? to : undefined;
}
