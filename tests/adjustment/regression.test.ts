import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { fitRegression } from "../../src/adjustment/regression.ts";

interface DataSet {
  readonly model: string;
  readonly x?: readonly number[];
  readonly columns?: readonly (readonly number[])[];
  readonly y: readonly number[];
  readonly coefficients: readonly number[];
  readonly deviations: readonly number[];
  readonly residual_deviation?: number;
  readonly digits: number;
}

const table = new URL("../tables/least-squares.nist-strd.yaml", import.meta.url);
const dataSets = parse(readFileSync(table, "utf8")) as Record<string, DataSet>;

function designOf({ model, x, columns, y }: DataSet): number[][] {
  if (columns !== undefined) return y.map((_, k) => [1, ...columns.map((column) => column[k]!)]);
  if (model === "through the origin") return x!.map((value) => [value]);
  const degree = Number(model.split(" ")[1]);
  return x!.map((value) => Array.from({ length: degree + 1 }, (_, power) => value ** power));
}

/** Number of digits that agree, as NIST counts them: -log10 of the relative difference. */
function digits(found: number, published: number): number {
  return -Math.log10(Math.abs(found - published) / Math.abs(published) + 1e-16);
}

// Published values: NIST StRD, READ in public copies named in the table. `digits` in the table is the tolerance: what
// Householder QR keeps of fifteen at the set's condition (Wampler5 has residuals of 1e7 on coefficients of 1).
describe.each(Object.entries(dataSets))("NIST StRD %s", (_, data) => {
  const fit = fitRegression({ design: designOf(data), values: data.y })!;

  it("has the published coefficients", () => {
    data.coefficients.forEach((published, k) => {
      expect(digits(fit.coefficients[k]!, published)).toBeGreaterThanOrEqual(data.digits);
    });
  });

  it("has the published deviations", () => {
    data.deviations.forEach((published, k) => {
      expect(digits(fit.deviations[k]!, published)).toBeGreaterThanOrEqual(data.digits);
    });
    if (data.residual_deviation !== undefined) {
      expect(digits(fit.residualDeviation, data.residual_deviation)).toBeGreaterThanOrEqual(Math.min(9, data.digits));
    }
  });
});

// Calibration of a thermometer, JCGM 100:2008 H.3, READ in a public transcription, re-computed; tolerance: half of the
// last digit printed there.
describe("GUM H.3", () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const fit = fitRegression({ design: t.map((value) => [1, value - 20]), values: b })!;
  const covariance = fit.cofactor.map((row) => row.map((q) => q * fit.residualDeviation ** 2));

  it("has the intercept, the slope and their doubt", () => {
    expect(Math.abs(fit.coefficients[0]! - -0.1712)).toBeLessThan(5e-5);
    expect(Math.abs(fit.deviations[0]! - 0.0029)).toBeLessThan(5e-5);
    expect(Math.abs(fit.coefficients[1]! - 0.00218)).toBeLessThan(5e-6);
    expect(Math.abs(fit.deviations[1]! - 0.00067)).toBeLessThan(5e-6);
    expect(Math.abs(fit.residualDeviation - 0.0035)).toBeLessThan(5e-5);
  });

  it("has the correlation, without which the value at 30 degrees would be doubted twice as much", () => {
    const correlation = covariance[0]![1]! / (fit.deviations[0]! * fit.deviations[1]!);
    expect(Math.abs(correlation - -0.93)).toBeLessThan(5e-4);
    const at30 = fit.coefficients[0]! + 10 * fit.coefficients[1]!;
    const u = Math.sqrt(covariance[0]![0]! + 100 * covariance[1]![1]! + 20 * covariance[0]![1]!);
    expect(Math.abs(at30 - -0.1494)).toBeLessThan(5e-5);
    expect(Math.abs(u - 0.0041)).toBeLessThan(5e-5);
    expect(Math.abs(Math.sqrt(covariance[0]![0]! + 100 * covariance[1]![1]!) - 0.0073)).toBeLessThan(5e-5);
  });
});

describe("what cannot be fitted", () => {
  it("is null", () => {
    expect(fitRegression({ design: [], values: [] })).toBeNull();
    expect(fitRegression({ design: [[1, 2]], values: [1, 2] })).toBeNull();
    const twice = [1, 2, 3, 4].map((x) => [1, x, 2 * x]);
    expect(fitRegression({ design: twice, values: [1, 2, 3, 4] })).toBeNull();
    expect(fitRegression({ design: [[0], [0]], values: [1, 2] })).toBeNull();
  });
});
