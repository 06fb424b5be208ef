// A path found for one question taken over by another that asks for no more: a smaller vehicle or margin, more ground,
// more moves. Whether it asks for no more need not be known: the path is checked exactly.

import { prepareEnvelopes } from "./checked.ts";
import { envelopesOf } from "./envelope.ts";
import type { ManoeuvreQuestion } from "./manoeuvre.ts";
import { directionChanges, movesOf, posesAlong, wrapAngle } from "./pose.ts";
import type { Arc } from "./pose.ts";
import { endTolerance } from "./refine.ts";
import { whereRejected } from "./sweep.ts";

/** Share by which a curvature may exceed the tightest for rounding. */
const rounding = 1e-9;

/** Whether exact arcs answer a question: gears, number of changes, curvature, end, and clear of everything on the way. */
export function answers(question: ManoeuvreQuestion, arcs: readonly Arc[]): boolean {
  const { vehicle, start, goal, margin } = question;
  const moves = movesOf(arcs);
  if (directionChanges(arcs) > question.mostChanges) return false;
  if (moves[0] && moves[0].gear !== (question.firstGear ?? "forward")) return false;
  if (moves.length > 0 && moves.at(-1)?.gear !== (question.lastGear ?? "forward")) return false;
  const sharpest = (1 + rounding) / vehicle.rearAxleRadius;
  if (arcs.some(({ curvature }) => Math.abs(curvature) > sharpest)) return false;
  const end = posesAlong(start, arcs).at(-1) ?? start;
  if (Math.hypot(end.x - goal.x, end.y - goal.y) > endTolerance.distance) return false;
  if (Math.abs(wrapAngle(end.heading - goal.heading)) > endTolerance.heading) return false;
  return whereRejected(prepareEnvelopes(envelopesOf(vehicle, question, margin)), start, arcs) === null;
}

/** The path of the fewest changes among those known that answers a question; null where none does. */
export function takenOver(question: ManoeuvreQuestion, known: readonly (readonly Arc[])[]): readonly Arc[] | null {
  const good = known.filter((arcs) => answers(question, arcs));
  return good.sort((a, b) => directionChanges(a) - directionChanges(b))[0] ?? null;
}
