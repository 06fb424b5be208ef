// What is alike is told once, and nothing of it is lost: other figures for one thing, other things with one open question.

import { describe, expect, it } from "vitest";
import type { Finding, Need } from "../../src/model/finding.ts";
import { beginWords } from "../../src/report/begin.ts";
import { numbered } from "../../src/report/grouping.ts";
import { askedTogether } from "../../src/report/need-groups.ts";
import { textReport } from "../../src/report/text.ts";
import { found, invented, quietReport, wanted } from "./invented-report.ts";

const reportOf = (findings: readonly Finding[]) => ({ ...quietReport, findings });
const flat = (findings: readonly Finding[]) => textReport(reportOf(findings)).replace(/\s+/g, " ");
const drain = [{ kind: "drain", name: "store drain", role: "run" }];
const tooFlat = (id: string, part: Partial<Finding> = {}) =>
  invented({
    rule: "drains/too-flat",
    verdict: "not-met",
    features: drain,
    sentence: 'Drain "store drain" is too flat: its fall is 8 mm; at least 10 mm is wanted.',
    found: found(0.008, 0.0001),
    wanted: wanted({ value: 0.01, source: { id, title: `Code ${id}`, clause: "", seen: "read" } }),
    ...part,
  });

describe("findings alike", () => {
  it("tells one entry of one thing that two codes judge alike, and names both codes", () => {
    const both = [tooFlat("A"), tooFlat("B")];
    expect(numbered(reportOf(both)).map(({ number, also }) => [number, also.length])).toEqual([[1, 1]]);
    expect(flat(both)).toMatch(/Code A; .*So says also: .*Code B; /);
  });

  it("keeps what is advised beneath what is wanted, with its own remedy", () => {
    const remedy = { words: "Drop it 40 mm.", short: 0.03, sure: 0.04, unit: "m", would_then_fail: [] };
    const should = tooFlat("B", {
      grade: "should",
      sentence: 'Drain "store drain" is too flat: its fall is 8 mm; at least 20 mm is advised.',
      remedies: [remedy],
    });
    const text = flat([should, tooFlat("A")]);
    expect(text).toMatch(/1\. Drain .* at least 10 mm is wanted\./);
    expect(text).toContain("And at least 20 mm is advised. England: Code B;");
    expect(text).toContain("For what is advised: Drop it 40 mm.");
  });

  it("tells the figure of one page once, though two rules ask for it, by the graver of them", () => {
    const remedy = { words: "Widen it.", short: 0.01, sure: 0.03, unit: "m", would_then_fail: [] };
    const grave = tooFlat("A", { rule: "a/grave", stakes: "safety", sentence: "it is grave." });
    const milder = tooFlat("A", { sentence: "it is milder.", remedies: [remedy] });
    const text = flat([milder, grave]);
    expect(numbered(reportOf([milder, grave])).map(({ finding }) => finding.rule)).toEqual(["a/grave"]);
    expect(text).not.toMatch(/milder|So says also|Widen it/);
    expect(numbered(reportOf([tooFlat("B"), grave]))).toHaveLength(2);
    const pair = [...drain, { kind: "tree", name: "oak", role: "tree" }];
    const two = [grave, milder].map((one) => ({ ...one, features: pair }));
    expect(numbered(reportOf(two))).toHaveLength(2);
  });

  it("tells no number below 0 of a like thing: only a sentence tells which side that is", () => {
    const tight = (name: string, value: number) =>
      tooFlat("A", {
        grade: "should",
        stakes: "nuisance",
        features: [{ kind: "drain", name, role: "run" }],
        found: found(value, 0),
      });
    expect(flat([tight("a", -3), tight("b", -2.27)])).toMatch(/The same holds of drain "b"(?: \(line \d+\))?\./);
  });

  it("keeps apart what another thing, another stage or another value is", () => {
    const other = [{ kind: "drain", name: "yard drain", role: "run" }];
    const apart = [
      tooFlat("A"),
      tooFlat("B", { features: other }),
      tooFlat("C", { found: found(0.007, 0.0001) }),
      tooFlat("D", { stages: ["yard"] }),
      tooFlat("E", { verdict: "undecided" }),
    ];
    expect(numbered(reportOf(apart))).toHaveLength(5);
  });

  it("gives one counsel about many things once, with the number of each", () => {
    const long = (name: string, offset: number, line: number) =>
      invented({
        rule: "survey/offset-too-long",
        verdict: "not-met",
        grade: "should",
        stakes: "nuisance",
        features: [{ kind: "peg", name, role: "peg" }],
        sentence: `Peg "${name}" is put in by too long an offset: its offset is ${offset} m; at most 15 m is advised.`,
        found: found(offset, 0.01),
        wanted: wanted({ sense: "at_most", value: 15 }),
        at: [{ file: "plan.yaml", path: "", line, column: 1 }],
      });
    const text = flat([long("A", 20, 3), long("B", 31, 4), long("C", 16, 5)]);
    expect(text).toContain('1. Peg "A" is put in');
    expect(text).toContain('The same holds of peg "B" (31.00 m, line 4) and peg "C" (16.00 m, line 5).');
    expect(text).not.toContain("So says also");
  });

  it("tells once what several manoeuvres do to one other thing, with the figure and the line of each", () => {
    const covers = (name: string, value: number, line: number) =>
      invented({
        rule: "access/people",
        verdict: "not-met",
        stakes: "safety",
        features: [
          { kind: "manoeuvre", name, role: "manoeuvre" },
          { kind: "route", name: "sand pit", role: "other" },
        ],
        sentence: `Manoeuvre "${name}" covers it: it overlaps play place "sand pit" by ${-value} m.`,
        found: found(value, 0.01),
        remedies: [{ words: "Elsewhere.", short: null, sure: null, unit: "m", would_then_fail: [] }],
        at: [{ file: "plan.yaml", path: "", line, column: 1 }],
      });
    const text = flat([covers("feed", -1.15, 3), covers("car", -0.86, 9), covers("pickup", -1.23, 12)]);
    expect(text).toContain(
      'The same holds of manoeuvre "car" (by 0.86 m, line 9) and manoeuvre "pickup" (by 1.23 m, line 12).',
    );
    expect(text).toContain("1 matter can hurt somebody.");
    const solved = { ...covers("car", -0.86, 9), remedies: [{ words: "1 m.", short: 1, sure: 1, unit: "m", would_then_fail: [] }] }; // prettier-ignore
    expect(numbered(reportOf([covers("feed", -1.15, 3), solved]))).toHaveLength(2);
  });

  it("tells one crest once, by the vehicle that grounds on it, with what else is said of it and minded", () => {
    const surface = { kind: "surface", name: "drive", role: "way" };
    const grounds = (grade: "must" | "should", limit: number) =>
      invented({
        rule: "access/grounds",
        verdict: "not-met",
        grade,
        features: [{ kind: "manoeuvre", name: "park car", role: "manoeuvre" }, surface],
        sentence: `Manoeuvre "park car" grounds by 0.02 m; at least ${limit} m clear is ${grade === "must" ? "wanted" : "advised"}.`,
        found: found(-0.02, 0.001),
        wanted: wanted({ value: limit }),
      });
    const broken = invented({
      rule: "access/slope-breaks-too-sharply",
      verdict: "not-met",
      features: [surface],
      sentence: 'Surface "drive" changes its slope too sharply.',
      found: found(0.145, 0.001),
      cautions: ["Long trailers ground earlier."],
    });
    const all = [broken, grounds("should", 0.03), grounds("must", 0)];
    const told = numbered(reportOf([grounds("must", 0), broken, grounds("should", 0.03)]));
    expect(told.map(({ finding, also }) => [finding.rule, also.length])).toEqual([["access/grounds", 2]]);
    const text = flat([grounds("must", 0), broken, grounds("should", 0.03)]);
    expect(text).toContain("And at least 0.03 m clear is advised.");
    expect(text).toContain('Surface "drive" changes its slope too sharply.');
    expect(text).toMatch(/Mind\s+Long trailers ground earlier\./);
    const other = { ...broken, features: [{ ...surface, name: "track" }] };
    expect(numbered(reportOf([...all.slice(1), other]))).toHaveLength(2);
  });

  it("names all things of which one question stands open", () => {
    const open = (name: string, line: number) =>
      invented({
        rule: "trees/near",
        verdict: "not-given",
        reason: "no-limit-here",
        features: [{ kind: "building", name, role: "building" }],
        sentence: `Building "${name}": no published figure is known for this place.`,
        found: null,
        wanted: null,
        at: [{ file: "plan.yaml", path: "", line, column: 1 }],
      });
    const text = flat([open("barn", 3), open("house", 9), open("shed", 12)]);
    expect(text).toContain('The same holds of building "house" (line 9) and building "shed" (line 12).');
    expect(text).not.toContain(" 2. ");
  });
});

