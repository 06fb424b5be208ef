// The incomplete gamma function, from which the normal and chi-square distributions follow.

/** Lanczos coefficients for g = 7, nine terms (Godfrey's set as widely printed, MEMORY; checked against factorials). */
const lanczosHead = 0.99999999999980993;
const lanczos = [
  676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** ln Gamma(a) for a > 0, good to about 1e-14 relative to max(1, |ln Gamma|). */
export function logGamma(a: number): number {
  if (a < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * a)) - logGamma(1 - a);
  const shifted = a - 1;
  const sum = lanczos.reduce((total, c, k) => total + c / (shifted + k + 1), lanczosHead);
  const t = shifted + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}

const mostTerms = 100_000;
const enough = 1e-17;

/** P(a, x) = gamma(a, x) / Gamma(a), a > 0, x >= 0. */
export function lowerGammaShare(a: number, x: number): number {
  if (!(x >= 0) || !(a > 0)) return Number.NaN;
  if (x === 0) return 0;
  if (x === Infinity) return 1;
  return x < a + 1 ? series(a, x) : 1 - continuedFraction(a, x);
}

/** Q(a, x) = 1 - P(a, x), without loss in the upper tail. */
export function upperGammaShare(a: number, x: number): number {
  if (!(x >= 0) || !(a > 0)) return Number.NaN;
  if (x === 0) return 1;
  if (x === Infinity) return 0;
  return x < a + 1 ? 1 - series(a, x) : continuedFraction(a, x);
}

/** x^a e^-x / Gamma(a). */
function front(a: number, x: number): number {
  return Math.exp(a * Math.log(x) - x - logGamma(a));
}

/** P(a, x) = front sum x^n / (a (a+1) ... (a+n)) (Abramowitz and Stegun 6.5.29, MEMORY). */
function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < mostTerms && term > enough * sum; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum * front(a, x);
}

/** Q(a, x) by the continued fraction (Abramowitz and Stegun 6.5.31, MEMORY), evaluated forward (Lentz). */
function continuedFraction(a: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let n = 1; n < mostTerms; n += 1) {
    const an = -n * (n - a);
    b += 2;
    d = 1 / nonZero(an * d + b, tiny);
    c = nonZero(b + an / c, tiny);
    const factor = d * c;
    h *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  return h * front(a, x);
}

function nonZero(value: number, tiny: number): number {
  return Math.abs(value) < tiny ? tiny : value;
}
