import { describe, expect, it } from "vitest";
import { findBlunder, smallestSeen } from "../../src/adjustment/blunder.ts";
import { adjustNetwork } from "../../src/adjustment/network.ts";
import type { Adjusted } from "../../src/adjustment/network.ts";
import { quadObservations, quadStart, quadStations } from "./tape-quadrilateral.ts";

const limits = { global: 0.95, single: 0.999 };

function quad(blunder: { in: string; by: number } | null): Adjusted {
  const result = adjustNetwork({
    stations: quadStations,
    observations: quadObservations(blunder),
    approximate: quadStart,
  });
  if (result.refused !== undefined) throw new Error(result.refused);
  return result;
}

describe("one redundancy", () => {
  it("agrees while the tapes are right", () => {
    expect(findBlunder(quad(null), limits)).toEqual({ is: "agree", suspects: [] });
  });

  // One redundancy shows a blunder but cannot say which tape it is in: all |w| are equal. COMPUTED.
  it.each(["AB", "BC", "CD", "DA", "AC", "BD"])("sees 0.30 m in %s and suspects all six", (tape) => {
    const finding = findBlunder(quad({ in: tape, by: 0.3 }), limits);
    expect(finding.is).toBe("several");
    expect([...finding.suspects].sort((a, b) => a.localeCompare(b))).toEqual(["AB", "AC", "BC", "BD", "CD", "DA"]);
  });
});

describe("no redundancy", () => {
  it("is said to be unchecked", () => {
    const observations = quadObservations(null).filter(({ id }) => id !== "BD");
    const result = adjustNetwork({ stations: quadStations, observations, approximate: quadStart });
    if (result.refused !== undefined) throw new Error(result.refused);
    expect(findBlunder(result, limits)).toEqual({ is: "unchecked", suspects: [] });
    expect(smallestSeen(result.observations[3]!, 0.999, 0.8)).toBeGreaterThan(1000);
  });
});

describe("smallest blunder seen", () => {
  // Non-centrality of Baarda's test: delta0 = 3.291 + 0.842 = 4.13 for 0.1 % and 80 %, MEMORY (lambda0 = 17.07).
  it("is u times 4.13 over the root of the redundancy", () => {
    const seen = smallestSeen({ id: "x", u: 1, residual: 0, redundancy: 1, standardised: 0 }, 0.999, 0.8);
    expect(seen ** 2).toBeCloseTo(17.07, 1);
    expect(smallestSeen({ id: "x", u: 2, residual: 0, redundancy: 0.25, standardised: 0 }, 0.999, 0.8)).toBeCloseTo(
      4 * seen,
      12,
    );
  });
});
