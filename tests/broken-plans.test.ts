// Broken plans: each gets a polite answer with its line, the rest is still read, and none takes long.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { checkPlan, exitCode } from "../src/index.ts";

interface Broken {
  readonly name: string;
  readonly text: string;
  readonly says: readonly { readonly line: number; readonly code?: string; readonly words: string }[];
}
const plans = parse(readFileSync(new URL("tables/broken-plans.yaml", import.meta.url), "utf8")) as readonly Broken[];

describe("a broken plan", () => {
  it("comes in at least twenty kinds", () => {
    expect(new Set(plans.map((plan) => plan.name)).size).toBeGreaterThanOrEqual(20);
  });
  it.each(plans)("$name", ({ text, says }) => {
    const start = performance.now();
    const report = checkPlan({ file: "broken.yaml", text }, { asOf: "2026-11-25" });
    expect(performance.now() - start).toBeLessThan(2000);
    expect(exitCode(report)).toBe(2);
    const told = report.problems.map(({ line, code, expected, got, hint }) => ({
      line,
      code,
      all: `${expected} | ${got} | ${hint}`,
    }));
    for (const { line, code, words } of says) {
      const fits = told.some(
        (one) => one.line === line && (code === undefined || one.code === code) && one.all.includes(words),
      );
      expect(fits, JSON.stringify(told, null, 1)).toBe(true);
    }
    expect(report.problems.length).toBeLessThanOrEqual(says.length + 1);
    for (const { expected, got, hint } of report.problems) {
      for (const word of [expected, got, hint]) expect(word).toMatch(/\S/);
      expect(`${expected}${got}${hint}`).not.toMatch(/undefined|\[object|NaN|null/);
    }
  });
});
