// Doubt through whole plans: the tape quadrilateral, and the same plan moved, turned and mirrored.

import { describe, expect, it } from "vitest";
import { checkPlan, type Report } from "../../src/index.ts";

const head = { sightrail: 1, place: ["england"], as_of: "2026-11-25", stages: ["now", "works"] };

interface Turn {
  readonly degrees: number;
  readonly mirror: 1 | -1;
  readonly shift: readonly [number, number];
}

/** A yard written in coordinates: pegs, a fence by a wall and a tree, a track between walls. */
function yard({ degrees, mirror, shift }: Turn): Report {
  const angle = (degrees * Math.PI) / 180;
  const at = (x: number, y: number): [number, number] => [
    shift[0] + Math.cos(angle) * x - Math.sin(angle) * mirror * y,
    shift[1] + Math.sin(angle) * x + Math.cos(angle) * mirror * y,
  ];
  const side = mirror === 1 ? "left" : "right";
  const plan = {
    ...head,
    title: "yard",
    fences: {
      paddock: {
        line: [at(0, 0), at(12, 0.4), at(30, -1)],
        height: 1.6,
        keep_out: ["fox"],
        keep_out_side: side,
        existing: true,
      },
    },
    walls: {
      "field wall": { line: [at(9, 1.7), at(20, 1.9)], height: 1.05, thickness: 0.5, existing: true },
      "north wall": { line: [at(5, 9.3), at(25, 9.6)], height: 1.2, thickness: 0.4, existing: true },
      "south wall": { line: [at(4, 6.6), at(24, 6.5)], height: 1.2, existing: true },
      "garden wall": { line: [at(31, 6), at(36, 11)], height: 1, from: "works" },
    },
    trees: { ash: { at: at(38, 2), girth: 1.9, crown: { radius: 4 }, clearance_under: 2.5, existing: true } },
    surfaces: { track: { centre_line: [at(-3, 8), at(28, 8)], width: 2.4, for: ["vehicles"], existing: true } },
  };
  return checkPlan({ file: "yard.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25", remedies: false });
}

const told = (report: Report) =>
  report.findings
    .map((finding) => ({
      key: [finding.rule, ...finding.features.map((feature) => feature.name), finding.wanted?.limit].join(" "),
      verdict: finding.verdict,
      value: finding.found?.value ?? 0,
      doubt: finding.found?.doubt ?? 0,
      probability: finding.probability ?? 0,
    }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));

describe("a plan moved, turned and mirrored", () => {
  const first = yard({ degrees: 0, mirror: 1, shift: [0, 0] });
  it("has something to say", () => {
    expect(first.problems).toEqual([]);
    expect(first.findings.length).toBeGreaterThanOrEqual(3);
    expect(first.findings.every((finding) => finding.found === null || finding.found.doubt > 0)).toBe(true);
  });
  const turns: Turn[] = [0, 13, 45, 90, 137.5, 180, 261, 303].flatMap((degrees) =>
    ([1, -1] as const).map((mirror) => ({ degrees, mirror, shift: [degrees * 1.7, -40 + degrees] as const })),
  );
  it.each(turns)("by $degrees degrees, mirror $mirror: same verdicts, values and doubts to 1e-6", (turn) => {
    const there = told(yard(turn));
    const here = told(first);
    expect(there.map(({ key, verdict }) => [key, verdict])).toEqual(here.map(({ key, verdict }) => [key, verdict]));
    for (const [i, one] of there.entries()) {
      expect(Math.abs(one.value - (here[i]?.value ?? 0))).toBeLessThanOrEqual(2.1e-6);
      expect(Math.abs(one.doubt - (here[i]?.doubt ?? 0))).toBeLessThanOrEqual(2.1e-6);
    }
  });
});

describe("pegs that share a tape", () => {
  const plan = (tape: object) => ({
    ...head,
    title: "tapes",
    survey: {
      ...tape,
      stations: {
        A: { at: [0, 0] },
        B: { line_to: "A", tape: 30 },
        C: { ties: { A: 41.2, B: 28.3 }, side: "left of A to B" },
        D: { ties: { A: 41.9, B: 28.9 }, side: "left of A to B" },
      },
    },
    trees: { ash: { at: "D", stem: "3 ± 0.001", existing: true } },
    build: { position: "1 mm" },
    none: ["veteran trees"],
    walls: {
      near: { line: ["C", "B"], height: 1, from: "works" },
      far: { line: ["A", [-5, -5]], height: 1, from: "works" },
    },
  });
  const doubtOf = (tape: object, wall = "near"): number => {
    const report = checkPlan(
      { file: "tapes.yaml", text: JSON.stringify(plan(tape)) },
      { asOf: "2026-11-25", remedies: false },
    );
    expect(report.problems).toEqual([]);
    return (
      report.findings.find(
        (finding) => finding.rule === "trees/works-in-root-zone" && finding.features.some(({ name }) => name === wall),
      )?.found?.doubt ?? Number.NaN
    );
  };
  it("carry the reel's own error together: a class III tape hardly widens the gap of two pegs a metre apart", () => {
    const bare = doubtOf({});
    const reel = doubtOf({ tape: { class: "III", taken: "2026-10-01" } });
    // E(42 m) / sqrt(3) = 10.1 mm on each tie; were it each tape's own, the gap's doubt would grow by more than 5 mm.
    expect(reel).toBeGreaterThanOrEqual(bare);
    expect(reel - bare).toBeLessThan(0.001);
  });
  it("carry it in full over the length of one of them: E(42 m) / sqrt(3), added in squares", () => {
    const bare = doubtOf({}, "far");
    const reel = doubtOf({ tape: { class: "III", taken: "2026-10-01" } }, "far");
    // Class III: 0.6 mm + 0.4 mm a metre of 42 m = 17.4 mm at most (READ, UK SI 2016/1153 schedule 1I).
    expect(Math.sqrt(reel ** 2 - bare ** 2)).toBeCloseTo(0.0174 / Math.sqrt(3), 4);
  });
});
