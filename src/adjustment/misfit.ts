// How far measurements disagree, as one number that reads the same for a small net and a large one.

import type { Adjustment, GlobalTest } from "./global-test.ts";
import { normalCdf, normalQuantile } from "./normal.ts";

/** Chances below this are taken from the tail's own form: a double holds no smaller ones well. */
const leastChance = 1e-250;

/**
 * Misfit of an adjusted net in standard uncertainties: the z with 2 (1 - Phi(z)) = p, p the chance that honest
 * measurements miss by as much. The larger of two is taken: of the whole (chi-square upper tail) and of the worst
 * single standardised residual, whose chance is counted once for each of the n residuals that could have been the
 * worst (n p, Bonferroni; MEMORY). With one redundancy both are |w|. Null where nothing is checked.
 */
export function misfitOf(result: GlobalTest & { readonly observations: readonly Adjustment[] }): number | null {
  const { chiSquare, degreesOfFreedom, probability } = result;
  if (degreesOfFreedom <= 0 || probability === null) return null;
  if (degreesOfFreedom === 1) return Math.sqrt(chiSquare);
  const sizes = result.observations.flatMap(({ standardised }) =>
    standardised === null ? [] : [Math.abs(standardised)],
  );
  const worst = sizes.reduce((most, size) => Math.max(most, size), 0);
  return Math.max(wholeMisfit(chiSquare, degreesOfFreedom, probability), singleMisfit(worst, sizes.length));
}

/** Where the chance is too small for a double: Wilson and Hilferty's cube root, MEMORY. */
function wholeMisfit(chiSquare: number, freedom: number, probability: number): number {
  if (probability > leastChance) return Math.max(0, -normalQuantile(probability / 2));
  const spread = 2 / (9 * freedom);
  return (Math.cbrt(chiSquare / freedom) - 1 + spread) / Math.sqrt(spread);
}

/** Far out the tail is exp(-w^2 / 2), so that counting n of them takes 2 ln n from w^2. */
function singleMisfit(worst: number, count: number): number {
  const chance = 2 * normalCdf(-worst) * Math.max(1, count);
  if (chance >= 1) return 0;
  return chance > leastChance ? -normalQuantile(chance / 2) : Math.sqrt(worst * worst - 2 * Math.log(count));
}
