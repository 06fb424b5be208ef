// Why a turn is too close to call: the search's own cells, or the plan's dimensions. The two are said apart. Critical
// clearances of scenes a and b in three moves: -0.009 to 0.02 m and 0.272 to 0.29 m (COMPUTED by another program).

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";
import type { Finding } from "../../src/model/finding.ts";
import { planOfScene, scenes } from "../site/turning-plans.ts";

interface Asked {
  readonly id: "a" | "b" | "f";
  readonly clear: number;
  readonly plusMinus: number;
  readonly moves?: number;
}

function findingOf({ id, clear, plusMinus, moves = 3 }: Asked): Finding {
  const text = planOfScene(scenes[id], { moves, clear }).replaceAll("± 0", `± ${plusMinus}`);
  const report = checkPlan({ file: "plan.yaml", text }, { asOf: "2026-11-25" });
  const finding = report.findings.find((one) => one.rule === "access/no-room-to-turn");
  if (!finding) throw new Error(JSON.stringify(report.problems));
  return finding;
}

describe("too close to call", () => {
  it("by the lattice: exact numbers, and the clearance of scene a's own edge", () => {
    const finding = findingOf({ id: "a", clear: 0.02, plusMinus: 0 });
    expect(finding.verdict).toBe("undecided");
    expect(finding.decided_by).toBe("method");
    expect(finding.sentence).toContain("our own search cannot tell");
  });
  it("by the plan's dimensions: room enough in scene b for the search, but every corner within 30 cm", () => {
    const finding = findingOf({ id: "b", clear: 0.2, plusMinus: 0.3 });
    expect(finding.verdict).toBe("undecided");
    expect(finding.decided_by).toBe("survey");
    expect(finding.sentence).not.toContain("search");
  });
});

describe("two noes in the finding's own words", () => {
  it("not in so many moves, and not in any number of them", () => {
    expect(findingOf({ id: "a", clear: 0.3, plusMinus: 0 }).sentence).toContain(
      "with more moves it may find more room",
    );
    const never = findingOf({ id: "f", clear: 0.05, plusMinus: 0, moves: 13 });
    expect(never.sentence).toContain("no number of moves gives it the room that is wanted");
  });
});
