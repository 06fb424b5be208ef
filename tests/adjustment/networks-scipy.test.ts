import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { adjustNetwork } from "../../src/adjustment/network.ts";
import type { Adjusted, Network } from "../../src/adjustment/network.ts";
import type { Coordinates, Observation } from "../../src/adjustment/observation.ts";

interface Solved {
  readonly stations: number;
  /** Kind, station numbers, value, u. */
  readonly observations: readonly (readonly [Observation["kind"], readonly number[], number, number])[];
  readonly start: readonly number[];
  readonly coordinates: readonly number[];
  readonly deviations: readonly number[];
  readonly chi_square: number;
  readonly degrees: number;
}

const table = new URL("../tables/networks.scipy.json", import.meta.url);
const { networks } = JSON.parse(readFileSync(table, "utf8")) as { networks: readonly Solved[] };

function observationOf([kind, numbers, value, u]: Solved["observations"][number], index: number): Observation {
  const names = numbers.map((n) => `S${n}`);
  const id = `${index}`;
  if (kind === "east" || kind === "north") return { id, kind, of: names[0]!, value, u };
  if (kind === "distance" || kind === "bearing") return { id, kind, from: names[0]!, to: names[1]!, value, u };
  return { id, kind, of: names[0]!, from: names[1]!, to: names[2]!, value, u };
}

function networkOf({ stations, observations, start }: Solved): Network {
  const names = Array.from({ length: stations }, (_, k) => `S${k}`);
  const pair = (k: number): Coordinates => [start[2 * k]!, start[2 * k + 1]!];
  return {
    stations: names,
    observations: observations.map(observationOf),
    approximate: new Map(names.map((name, k): [string, Coordinates] => [name, pair(k)])),
  };
}

function adjusted(network: Network): Adjusted {
  const result = adjustNetwork(network);
  if (result.refused !== undefined) throw new Error(JSON.stringify(result));
  return result;
}

// Random networks of 6 to 60 stations, adjusted by SciPy with the exact observations written out by hand: COMPUTED
// (make-networks.py). Coordinates to 0.1 mm; deviations to 1 %, and 0.01 mm where a coordinate is all but held.
describe("random networks against SciPy", () => {
  it("are a fair number and of all sorts", () => {
    expect(networks.length).toBeGreaterThanOrEqual(40);
    expect(new Set(networks.flatMap(({ observations }) => observations.map(([kind]) => kind))).size).toBe(6);
    expect(Math.max(...networks.map(({ stations }) => stations))).toBeGreaterThan(50);
  });

  it.each(networks.map((network, index) => [index, network] as const))("agree, number %d", (_, solved) => {
    const network = networkOf(solved);
    const result = adjusted(network);
    const covariance = result.covariance(network.stations);
    const found = network.stations.flatMap((name) => [...result.coordinates.get(name)!]);
    solved.coordinates.forEach((value, k) => expect(Math.abs(found[k]! - value)).toBeLessThan(1e-4));
    solved.deviations.forEach((sd, k) => {
      expect(Math.abs(Math.sqrt(covariance[k]![k]!) - sd)).toBeLessThan(0.01 * sd + 1e-5);
    });
    expect(Math.abs(result.chiSquare - solved.chi_square)).toBeLessThan(1e-4 * (1 + solved.chi_square));
    expect(result.degreesOfFreedom).toBe(solved.degrees);
    const redundancy = result.observations.reduce((sum, { redundancy: r }) => sum + r, 0);
    expect(Math.abs(redundancy - solved.degrees)).toBeLessThan(1e-6);
  });
});
