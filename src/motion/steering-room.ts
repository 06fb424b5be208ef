// Room for a vehicle whose wheels are turned only while it rolls: a way found with more room and wheels turned on the
// spot is driven at the steering rate, joined to its end anew, and checked exactly.

import { prepareEnvelopes } from "./checked.ts";
import { joinAll } from "./join.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import { movesOf, posesAlong, wrapAngle } from "./pose.ts";
import type { Arc } from "./pose.ts";
import { envelopesOf } from "./envelope.ts";
import { closeWay } from "./room.ts";
import type { AskRoom, Room } from "./room.ts";
import { rolled, shortestLeg } from "./steering.ts";
import type { Steering } from "./steering.ts";
import { sweepPath } from "./sweep.ts";

/** How near the end must be reached: m and rad. */
const endTolerance = { distance: 0.02, heading: 0.01 } as const;
const lever = 3;

/** More room at which a way is looked for first, as parts of the length rolled to full lock; the search's own doubt besides. */
const extras = [0.25, 0.4, 0.6, 0.12, 0.9] as const;
const doubt = 0.03;

/**
 * Room at the wanted clearance (m) with a steering rate, from the room with wheels turned on the spot: never more than
 * that. What is found is exact; where it is not found nothing is known.
 */
export function rollingRoom(
  alone: Room,
  ask: AskRoom,
  at: { readonly steering: Steering; readonly wanted: number },
): Room {
  const unknown: Room = { proven: null, path: null, noMoreThan: null, tooLarge: alone.tooLarge, never: alone.never };
  const { steering, wanted } = at;
  const question = ask(wanted);
  if (!question || alone.tooLarge) return unknown;
  if (alone.proven === null || alone.proven < wanted) {
    const known = alone.noMoreThan !== null && alone.noMoreThan < wanted;
    return known ? { ...unknown, noMoreThan: alone.noMoreThan } : unknown;
  }
  for (const extra of extras) {
    const way = closeWay(ask, wanted + extra * steering.rollToLock + doubt);
    const path = way && rolledWay(way, question, steering);
    if (path) return { ...unknown, proven: wanted, path };
  }
  return unknown;
}

/** A way driven at the steering rate that ends at the end and touches nothing at the question's margin; null where not. */
export function rolledWay(way: readonly Arc[], question: ManoeuvreQuestion, steering: Steering): readonly Arc[] | null {
  const { start, goal, vehicle, margin } = question;
  const misses = (arcs: readonly Arc[]): readonly number[] => {
    const end = posesAlong(start, rolled(arcs, steering)).at(-1) ?? start;
    return [end.x - goal.x, end.y - goal.y, lever * wrapAngle(end.heading - goal.heading)];
  };
  const closes = ([x = 0, y = 0, turn = 0]: readonly number[]) =>
    Math.hypot(x, y) <= endTolerance.distance && Math.abs(turn) <= lever * endTolerance.heading;
  const joined = joinAll({ arcs: way, misses, closes, largestCurvature: 1 / vehicle.rearAxleRadius });
  if (!joined) return null;
  const path = rolled(joined, steering);
  if (movesOf(path).some(({ length }) => length < shortestLeg)) return null;
  const checked = prepareEnvelopes(envelopesOf(vehicle, question, margin));
  return sweepPath(checked, start, path).is === "accepted" ? path : null;
}
