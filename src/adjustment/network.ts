// A plane network of tape, offset and compass, adjusted by least squares.

import { chiSquareUpper } from "./chi-square.ts";
import { gaussNewton } from "./gauss-newton.ts";
import type { Converged } from "./gauss-newton.ts";
import { whatCannotBeAdjusted } from "./network-check.ts";
import type { Coordinates, Observation } from "./observation.ts";

export interface Network {
  readonly stations: readonly string[];
  readonly observations: readonly Observation[];
  /** Start values, good to a small part of the shortest line; a station fixed by east and north needs none. */
  readonly approximate?: ReadonlyMap<string, Coordinates>;
}

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

export interface Adjusted extends GlobalTest {
  readonly refused?: undefined;
  readonly coordinates: ReadonlyMap<string, Coordinates>;
  /** The two rows of G = dx/dl of a station, one entry for each observation in the order given. */
  readonly sensitivities: (station: string) => { readonly east: Float64Array; readonly north: Float64Array };
  /** Covariance of east, north of the stations named, in that order, m2. */
  readonly covariance: (stations: readonly string[]) => number[][];
  readonly observations: readonly Adjustment[];
  readonly iterations: number;
}

/**
 * Why there is no result. `not-connected`: these stations hang on nothing that has a place. `singular`: these can
 * still move without any measurement noticing. `not-converged`: no position fits (poor start values, a tie that
 * cannot close). `contradicting`: exact observations exclude each other. `unreadable`: a number, a name or a start
 * value is missing.
 */
export interface Refused {
  readonly refused: "not-connected" | "singular" | "not-converged" | "contradicting" | "unreadable";
  readonly stations: readonly string[];
  readonly observations: readonly string[];
}

/**
 * Adjust a plane network: minimise sum (v / u)^2, v = f(x) - l, by Gauss-Newton with sparse Householder QR,
 * holding observations with u = 0 exactly. Sigmas are taken as given and never rescaled.
 *
 * Model: the usual textbooks of adjustment computations, MEMORY; covariance G V G' by JCGM 100:2008 5.2, MEMORY.
 * Metres and radians. Valid near the start values: where a tie has two solutions they choose the side.
 * A refusal names the stations to leave out; without them the rest can be adjusted.
 */
export function adjustNetwork(network: Network): Adjusted | Refused {
  const obstacle = whatCannotBeAdjusted(network);
  if (obstacle !== null) return obstacle;
  const reached = gaussNewton(network);
  if ("refused" in reached) return reached;
  return { ...judge(network.observations, reached), ...describe(network, reached) };
}

function describe(network: Network, reached: Converged) {
  const { solution, x } = reached;
  const numbers = new Map(network.stations.map((name, index) => [name, index]));
  const column = (station: string) => 2 * (numbers.get(station) ?? -1);
  return {
    coordinates: new Map(network.stations.map((name, k): [string, Coordinates] => [name, [x[2 * k]!, x[2 * k + 1]!]])),
    sensitivities: (station: string) => ({
      east: solution.sensitivity(column(station)),
      north: solution.sensitivity(column(station) + 1),
    }),
    covariance: (stations: readonly string[]) =>
      products(stations.flatMap((name) => [solution.root(column(name)), solution.root(column(name) + 1)])),
    iterations: reached.iterations,
  };
}

function products(roots: readonly Float64Array[]): number[][] {
  return roots.map((a) => roots.map((b) => a.reduce((sum, part, k) => sum + part * b[k]!, 0)));
}

interface Solved {
  readonly residuals: readonly number[];
  readonly solution: Converged["solution"];
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
