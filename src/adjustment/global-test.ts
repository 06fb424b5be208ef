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

type Given = readonly { readonly id: string; readonly u: number }[];

/** The global test of a solved problem: v'Wv against chi-square. */
export function globalTest(given: Given, { residuals, solution }: Solved): GlobalTest {
  let chiSquare = 0;
  let weighted = 0;
  given.forEach(({ u }, k) => {
    if (u === 0) return;
    weighted += 1;
    chiSquare += (residuals[k]! / u) ** 2;
  });
  const degreesOfFreedom = weighted - solution.freeCount;
  const probability = degreesOfFreedom > 0 ? chiSquareUpper(chiSquare, degreesOfFreedom) : null;
  return { chiSquare, degreesOfFreedom, probability };
}

/**
 * Residuals, redundancy numbers and standardised residuals, worked out when first asked for: in large nets they take
 * as long as the adjustment itself.
 */
export function adjustmentsWhenAsked(given: Given, { residuals, solution }: Solved): () => readonly Adjustment[] {
  let known: readonly Adjustment[] | undefined;
  return () => {
    if (known !== undefined) return known;
    const redundancies = solution.redundancies();
    known = given.map(({ id, u }, k) => {
      const residual = residuals[k]!;
      const redundancy = Math.max(0, redundancies[k]!);
      const checked = u > 0 && redundancy > unchecked;
      return { id, u, residual, redundancy, standardised: checked ? residual / (u * Math.sqrt(redundancy)) : null };
    });
    return known;
  };
}
