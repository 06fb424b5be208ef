// A card of somebody's own county, with one mistake at a time: the answer names file and line, and says what to write.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { rulebookWith } from "../../src/index.ts";

const card = `title: A building stands in the county set-back
asks: How far is the building from the boundary?
about: {thing: building}
against: {other: boundary}
within: 40 m
measure: clear-distance
stakes: damage
limits:
  - {id: county, must: {at_least: 7 m}, where: anywhere, standing: practice}
fault: stands in the county set-back
cautions: [Ask the county before digging footings.]
`;

interface Mistake {
  readonly name: string;
  readonly put: string;
  readonly for: string;
  readonly line: number;
  readonly words: string;
}
const mistakes = parse(
  readFileSync(new URL("../tables/card-mistakes.yaml", import.meta.url), "utf8"),
) as readonly Mistake[];

describe("a card of one's own", () => {
  it("is read where it has no mistake", () => {
    const { value, problems } = rulebookWith([{ file: "county/set-back.yaml", text: card }]);
    expect(problems).toEqual([]);
    expect(value.cards.some(({ id }) => id === "county/set-back")).toBe(true);
  });
  it("comes with thirty mistakes and more", () => {
    expect(mistakes.length).toBeGreaterThanOrEqual(30);
  });
  it.each(mistakes)("$name", (mistake) => {
    expect(card).toContain(mistake.for);
    const text = card.replace(mistake.for, () => mistake.put);
    const { value, problems } = rulebookWith([{ file: "county/set-back.yaml", text }]);
    expect(value.cards.some(({ id }) => id === "county/set-back")).toBe(false);
    expect(problems).toHaveLength(1);
    const [{ file, line, expected, got, hint } = { file: "", line: 0, expected: "", got: "", hint: "" }] = problems;
    expect(file).toBe("county/set-back.yaml");
    expect(line).toBe(mistake.line);
    expect(`${expected}. Got ${got}. ${hint.charAt(0).toUpperCase()}${hint.slice(1)}`.toLowerCase()).toContain(
      mistake.words.toLowerCase(),
    );
    for (const words of [expected, got, hint]) expect(words).toMatch(/\S/);
    expect(`${expected}${got}${hint}`).not.toMatch(/undefined|\[object|NaN|null|\^|\\/);
    expect(`${expected}${got}${hint}`.length).toBeLessThan(400);
  });
});
