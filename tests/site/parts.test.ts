// Parts as subjects: runs between chambers and levelled nodes, openings, gaps, layers.

import { describe, expect, it } from "vitest";
import { isCalled, partsOf } from "../../src/site/parts.ts";
import { planWith, standingIn } from "../measures/rig.ts";

const drain = {
  chambers: { ic1: { at: [10, 0], existing: true }, ic2: { at: [30, 0], existing: true } },
  drains: { kitchen: { line: [[0, 0], "ic1", [20, 3], "ic2"], carries: "foul", inverts: { ic2: 98 }, from: "works" } },
};
const namesOf = (keys: object, kind: string) =>
  standingIn(planWith(keys as Record<string, unknown>)).flatMap((one) => (one.kind === kind ? [one.name] : []));

describe("runs of a drain", () => {
  it("stop at chambers and at the ends, and pass over bends", () => {
    expect(namesOf(drain, "drain run")).toEqual(["kitchen, point 1 to ic1", "kitchen, ic1 to ic2"]);
  });
  it("stop at a peg that has an invert", () => {
    const pegged = {
      survey: { stations: { P1: { at: [0, 0] }, P2: { at: [6, 0] }, P3: { at: [12, 0] } } },
      drains: { land: { line: ["P1", "P2", "P3"], inverts: { P1: 100, P2: 99.9, P3: 99.7 }, from: "works" } },
    };
    expect(namesOf(pegged, "drain run")).toEqual(["land, P1 to P2", "land, P2 to P3"]);
  });
  it("carry the drain's own words and say what they are part of", () => {
    const [, run] = standingIn(planWith(drain)).filter((one) => one.kind === "drain run");
    expect(run?.partOf?.name).toBe("kitchen");
    expect(run?.properties).toMatchObject({
      carries: "foul",
      form: "pipe",
      upper: "ic1",
      lower: "ic2",
      between_chambers: true,
    });
  });
  it.each([
    ["rodding eye", "manhole", "eye to manhole"],
    ["inspection chamber", "manhole", "chamber to chamber"],
    ["manhole", "manhole", "manhole to manhole"],
    ["access fitting", "rodding eye", "eye to chamber"],
  ])("between %s and %s are rodded from %s", (first, second, openings) => {
    const keys = {
      chambers: { a: { at: [0, 0], kind: first, existing: true }, b: { at: [9, 0], kind: second, existing: true } },
      drains: { d: { line: ["a", "b"], from: "works" } },
    };
    const run = standingIn(planWith(keys)).find((one) => one.kind === "drain run");
    expect(run?.properties["openings"]).toBe(openings);
  });
});

describe("other parts", () => {
  it("are the layers, gaps and openings that a feature lists", () => {
    const keys = {
      surfaces: {
        yard: {
          outline: [
            [0, 0],
            [9, 0],
            [9, 9],
          ],
          layers: [{ of: "stone", thickness: "100 mm" }, { of: "rubble" }],
          from: "works",
        },
      },
      walls: {
        march: {
          line: [
            [0, 20],
            [9, 20],
          ],
          gaps: [{ from: 2, to: 5 }],
          existing: true,
        },
      },
      buildings: {
        barn: {
          outline: [
            [20, 0],
            [29, 0],
            [29, 9],
          ],
          openings: [{ name: "big door", at: [25, 0] }],
          existing: true,
        },
      },
    };
    expect(namesOf(keys, "layer")).toEqual(["yard, layer 1", "yard, layer 2"]);
    expect(namesOf(keys, "gap")).toEqual(["march, gap 1"]);
    const door = standingIn(planWith(keys)).find((one) => one.kind === "opening");
    expect([door?.name, door?.shape?.form, door?.place.path.join("/")]).toEqual([
      "barn, big door",
      "point",
      "buildings/barn/openings/0",
    ]);
  });
  it("are none where nothing is listed", () => {
    const plan = planWith({
      fences: {
        f: {
          line: [
            [0, 0],
            [9, 0],
          ],
          height: 1,
          from: "works",
        },
      },
    });
    expect(partsOf(plan.features, (quantity) => plan.numbers.values[quantity.id] as number, 0)).toEqual([]);
  });
  it("answer to the name of their whole, and to no name that only begins alike", () => {
    expect([
      isCalled("kitchen, a to b", "kitchen"),
      isCalled("kitchen", "kitchen"),
      isCalled("kitchen garden", "kitchen"),
    ]).toEqual([true, true, false]);
  });
});
