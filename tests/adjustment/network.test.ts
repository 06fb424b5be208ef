import { describe, expect, it } from "vitest";
import { standingOut } from "../../src/adjustment/gauss-newton.ts";
import { adjustNetwork } from "../../src/adjustment/network.ts";
import type { Adjusted, Network } from "../../src/adjustment/network.ts";
import type { Coordinates, Observation } from "../../src/adjustment/observation.ts";
import { quadObservations, quadStart, quadStations, quadTapes } from "./tape-quadrilateral.ts";

function adjusted(network: Network): Adjusted {
  const result = adjustNetwork(network);
  if (result.refused !== undefined) throw new Error(`refused: ${JSON.stringify(result)}`);
  return result;
}

const quad = (blunder: { in: string; by: number } | null): Network => ({
  stations: quadStations,
  observations: quadObservations(blunder),
  approximate: quadStart,
});

/** Area by the shoelace formula and its u by the covariance: dA/dE = (next north - last north)/2 and so round. */
function areaOf(result: Adjusted, stations: readonly string[], covariance: number[][]) {
  const at = stations.map((name) => result.coordinates.get(name)!);
  const n = at.length;
  const gradient = at.flatMap((_, i) => {
    const [lastEast, lastNorth] = at[(i + n - 1) % n]!;
    const [nextEast, nextNorth] = at[(i + 1) % n]!;
    return [(nextNorth - lastNorth) / 2, (lastEast - nextEast) / 2];
  });
  const area = at.reduce((sum, [e, no], i) => sum + (e * at[(i + 1) % n]![1] - at[(i + 1) % n]![0] * no) / 2, 0);
  const variance = gradient.reduce((s, a, i) => s + gradient.reduce((t, b, j) => t + a * b * covariance[i]![j]!, 0), 0);
  return { area, u: Math.sqrt(variance) };
}

// Source: the tape quadrilateral, COMPUTED by two independent programs (Gauss-Newton, and SciPy least_squares);
// tolerances are half of the last digit they print, 1e-4 m for coordinates.
describe("tape quadrilateral", () => {
  it("gives the coordinates", () => {
    const { coordinates } = adjusted(quad(null));
    const expected = { A: [0, 0], B: [24.0008, 0], C: [20.9948, 16.00293], D: [2.00395, 14.506] };
    for (const [name, [east, north]] of Object.entries(expected)) {
      expect(Math.abs(coordinates.get(name)![0] - east!)).toBeLessThan(1e-5);
      expect(Math.abs(coordinates.get(name)![1] - north!)).toBeLessThan(1e-5);
    }
  });

  it("gives residuals, chi-square and its degrees of freedom", () => {
    const { observations, chiSquare, degreesOfFreedom, probability } = adjusted(quad(null));
    const residuals = observations.slice(3).map(({ residual }) => 1000 * residual);
    [-2.2, -1.2, -2.2, -1.2, 3.4, 3.3].forEach((v, k) => expect(Math.abs(residuals[k]! - v)).toBeLessThan(0.051));
    expect(chiSquare).toBeCloseTo(0.3728, 4);
    expect(degreesOfFreedom).toBe(1);
    expect(probability).toBeGreaterThan(0.05);
  });

  it("gives the standard deviations", () => {
    const covariance = adjusted(quad(null)).covariance(["B", "C", "D"]);
    const sd = covariance.map((row, k) => 1000 * Math.sqrt(row[k]!));
    [9.1, 0, 10.6, 7.8, 11.0, 7.6].forEach((s, k) => expect(Math.abs(sd[k]! - s)).toBeLessThan(0.051));
  });

  it("gives the area, with and without the covariance", () => {
    const result = adjusted(quad(null));
    const full = result.covariance(quadStations);
    const diagonal = full.map((row, i) => row.map((value, j) => (i === j ? value : 0)));
    expect(areaOf(result, quadStations, full).area).toBeCloseTo(328.282, 3);
    expect(Math.abs(areaOf(result, quadStations, full).u - 0.126)).toBeLessThan(0.0005);
    expect(Math.abs(areaOf(result, quadStations, diagonal).u - 0.181)).toBeLessThan(0.0005);
  });

  it("sees a tape misread by 0.10 m, and gives all six the same standardised residual", () => {
    for (const [tape, chi, w] of [
      ["BD", 20.4, 4.52],
      ["AB", 19.0, 4.35],
    ] as const) {
      const { chiSquare, observations } = adjusted(quad({ in: tape, by: 0.1 }));
      expect(Math.abs(chiSquare - chi)).toBeLessThan(0.1);
      for (const { standardised } of observations.slice(3)) {
        expect(Math.abs(Math.abs(standardised!) - w)).toBeLessThan(0.01);
      }
    }
  });
});

