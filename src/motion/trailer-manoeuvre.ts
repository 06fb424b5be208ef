// Can a vehicle with its trailer get from here to there? Possible with an exact path; impossible where it does not even
// stand at an end or the towing vehicle alone cannot do it; else it cannot be told.

import { findManoeuvre } from "./find-manoeuvre.ts";
import type { ManoeuvreAnswer, ManoeuvreQuestion } from "./manoeuvre.ts";
import { directionChanges, movesOf } from "./pose.ts";
import type { Arc } from "./pose.ts";
import { envelopesOf } from "./envelope.ts";
import { pose } from "./posed.ts";
import type { Room } from "./room.ts";
import { seenFrom } from "./start-frame.ts";
import { grains, searchTrain } from "./trailer-search.ts";
import type { TrainProblem } from "./trailer-search.ts";
import { joinToEnd } from "./trailer-join.ts";
import { largestAngleInReverse, trailerPose } from "./trailer-pose.ts";
import type { Trailer } from "./trailer-pose.ts";
import { prepareTrain, sweepTrain, trailerEnvelopes, trainStandsFree } from "./trailer-sweep.ts";

/** A manoeuvre of a vehicle with a trailer, both in line at its start and at its end. */
export interface TrainQuestion extends ManoeuvreQuestion {
  readonly trailer: Trailer;
}

export type TrainAnswer =
  | {
      readonly answer: "possible";
      readonly changes: number;
      readonly path: readonly Arc[];
      readonly largestAngle: number;
    }
  /** `vehicle`: the towing vehicle alone cannot do it (an empirical no, as there); else the train does not fit at an end. */
  | { readonly answer: "not"; readonly why: "start" | "goal" | "vehicle" }
  | { readonly answer: "cannot-tell" };

/** Poses looked at in each direction of time before the search gives up. */
const usualLooks = 12_000;
/** The same for a clearance beyond the wanted one. */
const fewLooks = 3000;

/** What a search may start from: how long it may take (poses looked at), and paths known from other questions. */
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
  const { mostLooks = usualLooks, known = [] } = help;
  const problem = problemOf(question, mostLooks);
  const straightEnd = { ...problem.end, hitchAngle: 0 };
  if (!trainStandsFree(problem.train, problem.start)) return { answer: "not", why: "start" };
  if (!trainStandsFree(problem.train, straightEnd)) return { answer: "not", why: "goal" };
  const taken = takenOverByTrain(problem, known);
  if (taken) return taken;
  const path = trainPath(problem);
  if (path === null) return towingAlone(findManoeuvre(question));
  return checkedPath(problem, path) ?? { answer: "cannot-tell" };
}

/** A path joined to its end and checked exactly, as an answer; null where it does not hold. */
function checkedPath(problem: TrainProblem, path: readonly Arc[]): TrainAnswer | null {
  const closed = closedPath(problem, path);
  const swept = closed && sweepTrain(problem.train, problem.start, closed, problem.limits);
  if (!swept || swept.is === "rejected") return null;
  return { answer: "possible", changes: directionChanges(closed), path: closed, largestAngle: swept.largestAngle };
}

/** The path of the fewest changes among those known that answers a question. */
function takenOverByTrain(problem: TrainProblem, known: readonly (readonly Arc[])[]): TrainAnswer | null {
  const { firstGear, lastGear, mostChanges, radius } = problem;
  // A curvature may exceed the tightest by a rounding.
  const sharpest = (1 + 1e-9) / radius;
  const fits = known.filter((arcs) => {
    const moves = movesOf(arcs);
    const gears = moves[0]?.gear === firstGear && moves.at(-1)?.gear === lastGear;
    return gears && moves.length - 1 <= mostChanges && arcs.every(({ curvature }) => Math.abs(curvature) <= sharpest);
  });
  for (const arcs of fits.toSorted((a, b) => directionChanges(a) - directionChanges(b))) {
    const answer = checkedPath(problem, arcs);
    if (answer) return answer;
  }
  return null;
}

/** What was found against time ends where it ends: joined to the end as it is driven. */
function closedPath({ train, start, end, radius }: TrainProblem, arcs: readonly Arc[]): readonly Arc[] | null {
  return joinToEnd({ trailer: train.trailer, start, end, arcs, largestCurvature: 1 / radius });
}

function towingAlone({ answer }: ManoeuvreAnswer): TrainAnswer {
  return answer === "not-within" || answer === "not-however-many"
    ? { answer: "not", why: "vehicle" }
    : { answer: "cannot-tell" };
}

