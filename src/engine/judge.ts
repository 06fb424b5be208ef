// Judging one reading against one requirement under doubt: the only place where a verdict is made.

import { normalCdf } from "../adjustment/normal.ts";
import type { Stakes } from "../model/card.ts";

/** 95 % and 99.9 % one-sided points of the normal distribution (Phi(1.6448536) = 0.95, Phi(3.0902323) = 0.999). */
export const oneSided = { usual: 1.6448536269514722, safety: 3.090232306167813 } as const;

/** Slack of every comparison, relative above 1. */
export const slack = 1e-9;

export type Judged = "met" | "not-met" | "undecided";

/**
 * How far a reading lies inside what is wanted, with the doubt of that very difference (the bound may follow from
 * the plan and share its doubt). `other` is the second margin of a band.
 */
export interface Margin {
  readonly inside: number;
  readonly u: number;
  readonly other?: number;
  /** Size of the numbers compared, for the slack. */
  readonly size: number;
}

/** Multiplier for `met`: 0.999 where the stakes are safety, else 0.95. */
export function multiplier(stakes: Stakes): number {
  return stakes === "safety" ? oneSided.safety : oneSided.usual;
}

/**
 * Probability that the requirement is met, and the verdict (JCGM 106:2012 7.3, 8.3, one-sided; MEMORY).
 * p = Phi(inside/u), for a band p = Phi(inside/u) + Phi(other/u) - 1. Without doubt it is a plain comparison.
 */
export function judge(margin: Margin, stakes: Stakes): { readonly verdict: Judged; readonly probability: number } {
  const tolerance = slack * Math.max(1, Math.abs(margin.size));
  const least = Math.min(margin.inside, margin.other ?? Infinity);
  if (!(margin.u > 0)) {
    const met = least >= -tolerance;
    return { verdict: met ? "met" : "not-met", probability: met ? 1 : 0 };
  }
  const probability = chance(margin, 0);
  if (margin.other === undefined) return { verdict: oneLimit(margin, stakes, tolerance), probability };
  const enough = stakes === "safety" ? 0.999 : 0.95;
  if (chance(margin, tolerance) >= enough) return { verdict: "met", probability };
  return { verdict: chance(margin, -tolerance) <= 0.05 ? "not-met" : "undecided", probability };
}

function oneLimit(margin: Margin, stakes: Stakes, tolerance: number): Judged {
  if (margin.inside >= multiplier(stakes) * margin.u - tolerance) return "met";
  return margin.inside <= -oneSided.usual * margin.u + tolerance ? "not-met" : "undecided";
}

function chance({ inside, other, u }: Margin, shift: number): number {
  const first = normalCdf((inside + shift) / u);
  return other === undefined ? first : Math.max(0, first + normalCdf((other + shift) / u) - 1);
}
