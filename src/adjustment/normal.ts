// The standard normal distribution.

import { upperGammaShare } from "./incomplete-gamma.ts";

/**
 * Phi(z), the chance that a standard normal value is at most z; good to about 1e-15 absolute and, in the lower
 * tail, 1e-12 relative. Phi(-z) = Q(1/2, z^2/2) / 2 for z >= 0 (Abramowitz and Stegun 26.4.19, MEMORY).
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) return z;
  const tail = upperGammaShare(0.5, (z * z) / 2) / 2;
  return z > 0 ? 1 - tail : tail;
}

/** The density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

const mostSteps = 100;

/**
 * z with Phi(z) = p; -Infinity and Infinity at 0 and 1, NaN outside. Halley's steps on Phi from a start of
 * Abramowitz and Stegun 26.2.22 (MEMORY), in the lower half, where Phi is relatively exact.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return Number.NaN;
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let z = (2.30753 + 0.27061 * t) / (1 + t * (0.99229 + 0.04481 * t)) - t; // 26.2.22
  for (let step = 0; step < mostSteps; step += 1) {
    const newton = (normalCdf(z) - p) / normalDensity(z);
    const move = newton / (1 + (z * newton) / 2);
    z -= move;
    if (Math.abs(move) <= 1e-15 * Math.max(1, Math.abs(z))) break;
  }
  return z;
}
