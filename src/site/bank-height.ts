// How high a bank is, and how deep the drop beside a thing that people walk or drive on.

import { type Feature, isQuantity, propertyOf } from "../model/plan.ts";
import type { LiveNumber } from "./drain-nodes.ts";

const number = (feature: Feature, property: string): LiveNumber | null => {
  const quantity = propertyOf(feature, property);
  return isQuantity(quantity) ? (read) => read(quantity) : null;
};

/** Height of a bank from toe to crest: by its levels where it has both, else as stated. */
export function heightOfBank(bank: Feature): LiveNumber | null {
  const [crest, toe] = [number(bank, "crest_level"), number(bank, "toe_level")];
  return crest && toe ? (read) => crest(read) - toe(read) : number(bank, "height");
}

/** Property that tells how deep the drop beside each kind is. */
const dropProperty: Readonly<Record<string, string>> = {
  wall: "retains.height",
  ramp: "drop_beside",
  steps: "drop_beside",
};

/** Drop that a thing makes: a bank from crest to toe, the ground a wall holds back, what lies beside a ramp or steps. */
export function dropOf(feature: Feature): { readonly height: LiveNumber | null; readonly property: string } | null {
  if (feature.kind === "bank") return { height: heightOfBank(feature), property: "height" };
  const property = dropProperty[feature.kind];
  return property === undefined ? null : { height: number(feature, property), property };
}
