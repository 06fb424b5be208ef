import { describe, expect, it } from "vitest";
import { eliminationFronts } from "../../src/adjustment/elimination-order.ts";
import { solveLeastSquares } from "../../src/adjustment/least-squares.ts";
import type { Equation } from "../../src/adjustment/reduced-problem.ts";
import { adjustNetwork } from "../../src/adjustment/network.ts";
import { fieldOfPegs, normals } from "./large-network.ts";

describe("two thousand pegs", () => {
  const field = fieldOfPegs(45, 45, 3);
  const result = adjustNetwork(field);
  if (result.refused !== undefined) throw new Error(result.refused);

  // Closed forms: degrees of freedom by counting, redundancies add up to them, and the misfit of honest tapes is
  // distributed as chi-square, so its probability lies within 1 in 1000 of either end for a seed drawn once.
  it("are adjusted, with as much redundancy as was taped", () => {
    expect(result.degreesOfFreedom).toBe(field.observations.length - 3 - (2 * 45 * 45 - 3));
    const sum = result.observations.reduce((total, { redundancy }) => total + redundancy, 0);
    expect(Math.abs(sum - result.degreesOfFreedom)).toBeLessThan(1e-6);
    expect(result.probability).toBeGreaterThan(0.001);
    expect(result.probability).toBeLessThan(0.999);
  });

  it("lie where they were put, within the doubt that is told", () => {
    for (const name of ["1 0", "22 22", "44 44", "0 44"]) {
      const [[varianceEast], [, varianceNorth]] = result.covariance([name]) as [[number], [number, number]];
      const [east, north] = result.coordinates.get(name)!;
      const [trueEast, trueNorth] = field.truth.get(name)!;
      expect(Math.abs(east - trueEast)).toBeLessThan(4 * Math.sqrt(varianceEast) + 1e-12);
      expect(Math.abs(north - trueNorth)).toBeLessThan(4 * Math.sqrt(varianceNorth) + 1e-12);
    }
  });

  it("give a row of G that makes the same variance", () => {
    const { east } = result.sensitivities("30 17");
    const variance = field.observations.reduce((sum, { u }, k) => sum + (east[k]! * u) ** 2, 0);
    expect(variance / result.covariance(["30 17"])[0]![0]!).toBeCloseTo(1, 9);
  });
});

/** A random sparse problem with some exact equations; `order` changes only how it is worked out. */
function sparseProblem(seed: number): { columnCount: number; equations: Equation[] } {
  const random = normals(seed);
  const pick = (count: number) => Math.floor((Math.abs(random()) * 1e6) % count);
  const columnCount = 5 + pick(25);
  const equations = Array.from({ length: 2 * columnCount + pick(20) }, (_, k): Equation => {
    const columns = [...new Set([k % columnCount, pick(columnCount), pick(columnCount)])];
    return { columns, values: columns.map(() => random()), value: random(), u: k % 9 === 4 ? 0 : 10 ** (random() / 2) };
  });
  return { columnCount, equations };
}

describe("sparse least squares", () => {
  // The solution is defined by its conditions, whatever the order: exact equations hold, and J'W v = C' multipliers,
  // that is, no admissible direction lowers the misfit. Directions come from the sensitivities: COMPUTED.
  it("does not depend on the order of elimination", () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const problem = sparseProblem(seed);
      const least = solveLeastSquares(problem);
      const plain = solveLeastSquares({ ...problem, fronts: [[...new Float64Array(problem.columnCount).keys()]] });
      const single = solveLeastSquares({
        ...problem,
        fronts: [...new Float64Array(problem.columnCount).keys()].reverse().map((k) => [k]),
      });
      for (let c = 0; c < problem.columnCount; c += 1) {
        const scale = 1e-8 * (1 + Math.max(...least.x.map(Math.abs)));
        expect(Math.abs(least.x[c]! - plain.x[c]!)).toBeLessThan(scale);
        expect(Math.abs(least.x[c]! - single.x[c]!)).toBeLessThan(scale);
        const [g, h] = [least.sensitivity(c), single.sensitivity(c)];
        g.forEach((value, k) =>
          expect(Math.abs(value - h[k]!)).toBeLessThan(1e-8 * (1 + Math.max(...g.map(Math.abs)))),
        );
      }
      least.redundancies().forEach((r, k) => expect(Math.abs(r - plain.redundancies()[k]!)).toBeLessThan(1e-9));
    }
  });

  it("keeps exact equations, and x = G l", () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { columnCount, equations } = sparseProblem(seed);
      const { x, sensitivity } = solveLeastSquares({ columnCount, equations });
      const size = 1 + Math.max(...x.map(Math.abs));
      for (const { columns, values, value, u } of equations) {
        if (u === 0)
          expect(Math.abs(columns.reduce((s, c, k) => s + values[k]! * x[c]!, -value))).toBeLessThan(1e-9 * size);
      }
      for (let c = 0; c < columnCount; c += 1) {
        const sum = sensitivity(c).reduce((total, g, k) => total + g * equations[k]!.value, 0);
        expect(Math.abs(sum - x[c]!)).toBeLessThan(1e-8 * size);
      }
    }
  });

  it("tells which columns nothing fixes", () => {
    const equation = (columns: number[], values: number[], u: number): Equation => ({ columns, values, value: 0, u });
    const { undetermined } = solveLeastSquares({
      columnCount: 5,
      equations: [equation([0], [1], 0), equation([1, 2], [1, -1], 0.1), equation([3, 0], [1, 1], 0.1)],
    });
    expect(undetermined).toEqual([1, 2, 4]);
  });
});

describe("order of elimination", () => {
  it("names every group once, leaves before what they hang on", () => {
    const star = [1, 2, 3, 4, 5, 6, 7, 8].map((leaf) => [0, leaf]);
    const order = eliminationFronts(9, star).flat();
    expect([...order].sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(order.indexOf(0)).toBeGreaterThan(6);
    expect(eliminationFronts(0, [])).toEqual([]);
  });
});
