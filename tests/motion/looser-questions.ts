// Questions that ask for less than another: what was possible stays possible, and what is impossible stays so the other
// way round.

import { findManoeuvre } from "../../src/motion/find-manoeuvre.ts";
import type { Ground } from "../../src/motion/ground.ts";
import { answers } from "../../src/motion/hand-over.ts";
import type { ManoeuvreAnswer, ManoeuvreQuestion } from "../../src/motion/manoeuvre.ts";
import { randomPad } from "./random-pads.ts";
import { sequence } from "./seeded.ts";

type Corner = readonly [number, number];
type Ring = readonly Corner[];

export const loosenings = ["larger ground", "smaller body", "more moves", "smaller margin"] as const;

/** A question that asks for less than the given one, in one respect, by an amount from `next`. */
function looser(question: ManoeuvreQuestion, how: (typeof loosenings)[number], next: () => number): ManoeuvreQuestion {
  const by = 0.02 + 0.25 * next();
  if (how === "more moves") return { ...question, mostChanges: question.mostChanges + 2 };
  if (how === "smaller margin") return { ...question, margin: question.margin * next() };
  if (how === "larger ground") {
    const clear = widened(question.clear, by);
    return { ...question, clear, running: question.running === question.clear ? clear : widened(question.running, by) };
  }
  const { vehicle } = question;
  return {
    ...question,
    vehicle: {
      ...vehicle,
      bodyWidth: vehicle.bodyWidth - by,
      frontOverhang: vehicle.frontOverhang - by,
      rearOverhang: vehicle.rearOverhang - by,
    },
  };
}

/** A ground with every edge moved out: edges in parallel, corners where they meet. */
export function widened(ground: Ground, by: number): Ground {
  return { rings: ground.rings.map((ring) => outward(ring, by)) };
}

function outward(ring: Ring, by: number): Ring {
  const at = (i: number): Corner => ring[(i + ring.length) % ring.length] ?? [0, 0];
  const sense = Math.sign(ring.reduce((sum, [x, y], i) => sum + x * at(i + 1)[1] - at(i + 1)[0] * y, 0));
  return ring.map((corner, i): Corner => {
    const [a, b] = [direction(at(i - 1), corner), direction(corner, at(i + 1))];
    const normal = ([x, y]: Corner): Corner => [sense * y, -sense * x];
    const [m, n] = [normal(a), normal(b)];
    const share = by / (1 + m[0] * n[0] + m[1] * n[1]);
    return [corner[0] + share * (m[0] + n[0]), corner[1] + share * (m[1] + n[1])];
  });
}

function direction(from: Corner, to: Corner): Corner {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
}

export interface Comparison {
  questions: number;
  /** Looser questions about a path that was found. */
  loosened: number;
  /** Looser questions that reject the path of the stricter one. */
  readonly rejected: string[];
  /** Looser questions said "no" to although a path is known. */
  readonly contradicted: string[];
  /** Looser questions that, handed the path, have another answer than "possible", or more changes. */
  readonly worse: string[];
}

/** Asks about the pads of some seeds, and about every loosening of those that are possible. */
export function compareLooser(seeds: readonly number[]): Comparison {
  const seen: Comparison = { questions: 0, loosened: 0, rejected: [], contradicted: [], worse: [] };
  for (const seed of seeds) {
    const strict = randomPad(seed);
    const found = findManoeuvre(strict);
    seen.questions += 1;
    if (found.answer !== "possible") continue;
    for (const how of loosenings) {
      const question = looser(strict, how, sequence(seed + 77));
      const name = `${seed} ${how}`;
      seen.loosened += 1;
      if (!answers(question, found.path)) seen.rejected.push(name);
      if (isNo(findManoeuvre(question))) seen.contradicted.push(name);
      const handed = findManoeuvre(question, [found.path]);
      if (handed.answer !== "possible" || handed.changes > found.changes) seen.worse.push(name);
    }
  }
  return seen;
}

function isNo(answer: ManoeuvreAnswer): boolean {
  return answer.answer === "not-within" || answer.answer === "not-however-many";
}
