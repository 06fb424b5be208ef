// Turning scenes as plans: the same least changes and the same room as the search alone gives, and what moving the plan,
// a wall, or a stage changes. Scenes a, b, c and f: COMPUTED by another program (see tests/motion/scenes.json).

import { describe, expect, it } from "vitest";
import { readPlain, spread } from "../../src/engine/spread.ts";
import { stageViews } from "../../src/engine/stages.ts";
import { changesOfDirection } from "../../src/measures/changes-of-direction.ts";
import { turningRoom } from "../../src/measures/turning-room.ts";
import type { Plan } from "../../src/model/plan.ts";
import type { CandidatePlace, Found, Measure } from "../../src/model/reading.ts";
import { planOf } from "../plan/resolved.ts";
import { type Move, planOfScene, scenes, type Written } from "./turning-plans.ts";

function found(measure: Measure, plan: Plan, stage = 0): Found {
  const read = readPlain(plan.numbers);
  const [view] = stageViews(plan, [stage], read, () => []);
  const manoeuvre = plan.features.find((feature) => feature.kind === "manoeuvre");
  if (!view || !manoeuvre) throw new Error("no manoeuvre");
  return measure.find({ manoeuvre }, view.scene, { clear: 0 });
}

function worst(measure: Measure, plan: Plan, stage = 0): { value: number; place: CandidatePlace } {
  const answer = found(measure, plan, stage);
  if (answer.is !== "found") throw new Error(JSON.stringify(answer));
  const read = readPlain(plan.numbers);
  const all = answer.places.map((place) => ({ place, value: place.value(read) })).sort((a, b) => a.value - b.value);
  return all[0] as { value: number; place: CandidatePlace };
}

const scene = (id: keyof typeof scenes, written: Written) => planOf(planOfScene(scenes[id], written));

describe("least changes of direction (COMPUTED by another program)", () => {
  it.each([
    ["a", 4],
    ["b", 2],
    ["c", 2],
  ] as const)("scene %s: %d", (id, changes) => {
    expect(worst(changesOfDirection, scene(id, { moves: 13 })).value).toBe(changes);
  });
  it("scene f: never", () => {
    expect(found(changesOfDirection, scene("f", { moves: 13 }))).toMatchObject({ is: "gave-up" });
  });
});

describe("room in so many moves: critical clearances of another program at 5 and 2.5 cm (COMPUTED)", () => {
  // The bracket is 4 to 5 cm wide, and the other program's two lattices differ by up to 4 cm.
  it.each([
    ["a", 3, -0.009, 0.02],
    ["b", 3, 0.272, 0.29],
    ["f", 13, -0.536, -0.507],
  ] as const)("scene %s in %d moves", (id, moves, low, high) => {
    const clear = id === "f" ? 0.05 : 0.4;
    const { value, place } = worst(turningRoom, scene(id, { moves, clear }));
    const slack = Math.max(0.05, 2 * (place.methodU ?? 0));
    expect(value).toBeGreaterThan(low - slack);
    expect(value).toBeLessThan(high + slack);
  });
  it("is at least what was wanted where there is a way", () => {
    const { value, place } = worst(turningRoom, scene("a", { moves: 5 }));
    expect(place.bound).toBe("at_least");
    expect(value).toBeGreaterThanOrEqual(scenes.a.clear);
    expect(value).toBeLessThan(0.137 + 0.05);
  });
});

describe("two noes", () => {
  it.each([
    ["a", 3, 0.08, "with more moves it may find more room"],
    ["f", 13, 0.05, "no number of moves gives it the room that is wanted"],
    ["b", 3, 0.7, "more moves do not help, for it has not that room where it starts"],
  ] as const)("scene %s in %d moves with %d m: %s", (id, moves, clear, words) => {
    expect(worst(turningRoom, scene(id, { moves, clear })).place.where).toContain(words);
  });
  it("room that was found says nothing of more moves", () => {
    expect(worst(turningRoom, scene("a", { moves: 5 })).place.where).not.toContain("more moves");
  });
  it("least changes: cut off, and not in so many", () => {
    expect(found(changesOfDirection, scene("f", { moves: 13 }))).toMatchObject({
      because: "no number of moves gets it through",
    });
  });
});

const movedBy =
  (angle: number, [east, north]: readonly [number, number], mirror: 1 | -1): Move =>
  ([x, y]) => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return [east + c * x - s * mirror * y, north + s * x + c * mirror * y];
  };

