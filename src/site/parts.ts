// Parts of features that are subjects by themselves. (Runs of drains, bays, openings and flights stand here.)

import type { Feature } from "../model/plan.ts";
import type { Read } from "../model/quantity.ts";

/** Parts of all features that stand, in the order of the plan. */
export function partsOf(_standing: readonly Feature[], _read: Read): readonly Feature[] {
  return [];
}
