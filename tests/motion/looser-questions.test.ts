import { describe, expect, it } from "vitest";
import { findManoeuvre } from "../../src/motion/find-manoeuvre.ts";
import { answers } from "../../src/motion/hand-over.ts";
import { compareLooser } from "./looser-questions.ts";
import { sceneById, scenes } from "./scenes.ts";

describe("larger ground, smaller body, more moves, smaller margin", () => {
  it("never contradict a checked path, and take it over", () => {
    const seen = compareLooser(Array.from({ length: 30 }, (_, i) => 70_000 + i));
    expect(seen.rejected).toEqual([]);
    expect(seen.contradicted).toEqual([]);
    expect(seen.worse).toEqual([]);
    expect(seen.loosened).toBeGreaterThan(60);
  });
});

describe("taking a path over", () => {
  it.each(scenes.filter(({ path }) => path !== null))(
    "scene $id: another program's path does for its question",
    (scene) => {
      const question = { ...scene, mostChanges: scene.leastChanges ?? 0 };
      expect(answers(question, scene.path ?? [])).toBe(true);
      expect(answers({ ...question, mostChanges: question.mostChanges - 1 }, scene.path ?? [])).toBe(false);
      expect(answers({ ...question, margin: question.margin + 0.06 }, scene.path ?? [])).toBe(false);
      expect(answers({ ...question, lastGear: "reverse" }, scene.path ?? [])).toBe(false);
      const slower = { ...scene.vehicle, rearAxleRadius: scene.vehicle.rearAxleRadius * 1.01 };
      expect(answers({ ...question, vehicle: slower }, scene.path ?? [])).toBe(false);
      const elsewhere = { ...scene.goal, x: scene.goal.x + 0.03 };
      expect(answers({ ...question, goal: elsewhere }, scene.path ?? [])).toBe(false);
    },
  );

  it("a path found for more clearance is not lost where less is asked for", () => {
    const strict = findManoeuvre({ ...sceneById("a"), mostChanges: 6 });
    if (strict.answer !== "possible") throw new Error(strict.answer);
    const loose = { ...sceneById("a"), mostChanges: 6, margin: 0.079 };
    expect(findManoeuvre(loose, [strict.path])).toMatchObject({ answer: "possible", path: strict.path });
  });
});
