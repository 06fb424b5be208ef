// How much room there is round a vehicle with its trailer: as much as is wanted, a little more, or less than that.

import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import type { Arc } from "./pose.ts";
import type { Room } from "./room.ts";
import { trailerByItself } from "./trailer-alone.ts";
import { findTrainManoeuvre } from "./trailer-manoeuvre.ts";
import type { Trailer } from "./trailer-pose.ts";
import { trainStandsFree } from "./trailer-sweep.ts";
import { trainProblem } from "./train-problem.ts";
import type { TrainQuestion } from "./train-problem.ts";

/** A train, the clearance that it wants, m, and paths known from other questions about it. */
export interface TrainWanted {
  readonly trailer: Trailer;
  readonly wanted: number;
  readonly known?: readonly (readonly Arc[])[];
}

/** Steps above the wanted clearance that are tried first, m: more than a usual survey's doubt. */
const stepsUp = [0.25, 0.1] as const;
/** Steps above it that a path found at it is tried at, m. */
const smallSteps = [0.1, 0.05] as const;

/** Steps below the wanted clearance at which it is looked where there is no way yet, m. */
const stepDown = 0.05;
const mostSteps = 40;

/**
 * Room of a train at the clearance of a question (m), from that of its towing vehicle alone: never more than that; as
 * much as is wanted where a path is found; no more than it has where it stands, or than its trailer alone would have,
 * if that is less. Else unknown. A path that is found with more room is found with less.
 */
export function trainRoom(alone: Room, ask: (clearance: number) => ManoeuvreQuestion | null, at: TrainWanted): Room {
  const unknown: Room = { proven: null, path: null, noMoreThan: null, tooLarge: alone.tooLarge, never: alone.never };
  const { trailer, wanted, known = [] } = at;
  const question = ask(wanted);
  if (!question || alone.tooLarge) return unknown;
  const { margin } = question;
  if (alone.proven === null || alone.proven < margin) {
    const bounded = alone.noMoreThan !== null && alone.noMoreThan < margin;
    return bounded ? { ...unknown, noMoreThan: alone.noMoreThan } : unknown;
  }
  for (const up of stepsUp) {
    const more = alone.proven < margin + up ? null : ask(margin + up);
    const found = more && findTrainManoeuvre({ ...more, trailer }, { mostLooks: 1, known });
    if (found?.answer === "possible") return { ...unknown, proven: margin + up, path: found.path };
  }
  const found = findTrainManoeuvre({ ...question, trailer }, { known });
  if (found.answer === "possible") return { ...unknown, ...climbed(ask, found.path, { trailer, wanted: margin }) };
  if (found.answer !== "not" || found.why === "vehicle") return unknown;
  const has = found.why === "trailer" ? goesByItself : standsAtEnds;
  const noMoreThan = roomBelow({ ...question, trailer }, has);
  return found.why === "trailer" ? { ...unknown, noMoreThan } : { ...unknown, noMoreThan, never: found.why };
}

/** The most room for which a path is known that was found for less. */
function climbed(
  ask: (clearance: number) => ManoeuvreQuestion | null,
  path: readonly Arc[],
  { trailer, wanted }: TrainWanted,
): Pick<Room, "proven" | "path"> {
  for (const up of smallSteps) {
    const more = ask(wanted + up);
    const found = more && findTrainManoeuvre({ ...more, trailer }, { mostLooks: 0, known: [path] });
    if (found?.answer === "possible") return { proven: wanted + up, path: found.path };
  }
  return { proven: wanted, path };
}

/** Clearance, from the wanted one downwards, at which something does not hold yet, m. */
function roomBelow(question: TrainQuestion, has: (question: TrainQuestion) => boolean): number {
  let { margin } = question;
  for (let count = 0; count < mostSteps; count++) {
    if (has({ ...question, margin: margin - stepDown })) return margin;
    margin -= stepDown;
  }
  return margin;
}

function standsAtEnds(question: TrainQuestion): boolean {
  const { train, start, end } = trainProblem(question);
  return trainStandsFree(train, start) && trainStandsFree(train, { ...end, hitchAngle: 0 });
}

function goesByItself(question: TrainQuestion): boolean {
  const found = trailerByItself(question);
  return found === null || found.answer === "possible" || found.answer === "cannot-tell";
}