export function problemOf(question: TrainQuestion, mostLooks: number): TrainProblem {
  const { trailer, vehicle, margin } = question;
  const posed = pose(question);
  // Seen from the trailer's axle: the lattice is its.
  const axle = trailerPose(trailer, question.start, 0);
  const back = reachToAxle(trailer);
  const around = seenFrom(axle, question);
  const train = prepareTrain(envelopesOf(vehicle, around, margin), trailer, trailerEnvelopes(trailer, around, margin));
  return {
    train,
    start: { x: back, y: 0, heading: 0, hitchAngle: 0 },
    end: { ...posed.end, x: posed.end.x + back },
    firstGear: posed.firstGear,
    lastGear: posed.lastGear,
    mostChanges: question.mostChanges,
    radius: posed.radius,
    limits: { forward: trailer.greatestAngle, reverse: largestAngleInReverse(trailer, posed.radius) },
    box: { ...posed.box, left: posed.box.left + back, right: posed.box.right + back },
    mostLooks,
  };
}

/** Rear axle of the towing vehicle to that of the trailer in line behind it, m. */
const reachToAxle = ({ hitchBehindAxle, hitchToAxle }: Trailer): number => hitchBehindAxle + hitchToAxle;

/** A path searched in time, or against it from the end; the likelier way first. */
function trainPath(problem: TrainProblem): readonly Arc[] | null {
  const least = problem.firstGear === problem.lastGear ? 0 : 1;
  for (const grain of grains) {
    for (const changes of new Set([least, problem.mostChanges])) {
      const allowed = { ...problem, mostChanges: changes };
      const inTime = () => searchTrain(allowed, grain);
      const against = () => undone(searchTrain(turnedInTime(allowed), grain));
      const found = problem.lastGear === "reverse" ? (against() ?? inTime()) : (inTime() ?? against());
      if (found) return found;
    }
  }
  return null;
}

/** Driven from the end to the start, every gear the other one: the same ground is covered. */
function turnedInTime(problem: TrainProblem): TrainProblem {
  const { start, end, firstGear, lastGear, limits } = problem;
  const other = { forward: "reverse", reverse: "forward" } as const;
  return {
    ...problem,
    start: { ...end, hitchAngle: start.hitchAngle },
    end: start,
    firstGear: other[lastGear],
    lastGear: other[firstGear],
    limits: { forward: limits.reverse, reverse: limits.forward },
  };
}

function undone(arcs: readonly Arc[] | null): readonly Arc[] | null {
  return arcs && arcs.map(({ curvature, length }) => ({ curvature, length: -length })).toReversed();
}

/** A train and the clearance that it wants, m. */
export interface TrainWanted {
  readonly trailer: Trailer;
  readonly wanted: number;
}

/** Steps above the wanted clearance that are tried first, m: more than a usual survey's doubt. */
const stepsUp = [0.25, 0.1] as const;

/** Steps below the wanted clearance at which a train is looked at where it is to stand, m. */
const standingStep = 0.05;
const mostSteps = 40;

/**
 * Room of a train at the clearance of a question (m), from that of its towing vehicle alone: never more than that; as
 * much as is wanted where a path is found; no more than it has where it stands, if it does not fit there. Else unknown.
 */
export function trainRoom(alone: Room, ask: (clearance: number) => ManoeuvreQuestion | null, at: TrainWanted): Room {
  const unknown: Room = { proven: null, path: null, noMoreThan: null, tooLarge: alone.tooLarge, never: alone.never };
  const { trailer, wanted } = at;
  const question = ask(wanted);
  if (!question || alone.tooLarge) return unknown;
  const { margin } = question;
  if (alone.proven === null || alone.proven < margin) {
    const known = alone.noMoreThan !== null && alone.noMoreThan < margin;
    return known ? { ...unknown, noMoreThan: alone.noMoreThan } : unknown;
  }
  for (const up of stepsUp) {
    const more = alone.proven < margin + up ? null : ask(margin + up);
    const found = more && findTrainManoeuvre({ ...more, trailer }, { mostLooks: fewLooks });
    if (found?.answer === "possible") return { ...unknown, proven: margin + up, path: found.path };
  }
  const found = findTrainManoeuvre({ ...question, trailer });
  if (found.answer === "possible") return { ...unknown, proven: margin, path: found.path };
  if (found.answer !== "not" || found.why === "vehicle") return unknown;
  return { ...unknown, noMoreThan: standingRoom({ ...question, trailer }), never: found.why };
}

/** Clearance, from the wanted one downwards, at which a train does not yet fit where it is to stand, m. */
function standingRoom(question: TrainQuestion): number {
  let margin = question.margin;
  for (let count = 0; count < mostSteps; count++) {
    const { train, start, end } = problemOf({ ...question, margin: margin - standingStep }, 0);
    if (trainStandsFree(train, start) && trainStandsFree(train, { ...end, hitchAngle: 0 })) return margin;
    margin -= standingStep;
  }
  return margin;
}
