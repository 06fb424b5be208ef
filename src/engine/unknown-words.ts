// Rules and places that the plan names and the rulebook does not know: told, because a fall-back would hide a fault.

import type { Card, Rulebook } from "../model/card.ts";
import type { Place } from "../model/path.ts";
import type { Plan } from "../model/plan.ts";
import type { Problem } from "../model/problem.ts";
import { nearestWord } from "../reading/nearest-word.ts";

/** A problem whose place in the file is still to be looked up. */
export interface PlacedProblem extends Omit<Problem, "file" | "line" | "column"> {
  readonly place: Place;
}

/** Problems of names that are in no card and in no tree of places. `places` are those that are checked against. */
export function unknownWords(plan: Plan, rulebook: Rulebook, places: readonly string[]): readonly PlacedProblem[] {
  const rules = rulebook.cards.map((card) => card.id);
  return [
    ...[...plan.departures, ...plan.localLimits]
      .filter(({ rule }) => rule !== "" && !rules.includes(rule))
      .map(({ rule, place }) => unknownRule(rule, place, rules)),
    ...places
      .filter((place) => place !== "anywhere" && !rulebook.places.has(place))
      .map((place) => unknownPlace(place, plan, rulebook)),
  ];
}

function unknownRule(rule: string, place: Place, rules: readonly string[]): PlacedProblem {
  const near = nearestWord(rule, rules);
  const hint = near
    ? `write ${near} if that is meant`
    : "the list: sightrail rules; a rule of your own needs --rules FOLDER";
  return { code: "unknown-rule", place, expected: "a rule that is known", got: `"${rule}"`, hint };
}

function unknownPlace(name: string, plan: Plan, rulebook: Rulebook): PlacedProblem {
  const near = nearestWord(name, [...rulebook.places.keys(), "anywhere"]);
  const hint = near
    ? `write ${near} if that is meant`
    : "its own rules are not known here: name a larger place round it, such as england or united states, or anywhere, and ask the local authority";
  const place = { file: plan.file, path: ["place"] };
  return { code: "unknown-name", place, expected: "a place whose rules are known", got: `"${name}"`, hint };
}

/** Says which built-in rules a card of the owner's own stands in the stead of. */
export function inStead(cards: readonly Card[], base: readonly Card[]): readonly string[] {
  const builtIn = new Map(base.map((card) => [card.id, card]));
  return cards
    .filter((card) => builtIn.has(card.id) && builtIn.get(card.id) !== card)
    .map(({ id }) => `${id} is a card of your own, in the stead of the one that comes with sightrail`);
}
