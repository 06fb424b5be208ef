// What: how deep is the drop at this edge?
// Formula: crest - toe of a bank, the ground that a wall holds back, the drop stated beside a ramp or steps.
// Source: the plan.
// Valid: the greatest drop that was stated or levelled; a wall that holds nothing back makes none here.
// Witness: none.

import { propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { dropOf } from "../site/bank-height.ts";
import { askedFor, missing } from "./asked-for.ts";

export const dropAtEdge: Measure = {
  name: "drop-at-edge",
  dimension: "length",
  roles: { edge: "a bank, a retaining wall, a ramp or steps" },
  parameters: {},
  phrase: "the drop is {found}",
  shortName: "drop",
  find: (subject) => {
    const { edge } = subject;
    const drop = edge && dropOf(edge);
    if (!edge || !drop) return { is: "does-not-bear" };
    if (edge.kind === "wall" && propertyOf(edge, "retains") === undefined) return { is: "does-not-bear" };
    const { height, property } = drop;
    if (!height) return missing(askedFor(edge, property, "the depth of the drop", "length"));
    return { is: "found", places: [{ key: "drop", value: height, witness: () => [] }] };
  },
};
