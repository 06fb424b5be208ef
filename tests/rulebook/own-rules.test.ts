// The owner's own cards, with a bibliography and places of their own: nothing is lost by what is wrong beside it.

import { describe, expect, it } from "vitest";
import { checkPlan, rulebook, rulebookWith } from "../../src/index.ts";

const card = (
  limit = "must: {at_least: 7 m}, where: anywhere, standing: practice",
): string => `title: Too near the boundary
asks: How far is the building from the boundary?
about: {thing: building}
against: {other: boundary}
within: 40 m
measure: clear-distance
stakes: damage
limits:
  - {id: county, ${limit}}
fault: stands in the county set-back
`;
const plan = `sightrail: 1
title: A shed by the lane
place: [Marsh County]
boundaries:
  lane side: {line: [[-10, -8], [40, -8]], ours: left, beyond: road}
buildings:
  shed: {outline: [[0, -3], [4, -3], [4, -6], [0, -6]], eaves: 2, existing: true}
`;
const places = { file: "own/places.yaml", text: "marsh county: {parent: england, words: Marsh County}\n" };
const sources = {
  file: "own/sources.yaml",
  text: "marsh-code: {title: Marsh County building code, publisher: Marsh County, seen: memory}\n",
};
const law = {
  file: "own/set-back.yaml",
  text: card("must: {at_least: 7 m}, where: marsh county, standing: law, source: marsh-code, clause: 4.2"),
};
const own = (file: string, text = card()) => ({ file, text });

describe("sources and places beside one's own cards", () => {
  it("let a county's law be told as that, and the county be named in the plan", () => {
    const report = checkPlan({ file: "plan.yaml", text: plan }, { asOf: "2026-11-25", cards: [places, sources, law] });
    expect(report.problems).toEqual([]);
    expect(report.place).toEqual(["marsh county"]);
    const finding = report.findings.find(({ rule }) => rule === "own/set-back");
    expect(finding?.verdict).toBe("not-met");
    expect(finding?.wanted).toMatchObject({ where: "marsh county", standing: "law", fell_back: false });
    expect(finding?.wanted?.source).toMatchObject({ title: "Marsh County building code", seen: "memory" });
  });
  it("leave the rules of the larger place standing", () => {
    const named = (place: string) =>
      checkPlan(
        { file: "plan.yaml", text: plan.replace("Marsh County", place) },
        { asOf: "2026-11-25", cards: [places, sources] },
      ).counts;
    expect(named("Marsh County")).toEqual(named("England"));
  });
  it("are answered with line and hint: a parent that nobody knows, a source that was read without a day", () => {
    const { problems } = rulebookWith([
      { file: "own/places.yaml", text: "marsh county: {parent: inland, words: Marsh County}\n" },
      { file: "own/sources.yaml", text: "marsh-code: {title: Marsh County building code, seen: read}\n" },
    ]);
    expect(problems.map(({ file, line, got }) => `${file} ${line} ${got}`)).toEqual([
      'own/sources.yaml 1 "marsh-code" without it',
      "own/places.yaml 1 inland",
    ]);
  });
});

describe("a card that cannot be read", () => {
  it("takes no other card with it", () => {
    const { value, problems } = rulebookWith([
      own("own/good.yaml"),
      own("own/bad.yaml", card().replace("title", "titel")),
    ]);
    expect(problems.map(({ file }) => file)).toEqual(["own/bad.yaml"]);
    expect(value.cards.length).toBe(rulebook().cards.length + 1);
  });
  it("of the same name as another is told, and the first stands", () => {
    const { value, problems } = rulebookWith([
      own("a/own/x.yaml"),
      own("b/own/x.yaml", card("must: {at_least: 9 m}, where: anywhere, standing: practice")),
    ]);
    expect(problems).toMatchObject([
      { file: "b/own/x.yaml", line: 1, got: '"own/x" for the second time, after a/own/x.yaml' },
    ]);
    expect(value.cards.find(({ id }) => id === "own/x")?.file).toBe("a/own/x.yaml");
  });
});

describe("words that are no words of a card", () => {
  it.each([
    ["a table's inherited key", "must: {at_least: {table: animals.constructor}}, where: anywhere, standing: practice"],
    [
      "a chain without end",
      `must: {at_least: {times: 1, of: ${"thing.".repeat(17_000)}eaves}}, where: anywhere, standing: practice`,
    ],
    [
      "an inherited property",
      "when: {thing.constructor: red}, must: {at_least: 7 m}, where: anywhere, standing: practice",
    ],
  ])("%s is told briefly", (_, limit) => {
    const { problems } = rulebookWith([own("own/x.yaml", card(limit))]);
    expect(problems).toHaveLength(1);
    expect(JSON.stringify(problems).length).toBeLessThan(600);
  });
  it("a file that is a list or a sentence is told without a whole card", () => {
    for (const text of ["- 1\n- 2\n", "hello\n"]) {
      const { problems } = rulebookWith([own("own/x.yaml", text)]);
      expect(problems).toMatchObject([{ line: 1, expected: "keys with their values" }]);
    }
  });
});
