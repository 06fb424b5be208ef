// What: does the plan say that this is so?
// Formula: 1 where the property is true, or is (or holds) the word asked for; 0 where the plan says otherwise.
// Source: the plan.
// Valid: what somebody wrote; silence is no answer and is asked for.
// Witness: none.

import { featureWords, isQuantity, isSpot, type Properties, type Property, propertyOf } from "../model/plan.ts";
import { askWords } from "../model/property-words.ts";
import type { Measure } from "../model/reading.ts";

/** 1 or 0, or null where the plan is silent. */
function answer(property: Property | undefined, word: string): 1 | 0 | null {
  if (property === undefined) return null;
  if (word === "") return saysNo(property) ? 0 : isEmpty(property) ? null : 1;
  const words = word.split(" or ");
  if (Array.isArray(property))
    return property.some((entry) => typeof entry === "string" && words.includes(entry)) ? 1 : 0;
  return (typeof property === "string" || typeof property === "boolean") && words.includes(String(property)) ? 1 : 0;
}

/** `no`, `none`, false, a group whose own `none` is true, or one that only tells what there is not. */
function saysNo(property: Property): boolean {
  if (property === false || property === "no" || property === "none") return true;
  if (!isGroup(property)) return false;
  const { none, ...rest } = property;
  const told = Object.values(rest);
  return none === true || (told.length > 0 && told.every((one) => one === false));
}

/** A group that tells nothing, or only that there is not nothing. */
function isEmpty(property: Property): boolean {
  return isGroup(property) && Object.keys(property).every((key) => key === "none");
}

function isGroup(property: Property): property is Properties {
  return typeof property === "object" && !Array.isArray(property) && !isQuantity(property) && !isSpot(property);
}

export const saidSo: Measure = {
  name: "said-so",
  dimension: "count",
  roles: { thing: "anything that has the property" },
  parameters: { property: { words: [], default: "" }, word: { words: [], default: "" } },
  phrase: "",
  shortName: "said so",
  shownIn: "yes or no",
  find: (subject, _scene, parameters) => {
    const thing = subject["thing"];
    const property = String(parameters["property"]);
    if (!thing) return { is: "does-not-bear" };
    const said = answer(propertyOf(thing, property), String(parameters["word"]));
    if (said !== null) return { is: "found", places: [{ key: property, value: () => said, witness: () => [] }] };
    return {
      is: "missing",
      missing: [{ feature: thing, property, asks: askWords(property, featureWords(thing)), why: "unsaid" }],
    };
  },
};
