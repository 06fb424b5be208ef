// One scene of the examples and its mended twin, and what a rule says of named things in each.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { inspect, type Inspection } from "../../src/index.ts";
import type { Finding, Verdict } from "../../src/model/finding.ts";
import { root } from "../house/rule-files.ts";

/** What one rule must say of one thing: the value is worked out by hand from the numbers of the plan. */
export interface Told {
  readonly verdict: Verdict;
  /** In metres, or as rise over run. */
  readonly value: number;
  /** Half a unit of the last figure of the hand sum; 0.005 where nothing is said. */
  readonly within?: number;
  /** The limit, where the hand sum knows it. */
  readonly wanted?: number;
}

export interface Fault {
  readonly what: string;
  readonly rule: string;
  /** Name of the thing, and of the other thing where there are two. */
  readonly of: readonly string[];
  readonly faulty: Told;
  /** `does not bear` where the twin holds nothing that the rule looks at any more. */
  readonly mended: Told | "does not bear";
}

const inspected = new Map<string, Inspection>();

/** The text of an example's plan. */
export function textOf(name: string): string {
  return readFileSync(join(root, "examples", name, "plan.yaml"), "utf8");
}

/** The example as the program sees it; looked at once. */
export function inspectionOf(name: string): Inspection {
  const known = inspected.get(name);
  if (known) return known;
  const seen = inspect([{ file: `examples/${name}/plan.yaml`, text: textOf(name) }], { asOf: "2026-11-25" });
  inspected.set(name, seen);
  return seen;
}

/** The findings of a rule on things of these names; those listed inside a finding count with their own numbers. */
export function findingsOf(name: string, rule: string, of: readonly string[]): readonly Finding[] {
  return inspectionOf(name).report.findings.filter(
    (finding) => finding.rule === rule && of.every((one) => finding.features.some((feature) => feature.name === one)),
  );
}

function tell(name: string, fault: Fault, told: Fault["mended"]): void {
  const [found, ...more] = findingsOf(name, fault.rule, fault.of).filter((one) => one.grade === "must");
  if (told === "does not bear") return expect(found).toBeUndefined();
  expect(found, `${fault.rule} on ${fault.of.join(" and ")}`).toBeDefined();
  expect(more).toEqual([]);
  expect(found?.verdict).toBe(told.verdict);
  expect(Math.abs((found?.found?.value ?? Number.NaN) - told.value)).toBeLessThanOrEqual(told.within ?? 0.005);
  if (told.wanted !== undefined) expect(found?.wanted?.value).toBeCloseTo(told.wanted, 4);
}

/** Every seeded fault is found with its hand sum, and on the mended twin the same rule is met for its own reason. */
export function itFindsAndMends(name: string, faults: readonly Fault[]): void {
  describe.each(faults)("$what", (fault) => {
    it("is found, with the value of the hand sum", () => tell(name, fault, fault.faulty));
    it("is put right in the twin, with the value of the hand sum", () => tell(`${name}-mended`, fault, fault.mended));
  });
  it("leaves nothing that fails or that the tape cannot say in the twin", () => {
    const open = inspectionOf(`${name}-mended`).report.findings.filter(
      (finding) => finding.grade === "must" && (finding.verdict === "not-met" || finding.verdict === "undecided"),
    );
    expect(open.map((finding) => finding.sentence)).toEqual([]);
  });
}
