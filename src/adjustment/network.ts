// A plane network of tape, offset and compass, adjusted by least squares.

import { gaussNewton } from "./gauss-newton.ts";
import type { Converged } from "./gauss-newton.ts";
import { adjustmentsWhenAsked, globalTest } from "./global-test.ts";
import type { Adjustment, GlobalTest } from "./global-test.ts";
import { whatCannotBeAdjusted } from "./network-check.ts";
import type { Coordinates, Observation } from "./observation.ts";

export interface Network {
  readonly stations: readonly string[];
  readonly observations: readonly Observation[];
  /** Start values, good to a small part of the shortest line; a station fixed by east and north needs none. */
  readonly approximate?: ReadonlyMap<string, Coordinates>;
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
 * cannot close, a gross error): `observations` are those that stand out, worst first, where any do. `contradicting`: exact observations exclude each other. `unreadable`: a number, a name or a start
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
  const observations = adjustmentsWhenAsked(network.observations, reached);
  return {
    ...globalTest(network.observations, reached),
    ...describe(network, reached),
    get observations() {
      return observations();
    },
  };
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
