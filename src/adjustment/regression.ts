// A straight fit of a model that is linear in its coefficients, with the statistics that go with it.

import { solveLeastSquares } from "./least-squares.ts";

export interface Regression {
  readonly coefficients: readonly number[];
  /** Residual standard deviation s = sqrt(v'Wv / (n - p)); NaN without redundancy. */
  readonly residualDeviation: number;
  /** s sqrt(Q_ii): standard deviations of the coefficients, scaled by the residuals. */
  readonly deviations: readonly number[];
  /** Q = (X'WX)^-1; times s^2 it is the covariance where sigmas are only relative. */
  readonly cofactor: readonly (readonly number[])[];
  /** v = f(x) - l. */
  readonly residuals: readonly number[];
  readonly degreesOfFreedom: number;
}

/** `design` has one row for each value; `u` its standard uncertainty or relative size, 1 if omitted. */
export interface RegressionData {
  readonly design: readonly (readonly number[])[];
  readonly values: readonly number[];
  readonly u?: readonly number[];
}

/**
 * Weighted linear regression by Householder QR, without centring and without normal equations. Columns are scaled
 * to length one for the factoring, so that the rank is judged alike in every unit. Null where a column depends
 * on others, or the rows do not fit the values in number.
 *
 * s^2 = v'Wv/(n - p), cov = s^2 Q; JCGM 100:2008 H.3, MEMORY. Here, unlike in a network, s is taken from the
 * residuals: a regression has no sigmas of its own.
 */
export function fitRegression({ design, values, u }: RegressionData): Regression | null {
  const count = design[0]?.length ?? 0;
  if (count === 0 || design.length !== values.length || design.some((row) => row.length !== count)) return null;
  const scale = Array.from({ length: count }, (_, c) => Math.sqrt(design.reduce((sum, row) => sum + row[c]! ** 2, 0)));
  if (scale.some((length) => !(length > 0))) return null;
  const columns = scale.map((_, c) => c);
  const equations = design.map((row, k) => ({
    columns,
    values: row.map((entry, c) => entry / scale[c]!),
    value: values[k]!,
    u: u?.[k] ?? 1,
  }));
  const solution = solveLeastSquares({ columnCount: count, equations });
  if (solution.undetermined.length > 0) return null;
  const coefficients = scale.map((length, c) => solution.x[c]! / length);
  const residuals = equations.map((e) => e.values.reduce((sum, a, c) => sum + a * solution.x[c]!, -e.value));
  const degreesOfFreedom = values.length - count;
  const squares = residuals.reduce((sum, v, k) => sum + (v / equations[k]!.u) ** 2, 0);
  const residualDeviation = degreesOfFreedom > 0 ? Math.sqrt(squares / degreesOfFreedom) : Number.NaN;
  const roots = columns.map((c) => solution.root(c));
  const cofactor = roots.map((a, i) =>
    roots.map((b, j) => a.reduce((sum, part, k) => sum + part * b[k]!, 0) / (scale[i]! * scale[j]!)),
  );
  const deviations = cofactor.map((row, c) => residualDeviation * Math.sqrt(row[c]!));
  return { coefficients, residualDeviation, deviations, cofactor, residuals, degreesOfFreedom };
}
