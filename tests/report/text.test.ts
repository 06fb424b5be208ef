// The text report: what stands in it, in which order, and that no name in a plan can break the page.

import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Finding, Report } from "../../src/model/finding.ts";
import { columns } from "../../src/report/clean.ts";
import { textReport } from "../../src/report/text.ts";
import { found, invented, inventedReport, quietReport, twoPlans, wanted } from "./invented-report.ts";

const lines = (text: string) => text.split("\n");
const flat = (text: string) => text.replace(/\s+/g, " ");
const withFindings = (findings: readonly Finding[], part: Partial<Report> = {}): Report => ({
  ...quietReport,
  findings,
  ...part,
});

describe("the text report", () => {
  it("reads as the kept page", async () => {
    await expect(textReport(inventedReport)).toMatchFileSnapshot("golden/report.txt");
    await expect(textReport(inventedReport, { plain: true, width: 80 })).toMatchFileSnapshot("golden/report-plain.txt");
    await expect(textReport(twoPlans, { brief: true, width: 118 })).toMatchFileSnapshot("golden/report-brief.txt");
    await expect(textReport(quietReport, { all: true })).toMatchFileSnapshot("golden/report-quiet.txt");
  });

  it("says a clause once, where the title of the source names it already", () => {
    const source = {
      id: "cdm",
      title: "Construction Regulations 2015, regulation 22",
      clause: "regulation 22",
      seen: "memory",
    } as const;
    const told = invented({
      rule: "works/a",
      verdict: "not-met",
      sentence: "It is too deep.",
      found: found(2, 0.1),
      wanted: wanted({ value: 1, source }),
    });
    expect(flat(textReport(withFindings([told]))).split("regulation 22").length).toBe(2);
  });

  it("does not say twice that no figure is published", () => {
    const sentence = 'Heap "dung": no published figure is known for this place, so nobody can say. Ask the authority.';
    const told = invented({
      rule: "works/a",
      sentence,
      verdict: "not-given",
      reason: "no-limit-here",
      found: null,
      wanted: null,
    });
    expect(flat(textReport(withFindings([told])))).not.toContain("No figure is published for this place");
  });

  it("tells the groups in the order of what they do to a person", () => {
    const headings = lines(textReport(inventedReport)).filter(
      (line) => /^[A-Z][A-Z ,]+$/.test(line) || /^(MET|NOT LOOKED AT|ASSUMED|MIND)/.test(line),
    );
    expect(headings.map((line) => line.replace(/[:,].*/, ""))).toEqual([
      "COULD NOT BE READ",
      "CAN HURT SOMEBODY",
      "WILL NOT WORK",
      "COULD BE BETTER",
      "YOUR TAPE CANNOT SAY",
      "TOO FINE TO BUILD BY",
      "OUR SEARCH CANNOT SAY",
      "NO FIGURE IS PUBLISHED HERE",
      "NOT IN THE PLAN",
      "DEPARTURE",
      "MIND ALL THE SAME",
      "MET",
      "ASSUMED",
      "NOT LOOKED AT",
    ]);
  });

  it.each([
    ["usual", {}],
    ["plain", { plain: true }],
    ["brief", { brief: true }],
  ])("prints every caution once: %s", (_name, options) => {
    const text = flat(textReport(inventedReport, options));
    const cautions = new Set(
      inventedReport.findings
        .filter(({ verdict }) => verdict !== "does-not-bear")
        .flatMap((finding) => finding.cautions),
    );
    for (const caution of cautions) expect(text.split(caution), caution).toHaveLength(2);
  });

  it("puts a caution beside the most serious finding that carries it", () => {
    const one = invented({ rule: "a/b", verdict: "not-met", sentence: "the drain is flat", cautions: ["Gloves."] });
    const text = flat(
      textReport(withFindings([one, { ...one, rule: "a/c", stakes: "safety", sentence: "the pit is open" }])),
    );
    expect(text).toMatch(/The pit is open\..* Gloves\..*The drain is flat\./);
  });

  it("says in every report what it is sure of, on which day, and that what is not drawn was not looked at", () => {
    for (const report of [inventedReport, quietReport, twoPlans, withFindings([])])
      for (const options of [{}, { plain: true }, { brief: true }]) {
        const text = flat(textReport(report, options));
        expect(text).toMatch(/never (of )?the ground/);
        expect(text).toContain("as of 25 November 2026");
        expect(text).toMatch(/NOT LOOKED AT: .*anything not drawn\./);
        expect(text).toMatch(/licensed people decide/);
      }
  });

  it("never says what it may not promise, and shows no rule id, no code and no colour", () => {
    for (const options of [{}, { plain: true }, { brief: true }, { all: true }]) {
      const text = textReport(inventedReport, options);
      expect(text).not.toMatch(/\b(safe|safely|proof|compliant|approved|certified)\b/i);
      for (const { rule } of inventedReport.rules) expect(text).not.toContain(rule);
      // oxlint-disable-next-line no-control-regex
      expect(text).not.toMatch(/\u001b/);
    }
  });

  it("leaves out the mark lines for the ear, but none of their numbers", () => {
    const plain = textReport(inventedReport, { plain: true });
    expect(plain).not.toMatch(/\.\s{4}\./);
    expect(plain).not.toContain("( o )");
    expect(flat(plain)).toContain(
      "Clear opening: 3.12 m, give or take 0.05 m, 19 times in 20; good to ± 50 mm; ± 24 mm would decide.",
    );
  });

  it("counts in words, and says one thing as one", () => {
    const hurts = [1, 2, 3].map((at) =>
      invented({ rule: `a/${at}`, verdict: "not-met", stakes: "safety", sentence: `it ${at}` }),
    );
    const head = (many: number) =>
      lines(textReport(withFindings(hurts.slice(0, many)))).find((line) => /matters? can/.test(line));
    expect([1, 2, 3].map(head)).toEqual([
      "1 matter can hurt somebody. Settle it before anyone starts.",
      "2 matters can hurt somebody. Settle both before anyone starts.",
      "3 matters can hurt somebody. Settle them all before anyone starts.",
    ]);
  });

  it("tells unknowns among what can hurt as unknowns, and counts each once", () => {
    const hurts = { stakes: "safety", grade: "must", sentence: "it is told." } as const;
    const silent = { verdict: "not-given", reason: "no-limit-here" } as const;
    const fails = invented({ rule: "a/1", verdict: "not-met", ...hurts });
    const unknown = invented({ rule: "a/2", ...silent, ...hurts });
    const milder = invented({ rule: "a/3", ...silent, stakes: "damage", sentence: "it is told." });
    expect(flat(textReport(withFindings([fails, unknown, milder])))).toContain(
      "2 matters can hurt somebody; for 1 of them no figure is published here. Settle both before anyone starts. " +
        "For 1 more thing no figure is published here.",
    );
    expect(flat(textReport(withFindings([unknown])))).toContain(
      "1 matter can hurt somebody; for it no figure is published here. Settle it before anyone starts.",
    );
  });

  it("says a sentence of caution once, and drops no other sentence with it", () => {
    const met = (at: number, caution: string) =>
      invented({ rule: `walls/${at}`, verdict: "met", stakes: "safety", sentence: "it holds.", cautions: [caution] });
    const text = flat(
      textReport(
        withFindings([
          met(1, "Keep off by the depth. Stop block where it tips."),
          met(2, "Stop block where it tips. Belt on."),
        ]),
      ),
    );
    expect(text).toContain("Keep off by the depth. Stop block where it tips. Belt on.");
    expect(text.match(/Stop block/g)).toHaveLength(1);
  });

  it("does not call a plan faultless of which nothing could be checked", () => {
    const counts = { ...quietReport.counts, met: 0 };
    expect(textReport(withFindings([], { counts }))).toContain(
      "Nothing could be checked. That says nothing about the plan.",
    );
  });

  it("treats a departure that has run out as what lies beneath it", () => {
    const text = flat(textReport(inventedReport));
    expect(text).toMatch(/WILL NOT WORK.*goat paddock.*ran out on 1 May 2026.*COULD BE BETTER/);
  });

  it("keeps a departure from a rule that keeps people from harm in the head, with its signer", () => {
    const head = textReport(inventedReport, { brief: true }).split("CAN HURT")[0] ?? "";
    expect(flat(head)).toContain(
      "1 departure from a rule that keeps people from harm stands: 13, agreed by J. Thwaite, waller.",
    );
  });

  it("names the file only where it is not the one plan's own", () => {
    const text = textReport(inventedReport);
    expect(text).toMatch(/ {3}line 57$/m);
    expect(text).toMatch(/gates\/lane\.yaml line 4$/m);
    expect(textReport(twoPlans)).toMatch(/garth\.yaml line 57$/m);
  });

  // 1 - 0.95^6 = 0.265 and 1 - 0.95^40 = 0.871 (COMPUTED): 6 of the invented checks lie between 0.95 and 0.99.
  it("says once what many checks only just met are worth together", () => {
    expect(flat(textReport(inventedReport))).toContain(
      "6 of these are only just met. If each is right 95 times in 100, then 26 times in 100 at least one of them is wrong.",
    );
    expect(textReport(quietReport)).not.toContain("only just met");
    const many = Array.from({ length: 40 }, () =>
      invented({ rule: "a/b", verdict: "met", sentence: "it", probability: 0.955 }),
    );
    expect(flat(textReport(withFindings(many)))).toContain("then 87 times in 100 at least one");
  });

  it("says how a figure is known, without dressing it up", () => {
    const known = (seen: "read" | "memory" | "none") =>
      flat(
        textReport(
          withFindings([
            invented({
              rule: "a/b",
              verdict: "not-met",
              sentence: "it",
              found: found(1, 0.1),
              wanted: wanted({ value: 2, source: { id: "x", title: "A guide", clause: "4", seen } }),
            }),
          ]),
        ),
      );
    expect(known("read")).toContain("At least 2.00 m is wanted. England: A guide, 4; guidance, page read.");
    expect(known("memory")).toMatch(/guidance, recalled, page not seen\..*Look it up before you rely on it/);
    expect(known("none")).toContain("guidance, no publisher.");
  });

  it("tells what waits for a need, whatever its reason", () => {
    const text = flat(textReport(inventedReport));
    expect(text).toContain(
      'how high wire "field line" hangs, in writing from its owner (1 check waits, see 3; somebody can be hurt)',
    );
    expect(text).toContain('the winter water level at tank "tank" (2 checks wait)');
  });

  const hostile = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.string({ unit: "grapheme", minLength: 60, maxLength: 400 }),
    fc.constantFrom("\u001b[31mred", "\u202eevil", "a\nb", "\u0000", "x".repeat(500), "語".repeat(80)),
  );
  it("stays a page whatever the names are: no line too wide, no control, no space at an end", () => {
    fc.assert(
      fc.property(hostile, hostile, fc.constantFrom(80, 100, 118), fc.boolean(), (name, other, width, plain) => {
        const finding = invented({
          rule: "a/b",
          verdict: "not-met",
          sentence: name,
          reading: other,
          found: found(1, 0.1),
          wanted: wanted({ value: 2 }),
          features: [{ kind: name, name: other, role: name }],
          cautions: [other],
          defers_to: name,
          remedies: [{ words: other, short: 1, sure: 2, unit: name, would_then_fail: [name] }],
          at: [{ file: other, path: name, line: 3, column: 1 }],
        });
        const problem = {
          code: "not-yaml" as const,
          file: name,
          line: 1,
          column: 1,
          expected: other,
          got: name,
          hint: other,
        };
        const plans = [{ file: name, title: other, stages: [name, other], stage: name, features: 1 }];
        const text = textReport(
          withFindings([finding], { problems: [problem], plans, place: [other], not_checked: [name] }),
          { width, plain },
        );
        // oxlint-disable-next-line no-control-regex
        const bad = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/;
        return (
          !bad.test(text) &&
          text.endsWith("\n") &&
          lines(text).every((line) => columns(line) <= width && !line.endsWith(" "))
        );
      }),
      { seed: 20261125, numRuns: 400 },
    );
  });

  it("gives the same bytes for the same report, and another width its own lines", () => {
    expect(textReport(inventedReport)).toBe(textReport(structuredClone(inventedReport)));
    expect(textReport(inventedReport, { width: 20 })).toBe(textReport(inventedReport, { width: 80 }));
    expect(textReport(inventedReport, { width: 400 })).toBe(textReport(inventedReport, { width: 118 }));
  });

  it("prints a dozen lines of what is minded all the same, about what fails first, and says where the rest is", () => {
    const words = (area: string, i: number) => `${area} caution ${i} is long enough to take a whole line of the sheet and says ${i} times nothing much.`; // prettier-ignore
    const met = (area: string, i: number) =>
      invented({ rule: `${area}/r${i}`, verdict: "met", sentence: "it holds.", cautions: [words(area, i)] });
    const findings = [
      ...Array.from({ length: 9 }, (_, i) => met("walls", i)),
      ...Array.from({ length: 9 }, (_, i) => met("drains", i)),
      invented({ rule: "drains/flat", verdict: "not-met", sentence: "the drain is flat." }),
    ];
    const report = { ...quietReport, findings };
    const lines = textReport(report).split("\n");
    const from = lines.findIndex((line) => line.startsWith("MIND ALL THE SAME"));
    const block = lines.slice(from + 1, lines.indexOf("", from));
    const where = block.findIndex((line) => line.includes("more: --all"));
    expect(where).toBeGreaterThan(0);
    expect(where).toBeLessThanOrEqual(12);
    // What is about drains, where one fails, comes before what is about walls.
    expect(block[0]).toContain("Drains caution 0");
    const shown = block.join(" ").match(/caution \d/g)?.length ?? 0;
    expect(block.join(" ").replace(/\s+/g, " ")).toContain(`${18 - shown} more: --all`);
    const whole = textReport(report, { all: true }).replace(/\s+/g, " ");
    for (const area of ["walls", "drains"])
      for (let i = 0; i < 9; i++) expect(whole).toContain(words(area, i).slice(1));
  });
});
