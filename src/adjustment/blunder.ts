// When the measurements do not agree: which of them may be wrong, and can it be told at all?

import { chiSquareQuantile } from "./chi-square.ts";
import type { Adjustment, GlobalTest } from "./global-test.ts";
import { normalQuantile } from "./normal.ts";

/** Levels of the two tests, as probabilities that honest measurements stay within them. */
export interface BlunderLimits {
  /** Of the misfit as a whole, e.g. 0.95. */
  readonly global: number;
  /** Of a single standardised residual, e.g. 0.999. */
  readonly single: number;
}

/**
 * `unchecked`: nothing is measured twice. `agree`: neither test sees anything. `one`: a single observation, left out,
 * brings the rest to agree, and no other does. `several`: more than one would, so that the wrong one cannot be told.
 * `none-alone`: no single observation explains it: two blunders, sigmas too small, or one so gross that it bends the whole plan (then
 * `standingOut` of the network names it).
 */
export interface BlunderFinding {
  readonly is: "unchecked" | "agree" | "one" | "several" | "none-alone";
  /** Ids under suspicion, worst first: all of them must be measured again, or a further check be taped. */
  readonly suspects: readonly string[];
}

/** Values that differ by less than this part are the same (rounding); the order given decides between them. */
const alike = 1e-6;

/**
 * Look for a single blunder. Leaving observation i out lowers chi-square by w_i^2 (closed form), so i explains the
 * misfit if chi-square - w_i^2 passes with one degree of freedom less. With one redundancy every |w| is equal and all explain it: a blunder is seen and cannot be located.
 * Data snooping after Baarda 1968, MEMORY.
 */
export function findBlunder(
  result: GlobalTest & { readonly observations: readonly Adjustment[] },
  limits: BlunderLimits,
): BlunderFinding {
  const { chiSquare, degreesOfFreedom } = result;
  if (degreesOfFreedom <= 0) return { is: "unchecked", suspects: [] };
  const sized = result.observations
    .map(({ id, standardised }) => ({ id, size: Math.abs(standardised ?? 0) }))
    .sort((a, b) => Number(b.size.toPrecision(6)) - Number(a.size.toPrecision(6)));
  const tooLarge = normalQuantile((1 + limits.single) / 2);
  const passes = chiSquare <= chiSquareQuantile(limits.global, degreesOfFreedom);
  if (passes && !(sized[0] !== undefined && sized[0].size > tooLarge)) return { is: "agree", suspects: [] };
  const large = passes ? tooLarge : normalQuantile((1 + limits.global) / 2);
  const left = degreesOfFreedom === 1 ? 0 : chiSquareQuantile(limits.global, degreesOfFreedom - 1);
  const suspicious = sized.filter(({ size }) => size > large * (1 - alike));
  const explains = suspicious.filter(({ size }) => chiSquare - size * size <= left + alike * chiSquare);
  const named = (explains.length === 0 ? suspicious : explains).map(({ id }) => id);
  if (explains.length === 0) return { is: "none-alone", suspects: named };
  return { is: explains.length === 1 ? "one" : "several", suspects: named };
}

/**
 * The smallest blunder in one observation that the test of single residuals would show with chance `power`, in the
 * observation's unit: u delta0 / sqrt(r), delta0 = z(single) + z(power). Infinity where nothing checks it.
 */
export function smallestSeen({ u, redundancy }: Adjustment, single: number, power: number): number {
  const shift = normalQuantile((1 + single) / 2) + normalQuantile(power);
  return redundancy > 0 ? (u * shift) / Math.sqrt(redundancy) : Infinity;
}
