// What: does what this thing needs stand before it is made?
// Formula: 1 where every feature named in the property stands at the end of an earlier stage, or is there already; else 0.
// Source: the stages of the plan.
// Valid: whole stages; the order within one stage is not looked at, so what is made in the same stage counts as too late.
// Witness: none.

import { propertyOf } from "../model/plan.ts";
import type { Measure } from "../model/reading.ts";
import { askedFor, missing } from "./asked-for.ts";
import { propertyWords } from "../model/property-words.ts";

export const standsBeforehand: Measure = {
  name: "stands-beforehand",
  dimension: "count",
  roles: { thing: "anything to be built that names another feature" },
  parameters: { property: { words: [], default: "" } },
  phrase: "",
  shortName: "stands beforehand",
  shownIn: "yes or no",
  find: (subject, scene, parameters) => {
    const { thing } = subject;
    if (!thing || thing.existing) return { is: "does-not-bear" };
    const property = String(parameters["property"]);
    const named = propertyOf(thing, property);
    const names = (Array.isArray(named) ? named : [named]).filter((name) => typeof name === "string");
    if (names.length === 0) return missing(askedFor(thing, property, `the ${propertyWords(property)}`));
    const standing = scene.standing();
    const ready = names.every((name) =>
      standing.some((other) => other.name === name && (other.existing || other.from < thing.from)),
    );
    return { is: "found", places: [{ key: property, value: () => (ready ? 1 : 0), witness: () => [] }] };
  },
};
