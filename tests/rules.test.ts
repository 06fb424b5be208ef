// Runs every cases file beside its card, through the whole library, and the double-entry book of limits.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { checkPlan, type Finding, rulebook } from "../src/index.ts";
import { measures } from "../src/measures/index.ts";
import { verdictOrder } from "../src/model/finding.ts";
import { parseQuantity } from "../src/model/units.ts";
import { isCalled } from "../src/site/parts.ts";
import { readRuleFile, root, yamlUnder } from "./house/rule-files.ts";

interface Expect {
  readonly verdict: Finding["verdict"];
  readonly reason?: string;
  readonly grade?: string;
  readonly limit?: string;
  readonly value?: number | string;
  readonly within?: number | string;
  readonly need?: string;
  readonly beneath?: string;
  readonly stage?: string;
  readonly features?: string | readonly string[];
  readonly short?: number | string;
  readonly sure?: number | string;
  readonly findings?: number;
}
interface Case {
  readonly case: string;
  readonly plan: Readonly<Record<string, unknown>>;
  readonly option?: string;
  readonly expect: Expect;
}

const files = yamlUnder("rules").filter((file) => file.endsWith(".cases.yaml"));

/** The plan of a case with a head where it has none. */
function planText(plan: Readonly<Record<string, unknown>>): string {
  return JSON.stringify({
    sightrail: 1,
    title: "a case",
    place: ["anywhere"],
    as_of: "2026-11-25",
    stages: ["works"],
    ...plan,
  });
}

/** The finding that a case speaks of: of the features it names, the worst one. */
function findingOf(findings: readonly Finding[], wanted: Expect): Finding | null {
  const names = typeof wanted.features === "string" ? [wanted.features] : (wanted.features ?? []);
  const fitting = findings.filter(
    (finding) =>
      names.every((name) => finding.features.some((feature) => isCalled(feature.name, name))) &&
      (wanted.stage === undefined || finding.stages.includes(wanted.stage)) &&
      (wanted.limit === undefined || finding.wanted?.limit === wanted.limit),
  );
  const [first] = [...fitting].sort((a, b) => verdictOrder.indexOf(a.verdict) - verdictOrder.indexOf(b.verdict));
  return first ?? null;
}

function numberIn(value: number | string, finding: Finding): number {
  const parsed = parseQuantity(value, finding.dimension);
  return parsed.ok ? parsed.value : Number(value);
}

describe.each(files)("%s", (file) => {
  const rule = file.replace(/^rules\//, "").replace(/\.cases\.yaml$/, "");
  const cases = readRuleFile(file).data as readonly Case[];
  it("tells its cases apart", () => {
    const texts = cases.map((one) => JSON.stringify([one.plan, one.option ?? null]));
    expect(new Set(texts).size).toBe(texts.length);
  });
  it.each(cases)("$case", (one) => {
    const report = checkPlan(
      { file: "case.yaml", text: planText(one.plan) },
      { asOf: "2026-11-25", remedies: one.expect.short !== undefined, ...(one.option ? { option: one.option } : {}) },
    );
    expect(report.problems).toEqual([]);
    const findings = report.findings.filter((finding) => finding.rule === rule);
    if (one.expect.findings !== undefined) expect(findings.length).toBe(one.expect.findings);
    const finding = findingOf(findings, one.expect);
    if (one.expect.verdict === "does-not-bear") return expect(finding).toBeNull();
    expect(finding).not.toBeNull();
    if (!finding) return;
    expect({ verdict: finding.verdict, sentence: finding.sentence }).toEqual({
      verdict: one.expect.verdict,
      sentence: finding.sentence,
    });
    if (one.expect.reason) expect(finding.reason).toBe(one.expect.reason);
    if (one.expect.grade) expect(finding.grade).toBe(one.expect.grade);
    if (one.expect.beneath) expect(finding.beneath?.verdict).toBe(one.expect.beneath);
    if (one.expect.need)
      expect(report.needs.filter((need) => need.waits.includes(rule)).map((need) => need.path)).toContain(
        one.expect.need,
      );
    if (one.expect.value !== undefined) {
      const value = numberIn(one.expect.value, finding);
      const within =
        one.expect.within === undefined
          ? Math.max(0.001, Math.abs(value) * 0.001)
          : numberIn(one.expect.within, finding);
      expect(Math.abs((finding.found?.value ?? Number.NaN) - value)).toBeLessThanOrEqual(within + 1e-9);
    }
    if (one.expect.short !== undefined) expect(finding.remedies[0]?.short).toBeCloseTo(Number(one.expect.short), 2);
    if (one.expect.sure !== undefined) expect(finding.remedies[0]?.sure).toBeCloseTo(Number(one.expect.sure), 2);
  });
});

describe("every card", () => {
  const cards = rulebook().cards;
  it.each(cards.map((card) => [card.id, card] as const))(
    "%s has cases that fail, that do not, that lack something, and that are too close where a reading is continuous",
    (id, card) => {
      const cases = readRuleFile(`rules/${id}.cases.yaml`).data as readonly Case[];
      const verdicts = new Set(cases.map((one) => one.expect.verdict));
      const fine = verdicts.has("met") || verdicts.has("no-fault-seen");
      const yesOrNo = measures.get(card.measure)?.shownIn === "yes or no";
      const continuous = !yesOrNo && card.dimension !== "count" && card.dimension !== "time";
      expect({
        fails: verdicts.has("not-met"),
        fine,
        scope: verdicts.has("does-not-bear") || verdicts.has("not-given"),
        close: !continuous || verdicts.has("undecided"),
      }).toEqual({ fails: true, fine: true, scope: true, close: true });
    },
  );
  it("names a caution and, on safety, who decides", () => {
    expect(cards.filter((card) => card.cautions.length === 0).map((card) => card.id)).toEqual([]);
    expect(cards.filter((card) => card.stakes === "safety" && !card.defersTo).map((card) => card.id)).toEqual([]);
  });
  it("words a fault as a verb phrase without a full stop", () => {
    expect(cards.filter((card) => !/^[a-z].*[^.]$/.test(card.fault)).map((card) => card.id)).toEqual([]);
  });
});

describe("the built-in cards", () => {
  it("are those of the folder", () => {
    const onDisk = yamlUnder("rules").filter(
      (file) => file.split("/").length === 3 && !file.startsWith("rules/tables/") && !file.endsWith(".cases.yaml"),
    );
    expect(rulebook().cards.map((card) => `rules/${card.id}.yaml`)).toEqual(onDisk);
    expect(readFileSync(join(root, onDisk[0] ?? ""), "utf8").length).toBeGreaterThan(0);
  });
});