describe("sensitivities", () => {
  // dx/dl is by definition what the coordinates do when one observation changes: differences of whole adjustments.
  it("agree with re-adjusting after a change of each observation, exact ones included", () => {
    const network = quad(null);
    const base = adjusted(network);
    const step = 1e-5;
    network.observations.forEach((observation, k) => {
      const value = (sign: number) =>
        adjusted({
          ...network,
          observations: network.observations.with(k, { ...observation, value: observation.value + sign * step }),
        });
      const [up, down] = [value(1), value(-1)];
      for (const name of quadStations) {
        const { east, north } = base.sensitivities(name);
        const change = (axis: 0 | 1) =>
          (up.coordinates.get(name)![axis] - down.coordinates.get(name)![axis]) / (2 * step);
        // Gauss-Newton drops the curvature times residual (3 mm in 20 m): 2e-4 relative.
        expect(Math.abs(east[k]! - change(0))).toBeLessThan(1e-3);
        expect(Math.abs(north[k]! - change(1))).toBeLessThan(1e-3);
      }
    });
  });

  it("make the covariance: G diag(u^2) G'", () => {
    const network = quad(null);
    const base = adjusted(network);
    const rows = quadStations.flatMap((name) => Object.values(base.sensitivities(name)));
    const covariance = base.covariance(quadStations);
    rows.forEach((a, i) =>
      rows.forEach((b, j) => {
        const sum = network.observations.reduce((s, { u }, k) => s + a[k]! * b[k]! * u * u, 0);
        expect(Math.abs(sum - covariance[i]![j]!)).toBeLessThan(1e-15);
      }),
    );
  });
});

describe("refusals", () => {
  it("names stations that hang on nothing", () => {
    const network = quad(null);
    const result = adjustNetwork({
      ...network,
      stations: [...network.stations, "X", "Y"],
      observations: [...network.observations, { id: "XY", kind: "distance", from: "X", to: "Y", value: 5, u: 0.01 }],
      approximate: new Map([...quadStart, ["X", [50, 0]], ["Y", [55, 0]]]),
    });
    expect(result).toMatchObject({ refused: "not-connected", stations: ["X", "Y"] });
  });

  it("names the stations that can still turn when no direction is given", () => {
    const network = quad(null);
    const result = adjustNetwork({
      ...network,
      observations: network.observations.filter(({ id }) => id !== "A to B"),
    });
    expect(result).toMatchObject({ refused: "singular", stations: ["B", "C", "D"] });
  });

  it("names the one station that a single tape leaves free", () => {
    const network = quad(null);
    const result = adjustNetwork({
      ...network,
      stations: [...network.stations, "E"],
      observations: [...network.observations, { id: "CE", kind: "distance", from: "C", to: "E", value: 5, u: 0.01 }],
      approximate: new Map([...quadStart, ["E", [26, 16]]]),
    });
    expect(result).toMatchObject({ refused: "singular", stations: ["E"] });
  });

  it("refuses ties that cannot close", () => {
    const observations: Observation[] = [
      ...quadObservations(null).slice(0, 3),
      { id: "AB", kind: "distance", from: "A", to: "B", value: 24, u: 0.01 },
      { id: "AP", kind: "distance", from: "A", to: "P", value: 10, u: 0.01 },
      { id: "BP", kind: "distance", from: "B", to: "P", value: 11, u: 0.01 },
    ];
    const start: [string, Coordinates][] = [
      ["A", [0, 0]],
      ["B", [24, 0]],
      ["P", [11, 4]],
    ];
    const result = adjustNetwork({ stations: ["A", "B", "P"], observations, approximate: new Map(start) });
    expect(["singular", "not-converged"]).toContain(result.refused);
    expect(result.refused === undefined ? [] : result.stations).toContain("P");
  });

  const twice = quadTapes.map(([from, to, value]): Observation => {
    return { id: `${from}${to} again`, kind: "distance", from, to, value: value + 0.002, u: 0.01 };
  });

  it("names the tape that is a hundred metres out, once there are others to go by", () => {
    for (const tape of ["AB", "BC", "AC"]) {
      const network = quad({ in: tape, by: 100 });
      const result = adjustNetwork({ ...network, observations: [...network.observations, ...twice] });
      expect(result).toMatchObject({ refused: "not-converged", stations: tape.split(""), observations: [tape] });
    }
  });

  it("can say which tape stands out where least squares has bent the whole plan to it", () => {
    for (const by of [-15, -5, 2, 45]) {
      for (const tape of ["AB", "BC", "CD", "DA", "AC", "BD"]) {
        const network = quad({ in: tape, by });
        const found = standingOut({ ...network, observations: [...network.observations, ...twice] });
        expect(found.map(({ id }) => id)).toEqual([tape]);
      }
    }
    expect(standingOut(quad(null))).toEqual([]);
  });

  it("names exact observations that contradict each other", () => {
    const network = quad(null);
    const observations: Observation[] = [
      ...network.observations,
      { id: "B east", kind: "east", of: "B", value: 24, u: 0 },
      { id: "AB exact", kind: "distance", from: "A", to: "B", value: 24.01, u: 0 },
    ];
    const result = adjustNetwork({ ...network, observations });
    expect(result.refused).toBe("contradicting");
    expect(result.refused === undefined ? [] : result.observations).toContain("AB exact");
  });

  it("names numbers and names that cannot be read", () => {
    const network = quad(null);
    const observations: Observation[] = [
      ...network.observations,
      { id: "bad", kind: "distance", from: "A", to: "Z", value: 3, u: 0.01 },
      { id: "worse", kind: "distance", from: "A", to: "B", value: Number.NaN, u: 0.01 },
    ];
    expect(adjustNetwork({ ...network, observations })).toMatchObject({
      refused: "unreadable",
      observations: ["bad", "worse"],
    });
  });
});

