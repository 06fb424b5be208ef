// What: how much water runs in this drain at its peak?
// Formula: the plan's own flow; else, with a toilet on it, never less than one flush (parameter), since one flush fills it.
// Source: the plan; the flush is the card's, from EN 12056-2 (MEMORY).
// Valid: to tell drains with more from drains with less than a litre a second; no design flow.
// Witness: none.

import { isQuantity, propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { askedFor, missing } from "./asked-for.ts";

export const peakFlow: Measure = {
  name: "peak-flow",
  dimension: "flow",
  roles: { run: "a run of a drain" },
  parameters: { flush: { dimension: "flow", default: 0 } },
  phrase: "it carries {found} at its peak",
  shortName: "peak flow",
  find: (subject, scene, parameters) => {
    const drain = subject["run"]?.partOf;
    if (!drain) return { is: "does-not-bear" };
    const flow = propertyOf(drain, "flow");
    if (isQuantity(flow))
      return { is: "found", places: [{ key: "flow", value: (read) => read(flow), witness: () => [] }] };
    const toilets = propertyOf(drain, "toilets");
    const flush = Number(parameters["flush"]);
    if (isQuantity(toilets) && scene.read(toilets) >= 1 && flush > 0)
      return { is: "found", places: [{ key: "flush", value: () => flush, witness: () => [], bound: "at_least" }] };
    const wanted = isQuantity(toilets)
      ? askedFor(drain, "flow", "the peak flow", "flow")
      : askedFor(drain, "toilets", "the number of toilets", "count");
    return missing(wanted);
  },
};
