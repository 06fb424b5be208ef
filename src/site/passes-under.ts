// What a vehicle drives under: things that hang over the ground bear only on bodies that reach up to them.

import { signedArea } from "../geometry/ring.ts";
import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";
import { beside } from "./live-figure.ts";
import { type LiveRing, ringAt } from "./live-ring.ts";

/** How tall what comes is, m; null where the plan does not say it: then it is taken to reach up to everything. */
export type Tall = number | null;

/** The tallest of several things that come together. */
export function tallestOf(features: readonly Feature[], read: Read): Tall {
  const heights = features.map((feature) => propertyOf(feature, "height"));
  const known = heights.flatMap((height) => (isQuantity(height) ? [read(height)] : []));
  return known.length < heights.length || known.length === 0 ? null : Math.max(...known);
}

/** Whether what comes passes below the underside of a thing; how much is left over is asked by the rule of headroom. */
export function passesUnder(thing: Feature, tall: Tall, read: Read): boolean {
  const underside = propertyOf(thing, "underside");
  return tall !== null && isQuantity(underside) && tall < read(underside);
}

/** Whether what comes passes below the lintel over an opening; an opening without one is open to the sky. */
export function passesBelow(lintel: unknown, tall: Tall, read: Read): boolean {
  const height = lintel as Parameters<typeof isQuantity>[0];
  return !isQuantity(height) || (tall !== null && tall < read(height));
}

/** The ring of a building, out to its eaves where what comes is as tall as they hang. */
export function outToEaves(building: Feature, ring: LiveRing, { tall, read }: Passing): LiveRing {
  const [out, eaves] = [propertyOf(building, "roof.overhang"), propertyOf(building, "eaves")];
  if (!isQuantity(out) || (tall !== null && isQuantity(eaves) && tall < read(eaves))) return ring;
  const outward = signedArea(ringAt(ring, read)) > 0 ? -1 : 1;
  return ring.map((_, i) => {
    const around = [ring.at(i - 1), ring[i], ring[(i + 1) % ring.length]] as LiveRing;
    return beside(around, 1, (now) => outward * now(out));
  });
}

export interface Passing {
  readonly tall: Tall;
  readonly read: Read;
}
