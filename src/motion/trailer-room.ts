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

/** Steps below the wanted clearance that are tried until there is a way, and how closely its room is then told, m. */
const stepsDown = [0.1, 0.25, 0.5] as const;
const fineness = 0.04;

/** Steps below the wanted clearance at which it is looked what surely does not go, m. */
const stepDown = 0.05;
const mostSteps = 40;

type AskTrain = (clearance: number) => TrainQuestion | null;
type Found = Pick<Room, "proven" | "path">;

/**
 * Room of a train at the clearance of a question (m), from that of its towing vehicle alone: never more than that; as
 * much as is wanted where a path is found; else less, where one is found with less. No more than it has where it stands,
 * or than its trailer alone would have. A path that is found with more room is found with less.
 */
export function trainRoom(alone: Room, ask: (clearance: number) => ManoeuvreQuestion | null, at: TrainWanted): Room {
  const unknown: Room = { proven: null, path: null, noMoreThan: null, tooLarge: alone.tooLarge, never: alone.never };
  const { trailer, known = [] } = at;
  const asked: AskTrain = (clearance) => {
    const question = ask(clearance);
    return question && { ...question, trailer };
  };
  const question = asked(at.wanted);
  if (!question || alone.tooLarge) return unknown;
  const { margin } = question;
  if (alone.proven === null || alone.proven < margin) {
    const bounded = alone.noMoreThan !== null && alone.noMoreThan < margin;
    return bounded ? { ...unknown, noMoreThan: alone.noMoreThan } : unknown;
  }
  for (const up of stepsUp) {
    const more = alone.proven < margin + up ? null : asked(margin + up);
    const found = more && findTrainManoeuvre(more, { mostLooks: 1, known });
    if (found?.answer === "possible") return { ...unknown, proven: margin + up, path: found.path };
  }
  const found = findTrainManoeuvre(question, { known });
  if (found.answer === "possible") return { ...unknown, ...climbed(asked, found.path, margin) };
  if (found.answer === "cannot-tell") return { ...unknown, ...lessRoom(asked, margin) };
  if (found.why === "vehicle") return unknown;
  const has = found.why === "trailer" ? goesByItself : standsAtEnds;
  const noMoreThan = roomBelow(question, has);
  return found.why === "trailer" ? { ...unknown, noMoreThan } : { ...unknown, noMoreThan, never: found.why };
}

/** The most room less than a clearance (m) for which quick looks find a path; none where they find none. */
function lessRoom(ask: AskTrain, wanted: number): Found {
  const look = (clearance: number, known: readonly (readonly Arc[])[]): readonly Arc[] | null => {
    const question = ask(clearance);
    const found = question && findTrainManoeuvre(question, { mostLooks: 1, known });
    return found?.answer === "possible" ? found.path : null;
  };
  let high = wanted;
  for (const down of stepsDown) {
    let low = wanted - down;
    let path = look(low, []);
    while (path !== null && high - low > fineness) {
      const middle = (low + high) / 2;
      const better = look(middle, [path]);
      if (better === null) high = middle;
      else [low, path] = [middle, better];
    }
    if (path !== null) return { proven: low, path };
    high = low;
  }
  return { proven: null, path: null };
}

/** The most room for which a path is known that was found for less. */
function climbed(ask: AskTrain, path: readonly Arc[], wanted: number): Found {
  for (const up of smallSteps) {
    const more = ask(wanted + up);
    const found = more && findTrainManoeuvre(more, { mostLooks: 0, known: [path] });
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
