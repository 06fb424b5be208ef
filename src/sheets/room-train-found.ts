// A turn of a vehicle with its trailer as it is told and drawn: the same form as that of a vehicle alone.

import { prepareEnvelopes } from "../motion/checked.ts";
import { envelopesOf } from "../motion/envelope.ts";
import { movesOf } from "../motion/pose.ts";
import type { RoomAsked, RoomFound } from "../motion/room-answer.ts";
import { longestUseful } from "../motion/room-curve.ts";
import { pegsOf, type RoomLayout } from "../motion/room-layout.ts";
import { smallestTrainTurn, type TrainTurn, type TrainTurner, trainTurnOn } from "../motion/room-train-turn.ts";
import { sweepPath } from "../motion/sweep.ts";
import { sweptOutline } from "../motion/swept-outline.ts";
import type { Tightest } from "../motion/tightest.ts";
import { reachBehindAxle } from "../motion/trailer-pose.ts";
import type { Point } from "../model/reading.ts";
import { trailerOutlines } from "../site/trailer-outlines.ts";
import { distanceThere, nearestToTrailer, trailerParts, trainAt } from "../site/trailer-places.ts";

/** A turn with a trailer on: what was asked, and what was found. */
export interface TrainTurnTold {
  readonly asked: RoomAsked;
  /** True where both sides were given, so that nothing was looked for but a way. */
  readonly given: boolean;
  readonly found: RoomFound | null;
  /** The trailer where the train stops. */
  readonly stops: readonly (readonly Point[])[];
}

/** Depths and lengths are looked for up to this many lengths of the train. */
const lengths = 3;
/** Lengths that nobody gave are whole halves of a metre. */
const half = 0.5;

/** Looks for the ground; a length that is given is kept, one that is not is as long as single arcs would want. */
export function tellTrainTurn(
  turner: TrainTurner,
  layout: RoomLayout,
  given: { readonly long: number | null; readonly deep: number | null },
): TrainTurnTold {
  const behind = reachBehindAxle(turner.trailer);
  const whole = turner.vehicle.wheelbase + turner.vehicle.frontOverhang + behind;
  const usual = Math.ceil((longestUseful(turner) + behind) / half) * half;
  const unknown = layout.form !== "rectangle" || given.deep !== null ? ("long" as const) : ("deep" as const);
  const kept = (unknown === "long" ? given.deep : given.long) ?? usual;
  const isGiven = given.long !== null && given.deep !== null;
  const range = { from: turner.vehicle.bodyWidth + 2 * turner.clearance, to: lengths * whole };
  const turn = isGiven
    ? trainTurnOn(layout, { long: given.long, deep: given.deep }, turner)
    : smallestTrainTurn(layout, turner, { unknown, kept, ...range });
  const asked: RoomAsked = { turner, layout, ...given };
  if (!turn) return { asked, given: isGiven, found: null, stops: [] };
  const { start } = turn.question;
  const { covered, stops } = trailerOutlines(turner.trailer, start, turn.path);
  const swept = sweptOutline(turner.vehicle, start, turn.path);
  const found: RoomFound = {
    size: turn.size,
    solved: unknown,
    noneBelow: null,
    path: turn.path,
    moves: movesOf(turn.path),
    swept: { ...swept, rings: [...swept.rings, ...covered] },
    tightest: tightestOf(turn, turner),
    ground: turn.question.clear.rings[0] ?? [],
    pegs: pegsOf(layout, turn.size),
    island: null,
  };
  return { asked, given: isGiven, found, stops };
}

/** Where the nearer of the two bodies comes nearest to an edge. */
function tightestOf({ question, path }: TrainTurn, { vehicle, trailer, clearance }: TrainTurner): Tightest {
  const { start, clear } = question;
  const swept = sweepPath(prepareEnvelopes(envelopesOf(vehicle, question, 0)), start, path);
  const own: Tightest =
    swept.is === "accepted" ? swept.tightest : { clearance, at: [start.x, start.y], part: "body", arc: 0, along: 0 };
  const parts = trailerParts(trailer, "body", clear, 0);
  const near = nearestToTrailer(trailer, parts, start, path);
  if (!near) return own;
  const apart = distanceThere(trailer, parts, trainAt(trailer, start, path, near));
  return apart < own.clearance ? { ...near, clearance: apart, part: "body" } : own;
}
