// The chi-square distribution, by which the misfit of an adjustment is judged.

import { logGamma, lowerGammaShare, upperGammaShare } from "./incomplete-gamma.ts";

/** P(chi-square with `degrees` degrees of freedom <= x) = P(degrees/2, x/2) (Abramowitz and Stegun 26.4.19, MEMORY). */
export function chiSquareCdf(x: number, degrees: number): number {
  return x <= 0 ? 0 : lowerGammaShare(degrees / 2, x / 2);
}

/** P(chi-square > x), without loss in the upper tail: the p value of a misfit. */
export function chiSquareUpper(x: number, degrees: number): number {
  return x <= 0 ? 1 : upperGammaShare(degrees / 2, x / 2);
}

const mostSteps = 200;

/**
 * x with P(chi-square <= x) = p, degrees > 0. Newton's steps kept inside a closing bracket; NaN outside [0, 1].
 */
export function chiSquareQuantile(p: number, degrees: number): number {
  if (!(p >= 0 && p <= 1) || !(degrees > 0)) return Number.NaN;
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  let low = 0;
  let high = degrees;
  while (chiSquareCdf(high, degrees) < p) {
    low = high;
    high *= 2;
  }
  let x = (low + high) / 2;
  for (let step = 0; step < mostSteps; step += 1) {
    const miss = p < 0.5 ? chiSquareCdf(x, degrees) - p : 1 - p - chiSquareUpper(x, degrees);
    if (miss > 0) high = x;
    else low = x;
    const newton = x - miss / density(x, degrees);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const move = Math.abs(next - x);
    x = next;
    if (move <= 1e-15 * x) break;
  }
  return x;
}

function density(x: number, degrees: number): number {
  const half = degrees / 2;
  return Math.exp((half - 1) * Math.log(x / 2) - x / 2 - logGamma(half)) / 2;
}
