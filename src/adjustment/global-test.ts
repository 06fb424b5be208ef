// Whether measurements agree with each other as well as their sigmas promise.

import { chiSquareUpper } from "./chi-square.ts";
import type { LinearSolution } from "./least-squares.ts";

/** One observation after the adjustment. */
export interface Adjustment {
  readonly id: string;
  /** Standard uncertainty as given. */
  readonly u: number;
  /** v = f(x) - l, in the observation's unit. */
  readonly residual: number;
  /** Share of an error in this observation that shows in its own residual: 0 (unchecked) to 1; 0 where exact. */
  readonly redundancy: number;
  /** w = v / (u sqrt(r)); null where nothing checks this observation or where it is exact. */
  readonly standardised: number | null;
}

/** The global test of an adjustment. */
export interface GlobalTest {
  /** v'Wv. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Chance that honest measurements miss by this much or more; null where nothing is checked. */
  readonly probability: number | null;
}

/** A solved problem: v = f(x) - l by observation, and the solution it comes from. */
export interface Solved {
  readonly residuals: readonly number[];
  readonly solution: Pick<LinearSolution, "redundancies" | "freeCount">;
}

/** An observation whose redundancy is below this is checked by nothing but rounding (method tolerance). */
const unchecked = 1e-9;

/** Residuals, redundancy numbers, standardised residuals and the global test of a solved problem. */
export function judge(
  given: readonly { readonly id: string; readonly u: number }[],
  { residuals, solution }: Solved,
): GlobalTest & { readonly observations: readonly Adjustment[] } {
  const redundancies = solution.redundancies();
  const observations = given.map(({ id, u }, k): Adjustment => {
    const residual = residuals[k]!;
    const redundancy = Math.max(0, redundancies[k]!);
    const checked = u > 0 && redundancy > unchecked;
    return { id, u, residual, redundancy, standardised: checked ? residual / (u * Math.sqrt(redundancy)) : null };
  });
  const weighted = observations.filter(({ u }) => u > 0);
  const chiSquare = weighted.reduce((sum, { residual, u }) => sum + (residual / u) ** 2, 0);
  const degreesOfFreedom = weighted.length - solution.freeCount;
  const probability = degreesOfFreedom > 0 ? chiSquareUpper(chiSquare, degreesOfFreedom) : null;
  return { observations, chiSquare, degreesOfFreedom, probability };
}
