// 500 random networks of 6 to 200 stations, some nearly singular, against SciPy. COMPUTED: the networks by
// random-networks.ts, their adjustment by solve-networks.py, which says how to make the table anew.

import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { adjustNetwork } from "../../src/adjustment/network.ts";
import { networkOf, randomNetwork } from "./random-networks.ts";

interface Solved {
  /** How far each coordinate lies off the true one, hundredths of a millimetre; standard deviations, millimetres. */
  readonly off: readonly number[];
  readonly sd: readonly number[];
  readonly chi_square: number;
  readonly degrees: number;
}

const table = new URL("../tables/networks-500.scipy.jsonl.gz", import.meta.url);
const solved = gunzipSync(readFileSync(table))
  .toString("utf8")
  .trim()
  .split("\n")
  .map((line) => JSON.parse(line) as Solved | null);

/** 0.1 mm, and half of the last digit stored; 1 %, and 0.01 mm where a coordinate is all but held. */
const nearCoordinate = 0.1e-3 + 0.005e-3;
const nearDeviation = { share: 0.01, least: 0.01e-3 };

/** The largest misses of one network, in units of what is allowed. */
function misses(seed: number, { off, sd, chi_square, degrees }: Solved) {
  const random = randomNetwork(seed);
  const network = networkOf(random);
  const result = adjustNetwork(network);
  if (result.refused !== undefined) return { coordinate: Infinity, deviation: Infinity, refused: result.refused };
  const variances = network.stations.flatMap((name) => result.covariance([name]).map((row, k) => row[k] ?? 0));
  const truth = random.truth.flat();
  const found = network.stations.flatMap((name) => [...(result.coordinates.get(name) ?? [])]);
  const coordinates = off.map((by, k) => Math.abs((found[k] ?? 0) - (truth[k] ?? 0) - by * 1e-5) / nearCoordinate);
  const deviations = sd.map((mm, k) => {
    const own = Math.sqrt(Math.max(0, variances[k] ?? 0));
    return Math.abs(own - mm / 1000) / (nearDeviation.share * (mm / 1000) + nearDeviation.least);
  });
  return {
    coordinate: Math.max(...coordinates),
    deviation: Math.max(...deviations),
    chiSquare: Math.abs(result.chiSquare - chi_square) / (1e-3 * (1 + chi_square)),
    degrees: result.degreesOfFreedom - degrees,
    stretched: Math.max(...sd) / 1000,
  };
}

/** Compares every `every`th of the 500. */
export function agreesWithSciPy(every: number): void {
  const chosen = solved.map((one, k) => ({ one, seed: k + 1 })).filter(({ seed }) => seed % every === 0);
  const all = chosen.flatMap(({ one, seed }) => (one === null ? [] : [{ seed, ...misses(seed, one) }]));

  describe(`${chosen.length} of 500 random networks against SciPy`, () => {
    it("are nearly all surveys, large and small", () => {
      expect(solved.length).toBe(500);
      expect(all.length).toBeGreaterThanOrEqual(0.95 * chosen.length);
      const sizes = solved.map((one) => (one?.off.length ?? 0) / 2).filter((size) => size > 0);
      expect([Math.min(...sizes), Math.max(...sizes)]).toEqual([6, 200]);
    });
    it("hold some stations so poorly that they are good to no better than 0.2 m", () => {
      expect(all.filter(({ stretched }) => (stretched ?? 0) > 0.1).length).toBeGreaterThan(0);
    });
    it("agree in every coordinate to 0.1 mm", () => {
      expect(all.filter(({ coordinate }) => !(coordinate <= 1))).toEqual([]);
    });
    it("agree in every standard deviation to 1 %", () => {
      expect(all.filter(({ deviation }) => !(deviation <= 1))).toEqual([]);
    });
    it("agree in the misfit as a whole, and in how much of it was checked", () => {
      expect(all.filter(({ chiSquare, degrees }) => !((chiSquare ?? 2) <= 1) || degrees !== 0)).toEqual([]);
    });
  });
}