describe("moving, turning and mirroring the plan", () => {
  it.each([
    ["moved", movedBy(0, [123.4, -56.7], 1)],
    ["turned", movedBy(0.777, [12, 8], 1)],
    ["mirrored", movedBy(0, [0, 0], -1)],
  ] as const)("%s: the same room", (_, moved) => {
    for (const [id, moves] of [
      ["a", 5],
      ["b", 3],
      ["f", 3],
    ] as const) {
      const plain = worst(turningRoom, scene(id, { moves }));
      const other = worst(turningRoom, scene(id, { moves, moved }));
      expect(other.place.bound).toBe(plain.place.bound);
      // 2 mm: what is found is a way among many; coordinates are rounded to 0.1 micrometre before the search.
      expect(Math.abs(other.value - plain.value)).toBeLessThan(2e-3);
    }
  });
});

/** Walls all round the pad of scene b, the north one shifted. */
function walled(shift: number, plusMinus = "0"): Plan {
  const wall = (from: readonly [number, number], to: readonly [number, number]) => ({
    line: [from, to].map((point) => point.map((value) => `${value} ± ${plusMinus}`)),
    existing: true,
  });
  const text = planOfScene(scenes.b, {
    moves: 3,
    clear: 0.15,
    more: {
      walls: {
        north: wall([-1, 7.4 + shift], [15.5, 7.4 + shift]),
        south: wall([-18, -0.2], [15.5, -0.2]),
        east: wall([14.7, 0], [14.7, 7.2]),
        west: wall([-0.2, 3.2], [-0.2, 7.4 + shift]),
      },
    },
  });
  return planOf(text.replace('"body_over_edge":false', '"body_over_edge":true'));
}

describe("a wall beside the path", () => {
  it("is the tightest place, and 5 cm nearer is noticed", () => {
    const plan = walled(0, "0.04");
    const read = readPlain(plan.numbers);
    const doubted = found(turningRoom, plan);
    const north = doubted.is === "found" && doubted.places.find(({ key }) => key.endsWith("north"));
    if (!north) throw new Error("the north wall is not among the near places");
    // The path stays: the room at that wall changes by as much as the wall is moved.
    const moved = north.value((quantity) => read(quantity) - (Math.abs(read(quantity) - 7.4) < 1e-9 ? 0.05 : 0));
    expect(north.value(read) - moved).toBeCloseTo(0.05, 3);
    // Two ends of a wall, 20 mm each: the foot of the perpendicular has between 14 and 20 mm.
    const { u } = spread(north.value, read, plan.numbers);
    expect(u).toBeGreaterThan(0.01);
    expect(u).toBeLessThan(0.021);
    expect(worst(turningRoom, walled(-1.2)).value).toBeLessThan(0.15);
  });
  it("lets through where it has a gap or a gate", () => {
    const across = (more: Readonly<Record<string, unknown>>) =>
      planOf(planOfScene(scenes.b, { moves: 3, more: { stages: ["works"], ...more } }));
    const wall = {
      line: [
        ["-9 ± 0", "-6 ± 0"],
        ["-9 ± 0", "6 ± 0"],
      ],
      height: 1,
      existing: true,
    };
    const shut = across({ walls: { cross: wall } });
    expect(worst(turningRoom, shut).value).toBeLessThan(0);
    const gap = across({ walls: { cross: { ...wall, gaps: [{ from: 5.8, to: 9.2 }] } } });
    expect(worst(turningRoom, gap).value).toBeGreaterThan(0.15);
    const gate = across({
      walls: { cross: wall },
      gates: { way: { on: "cross", along: 5.8, clear: 3.4, existing: true } },
    });
    expect(worst(turningRoom, gate).value).toBeGreaterThan(0.15);
  });
});

describe("a track drawn up to the slanting side of a pad", () => {
  it("joins it without a wedge", () => {
    const slanting = (end: readonly [number, number]) =>
      planOf(planOfScene({ ...scenes.b, track: [[-18, 0.4], end] }, { moves: 3, clear: 0.1 }));
    const joined = worst(turningRoom, slanting([0, 2.0]));
    const within = worst(turningRoom, slanting([0.9, 2.08]));
    expect(joined.value).toBeGreaterThanOrEqual(0.1);
    // The same ground drawn in two ways; what is found is a way among many.
    expect(Math.abs(joined.value - within.value)).toBeLessThan(0.05);
  });
});
