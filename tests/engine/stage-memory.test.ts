// Stages that are alike cost one: how often a measure is asked, counted.

import { expect, test } from "vitest";
import { check } from "../../src/engine/check.ts";
import { rulebook } from "../../src/index.ts";
import { measures } from "../../src/measures/index.ts";
import type { Measure } from "../../src/model/reading.ts";
import { partsOf } from "../../src/site/parts.ts";
import { planWith } from "../measures/rig.ts";

/** How often each measure was asked over a check of a plan with these stages. */
function asked(keys: Readonly<Record<string, unknown>>): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  const counting = new Map(
    [...measures].map(([name, measure]): [string, Measure] => [
      name,
      {
        ...measure,
        find: (...question) => {
          counts.set(name, (counts.get(name) ?? 0) + 1);
          return measure.find(...question);
        },
      },
    ]),
  );
  const plan = planWith({ place: ["england"], ...keys });
  const stages = plan.stages.map((_, index) => index);
  const locate = () => ({ line: 1, column: 1 });
  const settings = { asOf: "2026-11-25", places: plan.places, option: null, remedies: false };
  check({
    ...settings,
    plan,
    rulebook: rulebook(),
    measures: counting,
    stages,
    locate,
    readRequirement: () => null,
    parts: partsOf,
  });
  return counts;
}

const yard = {
  fences: {
    paddock: {
      line: [
        [0, 0],
        [30, 0],
      ],
      height: 1.2,
      keep_in: ["goat"],
      keep_in_side: "left",
      existing: true,
    },
  },
  walls: {
    "field wall": {
      line: [
        [5, 1.4],
        [25, 1.4],
      ],
      height: 1.1,
      existing: true,
    },
  },
  chambers: { one: { at: [2, 20], invert: 99.2, existing: true }, two: { at: [22, 20], invert: 98.9, existing: true } },
  drains: { kitchen: { line: ["one", "two"], carries: "foul", bore: "100 mm", existing: true } },
};

test("nothing is asked again for stages in which nothing changes, nor for parts made anew", () => {
  const once = asked({ stages: ["now"], ...yard });
  expect(asked({ stages: ["now", "later", "finished"], ...yard })).toEqual(once);
  expect(once.get("equivalent-jump-height")).toBeGreaterThan(0);
});

test("a stage that adds a stand asks anew only for what it plays in", () => {
  const heaps = { spoil: { circle: { at: [12, -3], across: 2 }, of: "spoil", height: 1, from: "works" } };
  const before = asked({ stages: ["now"], ...yard });
  const after = asked({ stages: ["now", "works"], ...yard, heaps });
  const jumps = (counts: ReadonlyMap<string, number>) => counts.get("equivalent-jump-height") ?? 0;
  // Two cards ask how high an animal must jump, the one for what is kept in, the other for what is kept out: only the first is measured here.
  expect(jumps(after) - jumps(before)).toBe(1);
});