describe("the kinds of observation", () => {
  // Closed forms: a point 8 along and 3 left of a line that runs east 10 from (2, 1) lies at (10, 4).
  it("places run and offset left of the line, and a bearing clockwise from north", () => {
    const observations: Observation[] = [
      { id: "1", kind: "east", of: "A", value: 2, u: 0 },
      { id: "2", kind: "north", of: "A", value: 1, u: 0 },
      { id: "3", kind: "bearing", from: "A", to: "B", value: Math.PI / 2, u: 0 },
      { id: "4", kind: "distance", from: "A", to: "B", value: 10, u: 0.01 },
      { id: "5", kind: "run", of: "P", from: "A", to: "B", value: 8, u: 0.01 },
      { id: "6", kind: "offset", of: "P", from: "A", to: "B", value: 3, u: 0.01 },
      { id: "7", kind: "bearing", from: "P", to: "Q", value: (200 * Math.PI) / 180, u: 0.01 },
      { id: "8", kind: "distance", from: "P", to: "Q", value: 5, u: 0.01 },
    ];
    const start: [string, Coordinates][] = [
      ["A", [2, 1]],
      ["B", [11, 2]],
      ["P", [9, 5]],
      ["Q", [8, -1]],
    ];
    const result = adjusted({ stations: ["A", "B", "P", "Q"], observations, approximate: new Map(start) });
    const expected: Record<string, Coordinates> = {
      A: [2, 1],
      B: [12, 1],
      P: [10, 4],
      Q: [10 + 5 * Math.sin((200 * Math.PI) / 180), 4 + 5 * Math.cos((200 * Math.PI) / 180)],
    };
    for (const [name, place] of Object.entries(expected)) {
      expect(result.coordinates.get(name)![0]).toBeCloseTo(place[0], 9);
      expect(result.coordinates.get(name)![1]).toBeCloseTo(place[1], 9);
    }
    expect(result.degreesOfFreedom).toBe(0);
    expect(result.probability).toBeNull();
  });

  it("holds exact tapes and offsets exactly, with weighted ones beside them", () => {
    const observations = quadObservations(null).map((observation) =>
      observation.id === "AC" ? { ...observation, u: 0 } : observation,
    );
    const { coordinates, observations: after, degreesOfFreedom } = adjusted({ ...quad(null), observations });
    const [east, north] = coordinates.get("C")!;
    expect(Math.hypot(east, north)).toBeCloseTo(quadTapes[4]![2], 10);
    expect(after.reduce((sum, { redundancy }) => sum + redundancy, 0)).toBeCloseTo(degreesOfFreedom, 9);
  });
});

describe("an error that several tapes share", () => {
  // B known to 2 mm by coordinates and taped three times to 11 mm each with a reel that is off by 7 mm (standard): the
  // generalised mean of 30.000 (u 2 mm) and 30.030 (u^2 = 11^2 / 3 + 7^2), COMPUTED.
  const tape = (k: number): Observation => ({
    id: `tape ${k}`,
    kind: "distance",
    from: "A",
    to: "B",
    value: 30.03,
    u: 0.011,
    shared: { of: "reel", by: 0.007 },
  });
  const result = adjustNetwork({
    stations: ["A", "B", "reel"],
    observations: [
      { id: "ae", kind: "east", of: "A", value: 0, u: 0 },
      { id: "an", kind: "north", of: "A", value: 0, u: 0 },
      { id: "be", kind: "east", of: "B", value: 30, u: 0.002 },
      { id: "bn", kind: "north", of: "B", value: 0, u: 0.002 },
      tape(1),
      tape(2),
      tape(3),
      { id: "k", kind: "east", of: "reel", value: 0, u: 1 },
      { id: "k0", kind: "north", of: "reel", value: 0, u: 0 },
    ],
  });
  it("counts once in the weights, and in the doubt", () => {
    if (result.refused !== undefined) throw new Error(result.refused);
    const [own, taped] = [1 / 0.002 ** 2, 1 / (0.011 ** 2 / 3 + 0.007 ** 2)];
    expect(result.coordinates.get("B")?.[0]).toBeCloseTo((own * 30 + taped * 30.03) / (own + taped), 7);
    expect(result.covariance(["B"])[0]?.[0]).toBeCloseTo(1 / (own + taped), 12);
    expect(result.degreesOfFreedom).toBe(3);
  });
});
