import { describe, expect, it } from "vitest";
import { roomAbout } from "../../src/motion/room.ts";
import { trainRoom } from "../../src/motion/trailer-room.ts";
import type { TrainQuestion } from "../../src/motion/trailer-manoeuvre.ts";
import { trainDriven } from "./train-check.ts";
import { boxTrailer, pickup } from "./train-scenes.ts";

/** A lane of so many metres that bends to the left at a right angle. */
function bend(w: number): TrainQuestion {
  const ground = {
    rings: [
      [
        [-20, 0],
        [20, 0],
        [20, 40],
        [20 - w, 40],
        [20 - w, w],
        [-20, w],
      ] as const,
    ],
  };
  const goal = { x: 20 - w / 2, y: 30, heading: Math.PI / 2 };
  const start = { x: -10, y: w / 2, heading: 0 };
  return {
    vehicle: pickup,
    trailer: boxTrailer,
    clear: ground,
    running: ground,
    start,
    goal,
    margin: 0,
    mostChanges: 0,
  };
}

function roomOn(question: TrainQuestion, wanted: number) {
  const ask = (margin: number) => ({ ...question, margin });
  return trainRoom(roomAbout(ask, wanted), ask, { trailer: question.trailer, wanted });
}

describe("room of a train", () => {
  it("is a little more than is wanted where there is plenty", () => {
    expect(roomOn(bend(7), 0.1).proven).toBeCloseTo(0.35, 9);
  });

  // Where less than the wanted room is found, it is that much: driven a second way it touches nothing with so much round it.
  it("is told as far as a way is found where it is less than is wanted", () => {
    const question = bend(5);
    const { proven, path, noMoreThan } = roomOn(question, 0.5);
    expect(noMoreThan).toBeNull();
    expect(proven).toBeGreaterThan(0);
    expect(proven).toBeLessThan(0.5);
    expect(trainDriven({ ...question, margin: proven ?? 0 }, path ?? []).worst).toBeLessThan(1e-5);
  });

  it("is unknown where no way is found half a metre below the wanted", () => {
    const { proven, path } = roomOn(bend(4.1), 0.6);
    expect([proven, path]).toEqual([null, null]);
  });

  it("is no more than it has where it stands", () => {
    const long = { ...boxTrailer, bodyWidth: 4.9 };
    const room = roomOn({ ...bend(5), trailer: long }, 0.3);
    expect(room.never).toBe("start");
    // 5 m less 4.9 m leaves 5 cm on each side; it is looked for in steps of 5 cm.
    expect(room.noMoreThan).toBeGreaterThanOrEqual(0.05);
    expect(room.noMoreThan).toBeLessThanOrEqual(0.101);
  });
});
