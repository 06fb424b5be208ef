// What: does the water of this thing keep off a sort of place?
// Formula: 0 where the property names a feature of that kind, or is that word itself; 1 where it names anything else.
// Source: the plan.
// Valid: where the plan says that the water goes; silence is no answer and is asked for.
// Witness: none.

import { propertyOf } from "../model/plan.ts";
import { propertyWords } from "../model/property-words.ts";
import type { Measure } from "../model/reading.ts";
import { askedFor, missing } from "./asked-for.ts";

export const keepsOff: Measure = {
  name: "keeps-off",
  dimension: "count",
  roles: { thing: "anything that rain runs off" },
  parameters: { property: { words: [], default: "runs_to" }, kind: { words: [], default: "road" } },
  phrase: "",
  shortName: "keeps off",
  shownIn: "yes or no",
  find: (subject, scene, parameters) => {
    const { thing } = subject;
    if (!thing) return { is: "does-not-bear" };
    const property = String(parameters["property"]);
    const kinds = String(parameters["kind"]).split(" or ");
    const goes = propertyOf(thing, property);
    if (typeof goes !== "string") return missing(askedFor(thing, property, `the ${propertyWords(property)}`));
    const into = scene.standing().find((feature) => feature.name === goes);
    const onto = kinds.includes(into?.kind ?? goes);
    return { is: "found", places: [{ key: property, value: () => (onto ? 0 : 1), witness: () => [] }] };
  },
};
