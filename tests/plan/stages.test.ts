// Stages, changes, options and includes.

import { describe, expect, it } from "vitest";
import { resolvePlan } from "../../src/plan/resolve-plan.ts";
import { featureOf, kindTable, numberOf, planOf, resolveText, sourceOf, uOf, valueOf } from "./resolved.ts";

const text = `
title: A yard
place: [england]
stages: [now, yard, finished]
none: [gas]
walls:
  march wall: {line: [[0, 0], [20, 0]], height: 1.26, existing: true}
fences:
  goat fence: {beside: march wall, left: 1.5, height: 1.2, from: finished}
heaps:
  muck: {circle: {at: [5, 5], across: 4}, of: manure, until: yard}
changes:
  yard: {walls: {march wall: {height: 0.9}}}
options:
  wall gone: {remove: {walls: [march wall]}}
  wall low: {change: {walls: {march wall: {height: 0.7}}}, add: {fences: {second: {line: [[0, 9], [9, 9]], from: yard}}}}
  nothing like it: {remove: {fences: [gaot fence]}}
`;

describe("changes", () => {
  const plan = planOf(text);
  const walls = plan.features.filter((feature) => feature.name === "march wall");
  it("give a second version from the end of their stage", () => {
    expect(walls.map(({ from, until, superseded }) => [from, until, superseded ?? false])).toEqual([
      [0, 1, true],
      [1, null, false],
    ]);
    expect(walls.map((wall) => valueOf(plan, numberOf(wall, "height")))).toEqual([1.26, 0.9]);
  });
  it("are still to be built: their numbers carry the tolerance of building, at their place in the file", () => {
    const [before, after] = walls.map((wall) => numberOf(wall, "height"));
    expect(uOf(plan, before as never)).toBeCloseTo(0.005 + 0.0002 * 1.26, 9);
    expect(uOf(plan, after as never)).toBeCloseTo(0.01, 9);
    expect(plan.numbers.places[after?.id ?? -1]?.path).toEqual(["changes", "yard", "walls", "march wall", "height"]);
  });
  it("leave place and stage of the rest alone", () => {
    expect([featureOf(plan, "muck").from, featureOf(plan, "muck").until, featureOf(plan, "muck").existing]).toEqual([
      0,
      1,
      true,
    ]);
    expect(featureOf(plan, "goat fence").existing).toBe(false);
  });
});

describe("options", () => {
  it("change and add", () => {
    const plan = planOf(text, { option: "wall low" });
    const wall = featureOf(plan, "march wall");
    expect(valueOf(plan, numberOf(wall, "height"))).toBe(0.7);
    expect(plan.numbers.places[numberOf(wall, "height").id]?.path.slice(0, 3)).toEqual([
      "options",
      "wall low",
      "change",
    ]);
    expect(featureOf(plan, "second").place.path).toEqual(["options", "wall low", "add", "fences", "second"]);
  });
  it("remove, and say what hangs on the thing removed", () => {
    const { plan, problems } = resolveText(text.replace(/^changes:\n.*\n/m, ""), { option: "wall gone" });
    expect(plan.features.map((feature) => feature.name)).not.toContain("march wall");
    expect(problems.map((one) => [one.code, one.hint])).toEqual([
      ["unknown-name", "the option takes it away: take away what hangs on it too"],
    ]);
  });
  it("are problems where they name what is not there", () => {
    expect(resolveText(text, { option: "wal low" }).problems[0]?.hint).toBe('did you mean "wall low"?');
    expect(resolveText(text, { option: "nothing like it" }).problems[0]?.hint).toBe('did you mean "goat fence"?');
  });
});

describe("includes", () => {
  it("add their features and pegs, and clash where a name is there already", () => {
    const own = { source: sourceOf(text, "plan.yaml"), broken: [] };
    const other = {
      source: sourceOf(
        "survey:\n  stations: {P1: {at: [0, 0]}}\ntrees:\n  ash: {at: P1}\n  muck: {at: [9, 9]}\n",
        "trees.yaml",
      ),
      broken: [],
    };
    const { plan, problems } = resolvePlan(own, kindTable, { includes: [other] });
    expect(featureOf(plan, "ash").place).toEqual({ file: "trees.yaml", path: ["trees", "ash"] });
    expect(problems.map((one) => [one.code, one.file])).toEqual([["name-taken", "plan.yaml"]]);
  });
});

describe("statements", () => {
  const plan = planOf(`${text}ground: {soil: firm clay, topsoil: 200 mm}
rain: {intensity: 75 mm/h}
earth: {station: march wall, latitude: 52.0831, longitude: -3.1162, north: 4 deg}
departures:
  - {rule: fences/jumped-from-wall, features: [goat fence], because: live wire, agreed_by: the owner, review: 2027-05-01}
local_limits:
  separation/field-near-well: {must: {at_least: 40 m}, from: a letter, standing: law}
as_of: 2026-11-25
`);
  it("are handed over as the plan says them", () => {
    expect([plan.title, plan.places, plan.asOf, plan.none]).toEqual(["A yard", ["england"], "2026-11-25", ["gas"]]);
    expect(plan.departures[0]).toMatchObject({
      rule: "fences/jumped-from-wall",
      agreedBy: "the owner",
      review: "2027-05-01",
    });
    expect(plan.localLimits[0]).toMatchObject({
      rule: "separation/field-near-well",
      standing: "law",
      grades: { must: { at_least: "40 m" } },
    });
    // 75 mm/h = 75 / 3.6e6 m/s.
    expect(valueOf(plan, numberOf(plan.site as never, "rain.intensity"))).toBeCloseTo(75 / 3.6e6, 12);
    expect(plan.site?.properties["ground"]).toMatchObject({ soil: "firm clay" });
    // The plan's north lies 4 deg clockwise of true north, so true north lies 4 deg anticlockwise of it.
    expect(plan.trueNorth).toBeCloseTo((-4 * Math.PI) / 180, 12);
  });
});
