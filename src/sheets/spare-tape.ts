// Which one more tape between pegs that stand would take most of a doubt away.

import { maximumPermissibleError, tapeClasses, uniformDoubt } from "../adjustment/tape.ts";
import type { Deciding } from "../model/finding.ts";
import type { Plan, PlanTape } from "../model/plan.ts";
import type { Spot } from "../model/quantity.ts";

/** One more tape, with the standard uncertainty of the reading before and after it. */
export interface SpareTape {
  readonly from: string;
  readonly to: string;
  readonly length: number;
  readonly before: number;
  readonly after: number;
}

/** Standard uncertainty of one tape of a length by handling alone, and what its reel adds, metres. */
export function tapeDoubt(tape: PlanTape, length: number): { readonly own: number; readonly reel: number } {
  const own = tape.handling + tape.perMetre * length;
  const reel = tape.reel === null ? 0 : uniformDoubt(maximumPermissibleError(tapeClasses[tape.reel.class], length));
  return { own, reel };
}

interface Peg {
  readonly name: string;
  readonly at: readonly [number, number];
  readonly east: Float64Array;
  readonly north: Float64Array;
}

/**
 * The best of all pairs of pegs within reach of the tape that are not taped yet. A new length l of doubt s tells of the
 * distance d that the net gives: w = l - d. With c = cov(reading, w), one added observation leaves
 * u_new^2 = u^2 - c^2 / (s^2 + var w) (linear least squares, one step; COMPUTED, checked against adjusting anew). The
 * reel's own error is shared by l and d, so a scale that all tapes have wrong is not taken for knowledge. Null where no
 * pair takes anything away.
 */
export function bestSpareTape(plan: Plan, deciding: Pick<Deciding, "u" | "contributions">): SpareTape | null {
  const { tape } = plan;
  if (tape === undefined) return null;
  const causes = new Map([...deciding.contributions.keys()].map((cause, k) => [cause, k]));
  const pegs = pegsOf(plan, causes);
  const reading = new Float64Array(causes.size);
  for (const [cause, part] of deciding.contributions) reading[causes.get(cause) as number] = part;
  const reel = tape.reel === null ? undefined : causes.get(tape.reel.cause);
  const taped = tapedPairs(plan);
  let best: SpareTape | null = null;
  for (const [i, a] of pegs.entries()) {
    for (const b of pegs.slice(i + 1)) {
      const length = Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]);
      if (!(length > 0) || length > tape.reach || taped.has(pairKey(a.name, b.name))) continue;
      const after = doubtAfter({ a, b, length, tape, reel, reading }, deciding.u);
      if (after < (best?.after ?? deciding.u) - smallestGain * deciding.u)
        best = { from: a.name, to: b.name, length, before: deciding.u, after };
    }
  }
  return best;
}

/** A pair must take this part of the doubt away to be better than none or than another (method tolerance). */
const smallestGain = 1e-6;

interface Pair {
  readonly a: Peg;
  readonly b: Peg;
  readonly length: number;
  readonly tape: PlanTape;
  readonly reel: number | undefined;
  readonly reading: Float64Array;
}

function doubtAfter({ a, b, length, tape, reel, reading }: Pair, u: number): number {
  const [e, n] = [(b.at[0] - a.at[0]) / length, (b.at[1] - a.at[1]) / length];
  const doubt = tapeDoubt(tape, length);
  let shared = 0;
  let size = doubt.own * doubt.own;
  for (let k = 0; k < a.east.length; k += 1) {
    const d = e * (b.east[k]! - a.east[k]!) + n * (b.north[k]! - a.north[k]!);
    const w = (k === reel ? doubt.reel : 0) - d;
    shared += (reading[k] ?? 0) * w;
    size += w * w;
  }
  return Math.sqrt(Math.max(0, u * u - (shared * shared) / size));
}

/** Pegs with their sway by cause; `causes` takes up every cause that moves a peg. */
function pegsOf(plan: Plan, causes: Map<number, number>): readonly Peg[] {
  const { values, sways } = plan.numbers;
  const surveyed = (plan.surveyed ?? []).filter(({ kind }) => kind === "peg");
  const spots = surveyed.flatMap(({ name }): (readonly [string, Spot])[] => {
    const spot = plan.pegs.get(name);
    return spot ? [[name, spot]] : [];
  });
  for (const [, spot] of spots) {
    for (const { id } of [spot.east, spot.north])
      for (const cause of (sways[id] ?? new Map<number, number>()).keys())
        if (!causes.has(cause)) causes.set(cause, causes.size);
  }
  const dense = (id: number): Float64Array => {
    const row = new Float64Array(causes.size);
    for (const [cause, by] of sways[id] ?? []) row[causes.get(cause) as number] = by;
    return row;
  };
  return spots.map(([name, { east, north }]) => ({
    name,
    at: [values[east.id] as number, values[north.id] as number],
    east: dense(east.id),
    north: dense(north.id),
  }));
}

const pairKey = (a: string, b: string): string => (a < b ? `${a}\n${b}` : `${b}\n${a}`);

function tapedPairs({ surveyFacts }: Plan): ReadonlySet<string> {
  return new Set(
    (surveyFacts?.measurements ?? []).flatMap(({ words, stations: [a, b] }) =>
      words.startsWith("tape ") && a !== undefined && b !== undefined ? [pairKey(a, b)] : [],
    ),
  );
}
