// How much of a change is enough: bisection that asks for few margins.

import { slack } from "./judge.ts";

/** Bisection ends at this, a tenth of a millimetre; numbers other than lengths are rounded to it. */
export const fine = 1e-4;
/** Half the width of the bracket that is tried about a guess, as a part of `fine`. */
const besideGuess = 1 / 64;
/** So many guesses along the chord; where the margin is bent more than they can follow, every middle is asked for. */
const mostGuesses = 4;

/** Margin at an amount of change; null where it cannot be told, Infinity where nothing is in the way any more. */
export type MarginAt = (amount: number) => number | null;

/** The same margins, each asked for once. */
export function rememberedMargins(marginAt: MarginAt): MarginAt {
  const known = new Map<number, number | null>();
  return (amount) => {
    const before = known.get(amount);
    if (before !== undefined) return before;
    const margin = marginAt(amount);
    known.set(amount, margin);
    return margin;
  };
}

interface Sample {
  readonly amount: number;
  readonly margin: number;
}

/**
 * Least amount at which the margin reaches `target`, to `fine`; null where it does not at `most`. The answer is that of
 * plain bisection between 0 and `most`. Most of its middles are decided without asking, by two amounts closely about
 * the root on the chord (regula falsi), as long as the margin does not fall again as the amount grows.
 */
export function leastAmount(
  marginAt: MarginAt,
  { target, most }: { readonly target: number; readonly most: number },
): number | null {
  const sampleAt = (amount: number): Sample => ({ amount, margin: marginAt(amount) ?? -Infinity });
  const holds = ({ margin }: Sample) => margin >= target - slack;
  let below = sampleAt(0);
  if (holds(below)) return 0;
  let above = sampleAt(most);
  if (!holds(above)) return null;
  const narrow = (amount: number): void => {
    if (!(amount > below.amount && amount < above.amount)) return;
    const sample = sampleAt(amount);
    if (holds(sample)) above = sample;
    else below = sample;
  };
  let guesses = 0;
  const isOpen = (middle: number) => middle > below.amount && middle < above.amount;
  const decide = (middle: number): void => {
    for (; guesses < mostGuesses && isOpen(middle); guesses++) {
      const guess = onChord(below, above, target - slack);
      narrow(guess - fine * besideGuess);
      narrow(guess + fine * besideGuess);
    }
    narrow(middle);
  };
  let low = 0;
  let high = most;
  while (high - low > fine) {
    const middle = (low + high) / 2;
    decide(middle);
    if (middle >= above.amount) high = middle;
    else low = middle;
  }
  return high;
}

/** Amount at which the straight line through two samples reaches a margin. */
function onChord(below: Sample, above: Sample, margin: number): number {
  const share = (margin - below.margin) / (above.margin - below.margin);
  return below.amount + share * (above.amount - below.amount);
}
