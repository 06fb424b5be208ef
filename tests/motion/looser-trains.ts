// Questions about a train that ask for less than another one: what was possible stays possible.

import { movesOf } from "../../src/motion/pose.ts";
import { jackKnifeAngle } from "../../src/motion/trailer-pose.ts";
import { findTrainManoeuvre } from "../../src/motion/trailer-manoeuvre.ts";
import type { TrainQuestion } from "../../src/motion/trailer-manoeuvre.ts";
import { widened } from "./looser-questions.ts";
import { sequence } from "./seeded.ts";
import { trainDriven } from "./train-check.ts";
import { anotherTrainScene } from "./more-train-scenes.ts";
import { trainScene } from "./train-scenes.ts";

const loosenings = [
  "larger ground",
  "smaller bodies",
  "shorter tail",
  "more moves",
  "smaller margin",
  "wider hitch",
] as const;

function looser(question: TrainQuestion, how: (typeof loosenings)[number], next: () => number): TrainQuestion {
  const by = 0.02 + 0.25 * next();
  const { vehicle, trailer } = question;
  if (how === "more moves") return { ...question, mostChanges: question.mostChanges + 2 };
  if (how === "smaller margin") return { ...question, margin: question.margin * next() };
  if (how === "wider hitch") return { ...question, trailer: { ...trailer, greatestAngle: trailer.greatestAngle + by } };
  if (how === "shorter tail") {
    return { ...question, trailer: { ...trailer, rearOverhang: trailer.rearOverhang - by } };
  }
  if (how === "larger ground") {
    const clear = widened(question.clear, by);
    return { ...question, clear, running: question.running === question.clear ? clear : widened(question.running, by) };
  }
  return {
    ...question,
    vehicle: { ...vehicle, bodyWidth: vehicle.bodyWidth - by, frontOverhang: vehicle.frontOverhang - by },
    trailer: { ...trailer, bodyWidth: trailer.bodyWidth - by },
  };
}

export interface TrainComparison {
  possible: number;
  loosened: number;
  /** Paths that leave their ground, fold the hitch or miss their end when they are driven a second way. */
  readonly falsePossible: string[];
  /** Looser questions that were not answered by the stricter one's path. */
  readonly worse: string[];
}

/** Asks about the scenes of some seeds with a short search, and about every loosening of those that are possible. */
export function compareLooserTrains(seeds: readonly number[], mostLooks: number): TrainComparison {
  const seen: TrainComparison = { possible: 0, loosened: 0, falsePossible: [], worse: [] };
  for (const { name, question, seed } of seeds.flatMap(scenesOf)) {
    const found = findTrainManoeuvre(question, { mostLooks });
    if (found.answer !== "possible") continue;
    seen.possible += 1;
    if (!holds(question, found.path)) seen.falsePossible.push(name);
    for (const how of loosenings) {
      const less = looser(question, how, sequence(seed + 77));
      seen.loosened += 1;
      const then = findTrainManoeuvre(less, { mostLooks: 0, known: [found.path] });
      if (then.answer !== "possible" || then.changes > found.changes) seen.worse.push(`${name}: ${how}`);
      // The same path on no less ground need not be driven again.
      else if (then.path !== found.path && !holds(less, then.path)) seen.falsePossible.push(`${name}: ${how}`);
    }
  }
  return seen;
}

const scenesOf = (seed: number) => [
  { seed, ...trainScene(seed) },
  { seed, ...anotherTrainScene(seed) },
];

/** Whether a path does, driven in steps of 5 mm. A path may miss its end by 2 cm and 0.01 rad; the steps add 2 mm. */
function holds(question: TrainQuestion, path: Parameters<typeof trainDriven>[1]): boolean {
  const { worst, largest, largestReverse, end } = trainDriven(question, path);
  const { goal, trailer, vehicle } = question;
  const moves = movesOf(path);
  const turn = Math.sin((end.heading - goal.heading) / 2);
  return (
    worst < 1e-5 &&
    largest <= trailer.greatestAngle + 1e-4 &&
    largestReverse <= (jackKnifeAngle(trailer, vehicle.rearAxleRadius) ?? Math.PI) + 1e-4 &&
    path.every(({ curvature }) => Math.abs(curvature) * vehicle.rearAxleRadius < 1 + 1e-6) &&
    moves.length - 1 <= question.mostChanges &&
    moves[0]?.gear === (question.firstGear ?? "forward") &&
    moves.at(-1)?.gear === (question.lastGear ?? "forward") &&
    Math.hypot(end.x - goal.x, end.y - goal.y) < 0.022 &&
    Math.abs(turn) < 0.006 &&
    Math.abs(Math.sin(end.hitch)) < 0.022
  );
}
