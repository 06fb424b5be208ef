// Which rows of a card apply: by place for each element of a list, and what a condition asks of a property.

import { describe, expect, it } from "vitest";
import { rowsFor } from "../../src/engine/rows.ts";
import { testProperty } from "../../src/engine/test-property.ts";
import type { Card, Condition, Limit } from "../../src/model/card.ts";
import type { Feature, Properties } from "../../src/model/plan.ts";

const feature = (kind: string, properties: Properties): Feature => ({
  kind,
  name: "it",
  place: { file: "test", path: [] },
  shape: null,
  from: 0,
  until: null,
  existing: true,
  properties,
});

const row = (id: string, where: string, each?: readonly string[]): Limit => ({
  id,
  where,
  when: each ? [{ of: "each", is: each }] : [],
  forEach: "fence.keep_out",
  must: { sense: "at_least", bound: { from: "number", value: 1 } },
  standing: "practice",
});
const card = (limits: readonly Limit[]) => ({ limits }) as unknown as Card;
const test = (condition: Condition, subject: Readonly<Record<string, Feature>>) =>
  testProperty(condition, subject, { inBand: () => "perhaps" });
const england = [["england", "anywhere"]];

const rowsOf = (limits: readonly Limit[], keptOut: readonly string[]) =>
  rowsFor({
    card: card(limits),
    subject: { fence: feature("fence", { keep_out: keptOut }) },
    chains: england,
    test,
    supposed: new Map(),
  });

/** `element: row` of every row that applies to a fence against these animals in England. */
const applied = (limits: readonly Limit[], keptOut: readonly string[]): readonly string[] => {
  const found = rowsOf(limits, keptOut);
  return found.is === "rows" ? found.rows.map(({ element, limit }) => `${element}: ${limit.id}`) : [found.is];
};

describe("rows for each element of a list", () => {
  it("lets the nearest place win for each element by itself", () => {
    const limits = [row("deer", "england", ["roe deer"]), row("rest", "anywhere")];
    expect(applied(limits, ["roe deer", "fox"])).toEqual(["roe deer: deer", "fox: rest"]);
  });
  it("leaves out an element that no row speaks of", () => {
    expect(applied([row("deer", "england", ["roe deer"])], ["fox"])).toEqual(["out-of-scope"]);
  });
  it("asks nothing for the sake of an element that is not there", () => {
    const asking = {
      ...row("deer", "england", ["roe deer"]),
      when: [
        { of: "each", is: "roe deer" },
        { of: "fence.made_of", is: "rails" },
      ],
    };
    expect(applied([asking], ["fox"])).toEqual(["out-of-scope"]);
  });
  it("lets no farther place decide while a nearer row waits to be told more", () => {
    const waiting = { ...row("deer", "england", ["roe deer"]), when: [{ of: "fence.made_of", is: "rails" }] };
    const found = rowsOf([waiting, row("rest", "anywhere")], ["roe deer"]);
    expect(found.is === "rows" && [found.rows.length, found.missing.map((one) => one.property)]).toEqual([
      0,
      ["made_of"],
    ]);
  });
  it("asks nothing for the sake of a farther place", () => {
    const asking = { ...row("rest", "anywhere"), when: [{ of: "fence.made_of", is: "rails" }] };
    const found = rowsOf([row("deer", "england"), asking], ["roe deer"]);
    expect(found.is === "rows" && [found.rows.map((one) => one.limit.id), found.missing]).toEqual([["deer"], []]);
  });
  it("says that no row reaches the place", () => {
    expect(applied([row("deer", "austria", ["roe deer"])], ["roe deer"])).toEqual(["no-limit-here"]);
  });
});

describe("a condition", () => {
  const holds = (kind: string, properties: Properties, of: string, is: string | boolean | readonly string[]) => {
    const answer = test({ of: `it.${of}`, is }, { it: feature(kind, properties) });
    return typeof answer === "string" ? answer : answer.map((missing) => missing.asks).join();
  };
  it("asks with true whether a group is there at all", () => {
    expect(holds("wall", { retains: { side: "left" } }, "retains", true)).toBe("yes");
    expect(holds("wall", { retains: { side: "left" } }, "retains", false)).toBe("no");
    expect(holds("wall", {}, "retains", true)).toBe("no");
    expect(holds("wall", {}, "retains", false)).toBe("yes");
  });
  it("takes a flag for what it says", () => {
    expect(holds("tree", { veteran: false }, "veteran", true)).toBe("no");
    expect(holds("tree", { veteran: true }, "veteran", true)).toBe("yes");
  });
  it("reads kind as the feature's own sort, unless its words are kinds of feature", () => {
    expect(holds("water", { kind: "well" }, "kind", ["well", "spring"])).toBe("yes");
    expect(holds("water", { kind: "pond" }, "kind", ["well", "spring"])).toBe("no");
    expect(holds("water", {}, "kind", ["well"])).toBe('the kind of water "it"');
    expect(holds("wall", {}, "kind", "wall")).toBe("yes");
    expect(holds("fence", {}, "kind", ["wall", "bank"])).toBe("no");
  });
});
