// Can a vehicle with its trailer get from here to there? Possible with an exact path; impossible where it does not even
// stand at an end or the towing vehicle alone cannot do it; else it cannot be told.

import { coarse, coarseDeflation, findManoeuvre, findsWay } from "./find-manoeuvre.ts";
import type { ManoeuvreAnswer } from "./manoeuvre.ts";
import { directionChanges, movesOf } from "./pose.ts";
import type { Arc } from "./pose.ts";
import { pose } from "./posed.ts";
import { trailerByItself } from "./trailer-alone.ts";
import { joinToEnd } from "./trailer-join.ts";
import { largestAngleAlong, trainDrivesAll, trainStandsFree } from "./trailer-sweep.ts";
import { trainProblem } from "./train-problem.ts";
import type { TrainProblem, TrainQuestion } from "./train-problem.ts";
import { trainLooks, trainWay } from "./train-way.ts";

export type { TrainQuestion } from "./train-problem.ts";

export type TrainAnswer =
  | {
      readonly answer: "possible";
      readonly changes: number;
      readonly path: readonly Arc[];
      readonly largestAngle: number;
    }
  /** `vehicle`, `trailer`: not even that alone can do it (an empirical no, as there); else the train does not fit at an end. */
  | { readonly answer: "not"; readonly why: "start" | "goal" | "vehicle" | "trailer" }
  | { readonly answer: "cannot-tell" };

/** How many looks a search may take (0: only what is known; 1: a quick one; 2: a close one too), and known paths. */
export interface TrainHelp {
  readonly mostLooks?: number;
  readonly known?: readonly (readonly Arc[])[];
}

/**
 * Answers one question about a train. A path that is found is exact at the wanted clearance: the towing vehicle by the
 * closed-form sweep, the trailer by conservative advancement, the hitch within what it allows and, in reverse, within
 * the jack-knife angle. Not finding one says nothing, so "not" rests on what is sure for the parts of the train. A path
 * `known` from a stricter question is taken over where it holds, if need be joined to the end anew.
 */
export function findTrainManoeuvre(question: TrainQuestion, help: TrainHelp = {}): TrainAnswer {
  const { mostLooks = trainLooks.length, known = [] } = help;
  const problem = trainProblem(question);
  const straightEnd = { ...problem.end, hitchAngle: 0 };
  if (!trainStandsFree(problem.train, problem.start)) return { answer: "not", why: "start" };
  if (!trainStandsFree(problem.train, straightEnd)) return { answer: "not", why: "goal" };
  const taken = takenOverByTrain(problem, known);
  if (taken) return taken;
  if (mostLooks === 0) return { answer: "cannot-tell" };
  if (surelyNot(question)) return partsAlone(question);
  for (const look of trainLooks.slice(0, mostLooks)) {
    const path = trainWay(problem, look);
    const answer = path && checkedPath(problem, path);
    if (answer) return answer;
  }
  return partsAlone(question);
}

/** Whether a quick look shows that not even the towing vehicle can do it. */
function surelyNot(question: TrainQuestion): boolean {
  const search = { step: coarse, deflation: coarseDeflation, most: question.mostChanges };
  return !findsWay(pose(question), search);
}

/** Whether one of the parts of a train could not even do it alone; else nothing can be told. */
function partsAlone(question: TrainQuestion): TrainAnswer {
  if (isNo(findManoeuvre(question))) return { answer: "not", why: "vehicle" };
  const towed = trailerByItself(question);
  return towed && isNo(towed) ? { answer: "not", why: "trailer" } : { answer: "cannot-tell" };
}

const isNo = ({ answer }: ManoeuvreAnswer): boolean => answer === "not-within" || answer === "not-however-many";

/** A path joined to its end and checked exactly, as an answer; null where it does not hold. */
function checkedPath(problem: TrainProblem, path: readonly Arc[]): TrainAnswer | null {
  const { train, start, limits } = problem;
  const closed = closedPath(problem, path);
  if (!closed || !isAllowed(problem, closed) || !trainDrivesAll(train, start, closed, limits)) return null;
  const largestAngle = largestAngleAlong(train.trailer, start, closed);
  return { answer: "possible", changes: directionChanges(closed), path: closed, largestAngle };
}

/** Whether a path keeps to the gears, the changes of direction and the smallest radius of a question. */
function isAllowed({ firstGear, lastGear, mostChanges, radius }: TrainProblem, arcs: readonly Arc[]): boolean {
  // A curvature may exceed the tightest by a rounding.
  const sharpest = (1 + 1e-9) / radius;
  const moves = movesOf(arcs);
  const gears = moves[0]?.gear === firstGear && moves.at(-1)?.gear === lastGear;
  return gears && moves.length - 1 <= mostChanges && arcs.every(({ curvature }) => Math.abs(curvature) <= sharpest);
}

/** The path of the fewest changes among those known that answers a question. */
function takenOverByTrain(problem: TrainProblem, known: readonly (readonly Arc[])[]): TrainAnswer | null {
  const fits = known.filter((arcs) => isAllowed(problem, arcs));
  for (const arcs of fits.toSorted((a, b) => directionChanges(a) - directionChanges(b))) {
    const answer = checkedPath(problem, arcs);
    if (answer) return answer;
  }
  return null;
}

/** Joined to the end as it is driven. */
function closedPath({ train, start, end, radius }: TrainProblem, arcs: readonly Arc[]): readonly Arc[] | null {
  return joinToEnd({ trailer: train.trailer, start, end, arcs, largestCurvature: 1 / radius });
}
