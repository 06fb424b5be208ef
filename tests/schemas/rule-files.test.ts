// Every file under `rules/` has the form that the schemas publish.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { kinds } from "../../src/model/kinds.ts";
import { faultsOf, firstExample, validatorOf } from "./load-schemas.ts";

const folder = new URL("../../rules", import.meta.url).pathname;
const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".yaml"))
  .sort();

function schemaOf(file: string): string {
  if (file === "sources.yaml" || file === "places.yaml") return file.replace(".yaml", ".schema.json");
  if (file.startsWith("tables/")) return "table.schema.json";
  return file.endsWith(".cases.yaml") ? "cases.schema.json" : "card.schema.json";
}

describe("a file of the rulebook", () => {
  it.each(files)("%s has its form", (file) => {
    const data: unknown = parse(readFileSync(join(folder, file), "utf8"), { version: "1.2", schema: "core" });
    expect(faultsOf(validatorOf(schemaOf(file)), data)).toEqual([]);
  });
});

describe("the words of a plan", () => {
  it("hold every use that the table of passages knows", () => {
    const table = parse(readFileSync(join(folder, "tables/passages.yaml"), "utf8")) as {
      rows: Record<string, unknown>;
    };
    const uses = validatorOf("common.schema.json", "/$defs/uses");
    for (const use of Object.keys(table.rows)) expect(faultsOf(uses, use), use).toEqual([]);
  });
});

describe("a card", () => {
  const validate = validatorOf("card.schema.json");
  const example = firstExample("card.schema.json");
  const row = { id: "a", must: { at_least: "1 m" }, where: "anywhere", standing: "practice" };
  const faults = (more: Record<string, unknown>): string[] => {
    validate({ ...example, ...more });
    return (validate.errors ?? []).map((error) => `${error.instancePath} ${error.keyword}`);
  };

  it("may be about every kind of feature", () => {
    for (const word of Object.values(kinds)) expect(faults({ about: { thing: word } }), word).toEqual([]);
  });

  it.each([
    [
      {
        when: {
          "run.carries": "foul",
          "run.bore": { over: "90 mm", up_to: "115 mm" },
          "peak-flow": { under: "1 l/s" },
        },
        must: { at_least: "1 in 40" },
      },
    ],
    [
      {
        must: { at_least: { times: "1 mm", over: "run.bore" } },
        where: "germany",
        standing: "standard",
        source: "din-1986-100",
      },
    ],
    [{ must: { at_least: { times: 12, of: "tree.stem", up_to: "15 m", down_to: "2 m" } } }],
    [{ must: { at_least: { plan: "turn.clear" } }, standing: "your own wish" }],
    [{ must: { between: ["2.5 %", "6 %"] } }],
    [{ should: { at_most: { table: "passages.least" } }, for_each: "way.for", clause: 4.6 }],
    [{ measure: "distance-from-crown", must: { at_least: "1.5 m" } }],
    [{ measure: { name: "share-of-root-zone", with: { times: 12, least: "2 m" } }, must: { at_most: "10 %" } }],
  ])("takes the row %j", (more) => {
    expect(faults({ limits: [{ ...row, ...more }] })).toEqual([]);
  });

  it.each([
    [{ must: { at_least: "1 m", at_most: "2 m" } }, "/limits/0/must oneOf"],
    [{ must: { at_least: { table: "animals" } } }, "/limits/0/must/at_least/table pattern"],
    [{ must: { at_least: { times: 12 } } }, "/limits/0/must/at_least oneOf"],
    [{ must: { at_least: { times: 1, over: "run.bore", up_to: 3 } } }, "/limits/0/must/at_least dependentRequired"],
    [{ must: { between: ["1 m"] } }, "/limits/0/must/between minItems"],
    [{ when: { "run.bore": { over: "90 mm", from: "100 mm" } } }, "/limits/0/when/run.bore not"],
    [{ when: { "run.bore": 90 } }, "/limits/0/when/run.bore type"],
    [{ when: { Bore: "foul" } }, "/limits/0/when pattern"],
    [{ standing: "law" }, "/limits/0 required"],
    [{ standing: "rumour" }, "/limits/0/standing enum"],
    [{ must: undefined }, "/limits/0 required"],
    [{ with: { from: "inside" } }, "/limits/0 dependentRequired"],
  ])("refuses the row %j", (more, fault) => {
    expect(
      faults({
        limits: [Object.fromEntries(Object.entries({ ...row, ...more }).filter(([, value]) => value !== undefined))],
      }),
    ).toContain(fault);
  });

  it.each([
    [{ about: { fence: "fences" } }, "/about/fence enum"],
    [{ about: { a: "fence", b: "wall" } }, "/about maxProperties"],
    [{ within: undefined }, " dependentRequired"],
    [{ stakes: "high" }, "/stakes enum"],
    [{ asks: "Is it high" }, "/asks pattern"],
    [{ hazard: "dragons" }, "/hazard enum"],
    [{ with: { a: 1, b: 2, c: 3, d: 4 } }, "/with maxProperties"],
    [{ remedies: [{ move: "fence" }] }, "/remedies/0 oneOf"],
    [{ limits: [] }, "/limits minItems"],
  ])("refuses %j", (more, fault) => {
    const kept = Object.entries({ ...example, ...more }).filter(([, value]) => value !== undefined);
    validate(Object.fromEntries(kept));
    expect((validate.errors ?? []).map((error) => `${error.instancePath} ${error.keyword}`)).toContain(fault);
  });
});

describe("cases", () => {
  const validate = validatorOf("cases.schema.json");
  const faults = (expect_: Record<string, unknown>, plan: unknown = {}): string[] => {
    validate([{ case: "one", plan, expect: expect_ }]);
    return (validate.errors ?? []).map((error) => `${error.instancePath} ${error.keyword}`);
  };

  it("take every verdict, with a reason where it is not-given and only there", () => {
    expect(faults({ verdict: "met", value: "1.64 m" })).toEqual([]);
    expect(faults({ verdict: "not-given", reason: "missing", need: "fences/paddock/height" })).toEqual([]);
    expect(faults({ verdict: "not-given" })).toContain("/0/expect required");
    expect(faults({ verdict: "met", reason: "missing" })).toContain("/0/expect not");
    expect(faults({ verdict: "passes" })).toContain("/0/expect/verdict enum");
  });

  it("check their plans as plans", () => {
    expect(
      faults(
        { verdict: "met" },
        {
          fences: {
            paddock: {
              line: [
                [0, 0],
                [10, 0],
              ],
              heigth: 1.2,
            },
          },
        },
      ),
    ).toContain("/0/plan/fences/paddock additionalProperties");
  });
});
