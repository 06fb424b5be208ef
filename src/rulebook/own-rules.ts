// A rulebook with the owner's own files: cards, and beside them a bibliography and places that the cards name.

import type { Card, Rulebook } from "../model/card.ts";
import type { Problem, WithProblems } from "../model/problem.ts";
import type { Measure } from "../model/reading.ts";
import { readYaml } from "../reading/read-yaml.ts";
import { validate, type Validator } from "../reading/validate.ts";
import { knownProperties, type PropertiesOfKind, unknownProperties } from "./known-properties.ts";
import { loadCards, loadRulebook, type RuleFile } from "./load-rulebook.ts";

/** What the files are checked by. */
export interface OwnRulesBy {
  readonly measures: ReadonlyMap<string, Measure>;
  readonly propertiesOf: PropertiesOfKind;
  readonly checks: { readonly card: Validator; readonly sources: Validator; readonly places: Validator };
}

interface ReadFile extends RuleFile {
  readonly is: keyof OwnRulesBy["checks"];
}

/**
 * The rulebook `base` with the texts of the owner's own files. `sources.yaml` and `places.yaml` add to bibliography and places, every other file is a
 * card; its id is folder/name, and it stands before the built-in card of that id. What is wrong with a file leaves out that file only.
 */
export function withOwnRules(
  base: Rulebook,
  texts: readonly { readonly file: string; readonly text: string }[],
  by: OwnRulesBy,
): WithProblems<Rulebook> {
  const problems: Problem[] = [];
  const files = texts.flatMap((text): readonly ReadFile[] => {
    const { document, problems: unread } = readYaml(text.file, text.text);
    const is = fileIs(text.file);
    const faults = [...unread, ...(document ? validate(by.checks[is], document) : [])];
    problems.push(...faults);
    if (!document || faults.length > 0) return [];
    const { data } = document;
    return [{ is, file: text.file, id: idOf(text.file), data, locate: (path) => document.locate(path, "value") }];
  });
  const of = (is: ReadFile["is"]) => files.filter((file) => file.is === is);
  const added = loadRulebook({ cards: [], tables: [], sources: of("sources"), places: of("places") }, by.measures);
  const book: Rulebook = {
    ...base,
    sources: new Map([...base.sources, ...added.value.sources]),
    places: new Map([...base.places, ...added.value.places]),
    placeNames: { ...base.placeNames, ...added.value.placeNames },
  };
  const cards = of("card");
  const first = firstOfEach(cards);
  problems.push(
    ...of("places").flatMap((file) => strayPlaces(file, book)),
    ...cards.filter((file) => first.get(file.id) !== file).map((file) => twice(file, first.get(file.id))),
  );
  const own = loadCards([...first.values()], book, by.measures);
  const known = knownProperties(base.cards, by.propertiesOf);
  const strange = own.value.map((card) => unknownProperties(card, first.get(card.id), known));
  const kept = own.value.filter((_, at) => strange[at]?.length === 0);
  return {
    value: { ...book, cards: inTheStead(kept, base.cards) },
    problems: [...problems, ...own.problems, ...strange.flat()],
  };
}

function fileIs(file: string): ReadFile["is"] {
  if (/(?:^|[\\/])sources\.ya?ml$/u.test(file)) return "sources";
  return /(?:^|[\\/])places\.ya?ml$/u.test(file) ? "places" : "card";
}

const idOf = (file: string): string =>
  file
    .split(/[\\/]/)
    .slice(-2)
    .join("/")
    .replace(/\.ya?ml$/, "");

function firstOfEach(files: readonly RuleFile[]): ReadonlyMap<string, RuleFile> {
  const first = new Map<string, RuleFile>();
  for (const file of files) if (!first.has(file.id)) first.set(file.id, file);
  return first;
}

function twice(file: RuleFile, first: RuleFile | undefined): Problem {
  return {
    code: "bad-card",
    file: file.file,
    ...file.locate([]),
    expected: "one card of each name",
    got: `"${file.id}" for the second time, after ${first?.file ?? "another"}`,
    hint: "give one of the two files another name; only the first was read",
  };
}

/** Places whose parent nobody has entered: a rule of a larger place would never be found from them. */
function strayPlaces(file: RuleFile, book: Rulebook): readonly Problem[] {
  return Object.entries(file.data as Readonly<Record<string, { readonly parent: string | null }>>).flatMap(
    ([name, { parent }]) => {
      if (parent === null || parent === "anywhere" || book.places.has(parent)) return [];
      const hint = "write a larger place that is known, such as england, or anywhere";
      const at = file.locate([name, "parent"]);
      return [{ code: "bad-card" as const, file: file.file, ...at, expected: "a known place", got: parent, hint }];
    },
  );
}

const inTheStead = (own: readonly Card[], base: readonly Card[]): readonly Card[] =>
  [...own, ...base.filter((card) => !own.some((other) => other.id === card.id))].sort((a, b) => (a.id < b.id ? -1 : 1));
