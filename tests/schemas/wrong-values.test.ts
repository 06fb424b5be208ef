// Wrong features are refused, and the fault is told where it stands.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { kinds } from "../../src/model/kinds.ts";
import { firstExample, validatorOf } from "./load-schemas.ts";

interface Wrong {
  readonly with?: Readonly<Record<string, unknown>>;
  readonly without?: readonly string[];
  readonly at: string;
  readonly keyword: string;
}

const text = readFileSync(new URL("wrong-values.yaml", import.meta.url), "utf8");
const wrongByKind = parse(text, { version: "1.2", schema: "core" }) as Record<string, readonly Wrong[]>;

function wrongFeature(kind: string, wrong: Wrong): Record<string, unknown> {
  const kept = Object.entries(firstExample(`features/${kind}.schema.json`)).filter(
    ([key]) => !wrong.without?.includes(key),
  );
  return { ...Object.fromEntries(kept), ...wrong.with };
}

describe("a wrong feature", () => {
  it("is tried at least twice for every kind", () => {
    for (const kind of Object.keys(kinds)) expect(wrongByKind[kind]?.length ?? 0, kind).toBeGreaterThanOrEqual(2);
    expect(Object.keys(wrongByKind).sort()).toEqual(Object.keys(kinds).sort());
  });

  for (const [kind, list] of Object.entries(wrongByKind)) {
    it(`of ${kind} is refused where it is wrong`, () => {
      const validate = validatorOf(`features/${kind}.schema.json`);
      for (const wrong of list) {
        const feature = wrongFeature(kind, wrong);
        expect(validate(feature), JSON.stringify(feature)).toBe(false);
        const faults = (validate.errors ?? []).map((error) => `${error.instancePath} ${error.keyword}`);
        expect(faults, JSON.stringify(feature)).toContain(`${wrong.at} ${wrong.keyword}`);
      }
    });
  }
});

describe("a change", () => {
  for (const kind of Object.keys(kinds)) {
    it(`of ${kind} needs nothing, and takes no unknown word`, () => {
      const validate = validatorOf(`features/${kind}.schema.json`, "/$defs/properties");
      expect(validate({})).toBe(true);
      expect(validate({ no_such_word: 1 })).toBe(false);
      expect(validate.errors?.map((error) => error.keyword)).toEqual(["additionalProperties"]);
    });
  }
});

describe("a plan", () => {
  const validate = validatorOf("plan.schema.json");
  const head = { sightrail: 1, title: "Top field", place: ["england"] };
  const faults = (more: Record<string, unknown>): string[] => {
    validate({ ...head, ...more });
    return (validate.errors ?? []).map((error) => `${error.instancePath} ${error.keyword}`);
  };

  it("may be as short as its head", () => {
    expect(faults({})).toEqual([]);
  });

  it.each([
    [{ sightrail: 2 }, "/sightrail const"],
    [{ title: undefined }, " required"],
    [{ phases: ["now"] }, " additionalProperties"],
    [{ stages: ["now", "now"] }, "/stages uniqueItems"],
    [{ stages: ["stage-1"] }, "/stages/0 pattern"],
    [{ none: ["dragons"] }, "/none/0 enum"],
    [{ walls: { "12": {} } }, "/walls pattern"],
    [{ include: "../../secret.yaml" }, "/include pattern"],
    [{ include: ["/etc/plan.yaml"] }, "/include/0 pattern"],
    [{ survey: { stations: { A: { line_to: "B" } } } }, "/survey/stations/A dependentRequired"],
    [{ survey: { stations: { A: { ties: {} } } } }, "/survey/stations/A/ties minProperties"],
    [{ survey: { stations: { A: {} } } }, "/survey/stations/A anyOf"],
    [{ survey: { level_book: [{ bs: 1.4 }] } }, "/survey/level_book/0 anyOf"],
    [{ survey: { checks: [{ between: ["A"], tape: 3 }] } }, "/survey/checks/0/between minItems"],
    [{ departures: [{ rule: "fences/jumped-from-wall" }] }, "/departures/0 required"],
    [
      { local_limits: { "Not A Rule": { must: { at_least: "3 m" }, from: "letter", standing: "law" } } },
      "/local_limits pattern",
    ],
    [
      { local_limits: { "trees/x": { must: { at_least: "3 m", at_most: "4 m" }, from: "a", standing: "law" } } },
      "/local_limits/trees~1x/must oneOf",
    ],
    [{ local_limits: { "trees/x": { from: "a", standing: "law" } } }, "/local_limits/trees~1x anyOf"],
    [{ earth: { station: "P1", latitude: 520, longitude: 3 } }, "/earth/latitude maximum"],
    [{ options: { a: {} } }, "/options/a minProperties"],
    [{ options: { a: { change: { walls: { w: { heigth: 1 } } } } } }, "/options/a/change/walls/w additionalProperties"],
    [{ options: { a: { add: { walls: { w: { height: 1 } } } } } }, "/options/a/add/walls/w oneOf"],
    [{ changes: { yard: { wall: {} } } }, "/changes/yard additionalProperties"],
    [{ as_of: "25.11.2026" }, "/as_of pattern"],
    [{ rain: { intensity: ["75 mm/h"] } }, "/rain/intensity type"],
  ])("is refused with %j", (more, fault) => {
    expect(faults(more)).toContain(fault);
  });

  it.each([
    {
      options: { lower: { remove: { fences: ["goat fence"] }, change: { walls: { "march wall": { height: 0.9 } } } } },
    },
    { changes: { yard: { walls: { "march wall": { height: 0.9 } } } } },
    {
      local_limits: {
        "separation/field-near-well": {
          must: { at_least: "40 m" },
          from: "municipal letter 2026-03-02",
          standing: "law",
        },
      },
    },
    { survey: { stations: { É1: { at: [0, 0] }, 杭2: { line_to: "É1", tape: [42.35, 42.36] } } } },
    { walls: { "Mur à pêches 2": { line: ["P1", [3, "4.2 ± 0.1"]] } } },
  ])("is taken with %j", (more) => {
    expect(faults(more)).toEqual([]);
  });
});
