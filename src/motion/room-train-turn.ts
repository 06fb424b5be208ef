// The least ground on which a vehicle turns round with its trailer on: by search, one exact path for every size that is tried.

import { type RoomLayout, type RoomSize, type Turner, turnQuestion } from "./room-layout.ts";
import { findTrainManoeuvre, type TrainQuestion } from "./trailer-manoeuvre.ts";
import { reachBehindAxle, type Trailer } from "./trailer-pose.ts";
import type { Arc } from "./pose.ts";

/** A vehicle with its trailer that is to turn round. */
export interface TrainTurner extends Turner {
  readonly trailer: Trailer;
}

/** A size on which a path was found and checked exactly. */
export interface TrainTurn {
  readonly size: RoomSize;
  readonly question: TrainQuestion;
  readonly path: readonly Arc[];
}

/**
 * The question of `turnQuestion` for a train: in line on the track at the start and at the end. The track reaches farther back by the
 * trailer, and the end lies as much farther out, so that the train has come straight by then.
 */
export function trainTurnQuestion(layout: RoomLayout, size: RoomSize, turner: TrainTurner): TrainQuestion {
  const { trailer } = turner;
  const alone = turnQuestion(layout, size, turner);
  const more = reachBehindAxle(trailer);
  const [ring = []] = alone.clear.rings;
  const low = Math.min(...ring.map(([, y]) => y));
  const longer = ring.map(([x, y]) => [x, y === low ? y - 2 * more : y] as const);
  const ground = { rings: [longer] };
  const goal = { ...alone.goal, y: alone.goal.y - more };
  return { ...alone, clear: ground, running: ground, goal, trailer };
}

/** Sizes are told apart by this much, m. */
export const trainGrain = 0.25;

/**
 * The least length or depth (m, up to `to`) at which a path is found, halving the range until it is as wide as
 * `trainGrain`; null where none is found at the largest. What is found is exact; that less would do cannot be ruled out,
 * for a search that finds nothing says nothing.
 */
export function smallestTrainTurn(
  layout: RoomLayout,
  turner: TrainTurner,
  wanted: {
    readonly unknown: "long" | "deep";
    readonly kept: number;
    readonly from: number;
    readonly to: number;
  },
): TrainTurn | null {
  const { unknown, kept, from, to } = wanted;
  const tryAt = (value: number): TrainTurn | null => {
    const size = { long: kept, deep: kept, [unknown]: value };
    return trainTurnOn(layout, size, turner);
  };
  let best = tryAt(to);
  if (!best) return null;
  let [low, high] = [Math.floor(from / trainGrain), Math.ceil(to / trainGrain)];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const found = tryAt(middle * trainGrain);
    if (found) {
      best = found;
      high = middle;
    } else low = middle;
  }
  return best;
}

/** A path on a ground of some size; null where none was found. */
export function trainTurnOn(layout: RoomLayout, size: RoomSize, turner: TrainTurner): TrainTurn | null {
  const question = trainTurnQuestion(layout, size, turner);
  const answer = findTrainManoeuvre(question);
  return answer.answer === "possible" ? { size, question, path: answer.path } : null;
}
