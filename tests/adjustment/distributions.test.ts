import { describe, expect, it } from "vitest";
import { chiSquareCdf, chiSquareQuantile, chiSquareUpper } from "../../src/adjustment/chi-square.ts";
import { logGamma } from "../../src/adjustment/incomplete-gamma.ts";
import { normalCdf, normalDensity, normalQuantile } from "../../src/adjustment/normal.ts";

function relative(found: number, wanted: number): number {
  return Math.abs(found - wanted) / Math.abs(wanted);
}

describe("normal distribution", () => {
  // Percentage points of the normal curve, Abramowitz and Stegun table 26.1 and 26.5, MEMORY; the digits beyond are
  // those of the same constants in any table of quantiles. Tolerance: 1e-14, rounding.
  it.each([
    [0.975, 1.959963984540054],
    [0.95, 1.6448536269514722],
    [0.995, 2.5758293035489004],
    [0.999, 3.090232306167813],
    [0.9995, 3.2905267314919255],
    [0.75, 0.6744897501960817],
  ])("has the quantile of %d", (p, z) => {
    expect(relative(normalQuantile(p), z)).toBeLessThan(1e-14);
    expect(normalQuantile(1 - p)).toBeCloseTo(-z, 11);
    expect(relative(normalCdf(z), p)).toBeLessThan(1e-14);
  });

  // Phi(z) as tabulated to fifteen places (Abramowitz and Stegun table 26.1, MEMORY).
  it.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.97724986805182],
    [3, 0.99865010196837],
  ])("has the value at %d", (z, p) => {
    expect(Math.abs(normalCdf(z) - p)).toBeLessThan(1e-14);
  });

  // Upper tail by the asymptotic series phi(z)/z (1 - 1/z2 + 3/z4 - 15/z6 ...), closed form; at z = 20 the first term
  // left out is 2e-9 relative.
  it("keeps its digits far out in the lower tail", () => {
    const z = 20;
    const series = 1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6 + 105 / z ** 8 - 945 / z ** 10;
    expect(relative(normalCdf(-z), (normalDensity(z) / z) * series)).toBeLessThan(1e-10);
  });

  it("is the integral of its density", () => {
    const steps = 2000;
    const [low, high] = [-1.3, 2.1];
    const h = (high - low) / steps;
    let simpson = normalDensity(low) + normalDensity(high);
    for (let k = 1; k < steps; k += 1) simpson += (k % 2 === 1 ? 4 : 2) * normalDensity(low + k * h);
    expect(Math.abs((simpson * h) / 3 - (normalCdf(high) - normalCdf(low)))).toBeLessThan(1e-13);
  });

  it("comes back from its quantile over the whole range", () => {
    for (let e = -300; e <= -1; e += 7)
      expect(relative(normalCdf(normalQuantile(10 ** e)), 10 ** e)).toBeLessThan(1e-10);
    for (let p = 0.01; p < 1; p += 0.01) expect(relative(normalCdf(normalQuantile(p)), p)).toBeLessThan(1e-14);
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(normalQuantile(1)).toBe(Infinity);
    expect(normalQuantile(1.1)).toBeNaN();
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(Infinity)).toBe(1);
  });

  // Worked examples of JCGM 106:2012, MEMORY, re-computed: a diode, a burst pressure.
  it("gives the probabilities of conformity of the published examples", () => {
    expect(Math.abs(normalCdf((-5.4 - -5.47) / 0.05) - 0.919)).toBeLessThan(5e-4);
    expect(Math.abs(normalCdf((509.7 - 490) / 8.6) - 0.989)).toBeLessThan(5e-4);
  });
});

describe("chi-square distribution", () => {
  // Percentage points of chi-square, Abramowitz and Stegun table 26.8, MEMORY; half of the last place printed.
  it.each([
    [0.95, 1, 3.84146],
    [0.95, 2, 5.99147],
    [0.95, 5, 11.0705],
    [0.95, 10, 18.307],
    [0.95, 30, 43.773],
    [0.99, 1, 6.6349],
    [0.99, 10, 23.2093],
    [0.05, 10, 3.9403],
    [0.025, 20, 9.59083],
    [0.995, 100, 140.169],
  ])("has the quantile of %d with %d degrees", (p, degrees, x) => {
    expect(relative(chiSquareQuantile(p, degrees), x)).toBeLessThan(6e-6);
  });

  // Closed forms: two degrees, 1 - exp(-x/2); four degrees, 1 - exp(-x/2)(1 + x/2); one degree, 2 Phi(sqrt x) - 1.
  it("agrees with its closed forms", () => {
    for (const x of [1e-6, 0.01, 0.3728, 1, 3.841, 9, 20.4, 80, 600]) {
      expect(relative(chiSquareUpper(x, 2), Math.exp(-x / 2))).toBeLessThan(1e-13);
      expect(relative(chiSquareUpper(x, 4), Math.exp(-x / 2) * (1 + x / 2))).toBeLessThan(1e-13);
      expect(relative(chiSquareUpper(x, 1), 2 * normalCdf(-Math.sqrt(x)))).toBeLessThan(1e-12);
      expect(chiSquareCdf(x, 7) + chiSquareUpper(x, 7)).toBeCloseTo(1, 14);
    }
  });

  // Even degrees 2m: upper tail is the Poisson sum exp(-x/2) sum_{k<m} (x/2)^k / k!, closed form.
  it("agrees with the Poisson sum for many degrees", () => {
    for (const [degrees, x] of [
      [40, 55.8],
      [400, 380],
      [2000, 2100],
    ] as const) {
      let sum = 0;
      let logTerm = -x / 2;
      for (let k = 0; k < degrees / 2; k += 1) {
        sum += Math.exp(logTerm);
        logTerm += Math.log(x / 2) - Math.log(k + 1);
      }
      expect(relative(chiSquareUpper(x, degrees), sum)).toBeLessThan(1e-10);
    }
  });

  it("comes back from its quantile", () => {
    for (const degrees of [1, 2, 3, 7, 50, 999, 4000]) {
      for (const p of [1e-6, 0.01, 0.3, 0.5, 0.95, 0.999, 1 - 1e-9]) {
        expect(Math.abs(chiSquareCdf(chiSquareQuantile(p, degrees), degrees) - p)).toBeLessThan(1e-12);
      }
    }
    expect(chiSquareQuantile(0, 3)).toBe(0);
    expect(chiSquareQuantile(1, 3)).toBe(Infinity);
    expect(chiSquareQuantile(0.5, 0)).toBeNaN();
  });
});

describe("log gamma", () => {
  // Closed forms: Gamma(n + 1) = n!, Gamma(1/2) = sqrt pi.
  it("gives factorials and the half", () => {
    let logFactorial = 0;
    for (let n = 1; n <= 170; n += 1) {
      logFactorial += Math.log(n);
      expect(Math.abs(logGamma(n + 1) - logFactorial)).toBeLessThan(1e-13 * Math.max(1, logFactorial));
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 14);
    expect(logGamma(0.25) + logGamma(0.75)).toBeCloseTo(Math.log(Math.PI * Math.SQRT2), 13);
  });
});