const need = (path: string, asks: string, part: Partial<Need> = {}): Need => ({
  path,
  asks,
  unit: "",
  waits: ["a/b"],
  stakes: "damage",
  reason: "missing",
  at: null,
  ...part,
});

describe("questions", () => {
  it("asks all about one thing in one line, the thing named once", () => {
    const asked = askedTogether([
      need("fences/hens/height", 'the height of fence "hens"'),
      need("stock/shale/origin", 'where stock "shale" comes from'),
      need("fences/hens/of", 'what fence "hens" is made of'),
    ]);
    expect(asked.map(({ asks }) => asks)).toEqual([
      'fence "hens": the height; what it is made of',
      'where stock "shale" comes from',
    ]);
    expect(asked.flatMap(({ needs }) => needs)).toHaveLength(3);
  });
});

describe("where to begin", () => {
  const told = (words: string) =>
    numbered(
      reportOf([
        invented({
          rule: "a/b",
          verdict: "not-met",
          sentence: "it is too near.",
          remedies: [{ words, short: 1, sure: 1, unit: "m", would_then_fail: [] }],
        }),
      ]),
    );

  it.each([
    [
      'Move heap "a" 5.10 m to the south (5.00 m would just do, 5.10 m to be sure).',
      'move heap "a" 5.10 m to the south.',
    ],
    ["Make it 2.15 m (now 1.85 m): 0.26 m more would just do, 0.28 m to be sure.", "make it 2.15 m (now 1.85 m)."],
    [
      "Make it 2.15 m (now 1.85 m): 0.26 m more will do. But that would bring a new fault: x.",
      "make it 2.15 m (now 1.85 m).",
    ],
    ["Rope it off; ring a laboratory.", "rope it off."],
  ])("says the first step without its amounts: %s", (words, step) => {
    expect(beginWords(told(words))).toBe(`Begin with 1: ${step}`);
  });

  it("sends to the tape first where the survey disagrees with itself, for all else hangs on it", () => {
    const remedy = (words: string) => [{ words, short: null, sure: null, unit: "", would_then_fail: [] }];
    const both = numbered(
      reportOf([
        invented({
          rule: "walls/too-high",
          stakes: "safety",
          verdict: "not-met",
          sentence: "it is too high.",
          remedies: remedy("Lower it."),
        }),
        invented({
          rule: "survey/blunder",
          features: [{ kind: "survey", name: "pegs and tapes", role: "survey" }],
          stakes: "damage",
          verdict: "not-met",
          sentence: "it disagrees with itself.",
          remedies: remedy("Measure the ones named again."),
        }),
      ]),
    );
    expect(both.map(({ group }) => group)).toEqual(["hurt", "fails"]);
    expect(beginWords(both)).toBe("Begin with 2: measure the ones named again; every other answer hangs on it.");
  });

  it("says nothing where nothing fails", () => {
    expect(beginWords([])).toBe("");
  });
});
