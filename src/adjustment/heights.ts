// A net of levels: height differences and known heights, adjusted by least squares.

import { adjustmentsWhenAsked, globalTest } from "./global-test.ts";
import type { Adjustment, GlobalTest } from "./global-test.ts";
import { solveLeastSquares } from "./least-squares.ts";
import type { LinearSolution } from "./least-squares.ts";
import type { Refused } from "./network.ts";

/** A known level of a point, or the rise from one point to another; metres; u = 0 means exact. */
export type HeightObservation = { readonly id: string; readonly value: number; readonly u: number } & (
  | { readonly kind: "level"; readonly of: string }
  | { readonly kind: "rise"; readonly from: string; readonly to: string }
);

export interface HeightNetwork {
  readonly points: readonly string[];
  readonly observations: readonly HeightObservation[];
}

/** Differences of height and the points that are held. */
export interface LevelNetwork {
  readonly points: readonly string[];
  readonly differences: readonly {
    readonly id?: string;
    readonly from: string;
    readonly to: string;
    readonly rise: number;
    readonly u: number;
  }[];
  /** Levels that are held exactly. */
  readonly fixed: ReadonlyMap<string, number>;
}

export interface AdjustedHeights extends GlobalTest {
  readonly refused?: undefined;
  readonly heights: ReadonlyMap<string, number>;
  /** The row of G = dh/dl of a point, one entry for each observation in the order given. */
  readonly sensitivities: (point: string) => Float64Array;
  /** Covariance of the points named, m2. */
  readonly covariance: (points: readonly string[]) => number[][];
  readonly observations: readonly Adjustment[];
}

/**
 * Adjust a net of levels. Observations of the result, and entries of its sensitivities, stand in the order:
 * all differences, then all fixed levels. A difference without an id is called `from to to`.
 */
export function adjustLevels({ points, differences, fixed }: LevelNetwork): AdjustedHeights | Refused {
  const rises = differences.map(({ id, from, to, rise, u }): HeightObservation => {
    return { kind: "rise", id: id ?? `${from} to ${to}`, from, to, value: rise, u };
  });
  const levels = [...fixed].map(([of, value]): HeightObservation => ({ kind: "level", id: of, of, value, u: 0 }));
  return adjustHeights({ points, observations: [...rises, ...levels] });
}

/** Rounding that exact levels may disagree by, metres (method tolerance). */
const exactSlack = 1e-6;

/**
 * Minimise sum (v / u)^2, v = h_to - h_from - rise (or h - level), holding observations with u = 0 exactly.
 * Linear, so no start values and no iteration. Sigmas are taken as given and never rescaled.
 */
export function adjustHeights(network: HeightNetwork): AdjustedHeights | Refused {
  const { points, observations } = network;
  const numbers = new Map(points.map((point, index) => [point, index]));
  const unreadable = observations.filter((observation) => !readable(observation, numbers));
  if (unreadable.length > 0) {
    return { refused: "unreadable", stations: [], observations: unreadable.map(({ id }) => id) };
  }
  const solution = solveLeastSquares({
    columnCount: points.length,
    equations: observations.map((observation) => ({ ...row(observation, numbers), u: observation.u })),
  });
  if (solution.undetermined.length > 0) {
    const stations = solution.undetermined.map((column) => points[column]!);
    return { refused: "not-connected", stations, observations: [] };
  }
  const clash = solution.contradictions.find(({ gap }) => Math.abs(gap) > exactSlack);
  if (clash !== undefined) {
    const ids = clash.equations.map((index) => observations[index]!.id);
    return { refused: "contradicting", stations: [], observations: ids };
  }
  const residuals = observations.map((observation) => {
    const { columns, values, value } = row(observation, numbers);
    return columns.reduce((sum, column, k) => sum + values[k]! * solution.x[column]!, -value);
  });
  const adjustments = adjustmentsWhenAsked(observations, { residuals, solution });
  return {
    ...globalTest(observations, { residuals, solution }),
    ...describe(network, numbers, solution),
    get observations() {
      return adjustments();
    },
  };
}

function readable(observation: HeightObservation, numbers: ReadonlyMap<string, number>): boolean {
  if (!Number.isFinite(observation.value) || !Number.isFinite(observation.u) || observation.u < 0) return false;
  if (observation.kind === "level") return numbers.has(observation.of);
  return numbers.has(observation.from) && numbers.has(observation.to) && observation.from !== observation.to;
}

function row(observation: HeightObservation, numbers: ReadonlyMap<string, number>) {
  const { value } = observation;
  if (observation.kind === "level") return { columns: [numbers.get(observation.of)!], values: [1], value };
  const columns = [numbers.get(observation.from)!, numbers.get(observation.to)!];
  return { columns, values: [-1, 1], value };
}

function describe({ points }: HeightNetwork, numbers: ReadonlyMap<string, number>, solution: LinearSolution) {
  const column = (point: string) => numbers.get(point) ?? -1;
  return {
    heights: new Map(points.map((point, k) => [point, solution.x[k]!])),
    sensitivities: (point: string) => solution.sensitivity(column(point)),
    covariance: (names: readonly string[]) => {
      const roots = names.map((name) => solution.root(column(name)));
      return roots.map((a) => roots.map((b) => a.reduce((sum, part, k) => sum + part * b[k]!, 0)));
    },
  };
}
