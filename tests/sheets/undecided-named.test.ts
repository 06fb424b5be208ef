// Every finding that the measurements cannot decide names what carries its doubt and how good that would have to be: over
// all examples, and over plans whose distances are drawn close to their limits. Expected accuracy: gap / 3.0902 inside a
// limit where somebody can be hurt, gap / 1.6449 elsewhere (99.9 and 95 % points of the normal distribution, one-sided).

import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { inspect, remeasureSheet } from "../../src/index.ts";
import { inspectionOf } from "../examples/scene.ts";
import { root } from "../house/rule-files.ts";
import { seeded } from "../seeded.ts";

type Worked = ReturnType<typeof inspect>["worked"][number];

const examples = readdirSync(join(root, "examples")).filter((name) =>
  existsSync(join(root, "examples", name, "plan.yaml")),
);

/**
 * A taped plot with a well, a heap, a bank and a path, each a random hair from what is wanted: 50 m from a heap to a well,
 * 15 degrees under a mower, 1 in 8 for a barrow, 0.6 m beside an edge.
 */
function drawnPlan(seed: number): string {
  const draw = seeded(seed);
  const near = (wanted: number, by: number): string => (wanted + by * (2 * draw() - 1)).toFixed(3);
  return `
sightrail: 1
title: drawn ${seed}
place: [england]
as_of: 2026-11-25
stages: [now, yard]
survey:
  tape: {class: II}
  stations:
    A: {at: [0, 0], level: 100.00}
    B: {line_to: A, tape: 48.21, level: 100.42}
    C: {ties: {A: 52.30, B: 31.77}, side: left of A to B, level: 101.10}
    D: {ties: {A: 30.12, B: 55.03}, side: left of A to B, level: 100.71}
    W: {ties: {A: 71.44, B: 66.90}, side: left of A to B}
  checks: [{between: [C, D], tape: 44.90}]
heaps: {muck: {circle: {at: D, across: 4.0}, of: manure, height: 1.5, existing: true}}
water: {well: {at: W, kind: well, drinking: true, existing: true}}
banks:
  brow: {crest: [[5, 60], [25, 60]], toe: [[5, ${near(56.27, 0.03)}], [25, ${near(56.27, 0.03)}]], height: ${near(1, 0.005)}, mown_by: ride-on mower, existing: true}
ramps: {planks: {line: [[0, -10], [${near(8, 0.05)}, -10]], width: 0.9, rise: 1.0, for: barrow, from: yard}}
fences: {pen: {line: [A, B], height: ${near(1.2, 0.02)}, bottom_gap: ${near(0.2, 0.02)}, keep_out: [fox], keep_in: [goat], existing: true}}
trees: {ash: {at: C, girth: ${near(1.75, 0.02)}, species: ash, existing: true}}
excavations: {pit: {outline: [[40, 40], [44, 40], [44, 44], [40, 44]], depth: ${near(1.2, 0.02)}, somebody_goes_in: true, from: yard}}
`;
}

const drawn = Array.from({ length: 40 }, (_, k) => k + 1).flatMap((seed) => {
  const { worked, report } = inspect([{ file: `drawn-${seed}.yaml`, text: drawnPlan(seed) }], {
    asOf: "2026-11-25",
    remedies: false,
  });
  expect(report.problems).toEqual([]);
  return worked;
});
const all: readonly Worked[] = [...examples.flatMap((name) => inspectionOf(name).worked), ...drawn];
const open = all.flatMap((worked) =>
  worked.findings
    .filter(({ verdict }) => verdict === "undecided")
    .map((finding) => ({
      finding,
      worked,
      known: worked.deciding.find((one) => one.fingerprint === finding.fingerprint),
    })),
);

describe("findings that nothing decides", () => {
  it("are many, in the examples and drawn, some where somebody can be hurt", () => {
    expect(examples.length).toBeGreaterThan(8);
    expect(open.filter(({ worked }) => !drawn.includes(worked)).length).toBeGreaterThan(10);
    expect(open.filter(({ worked }) => drawn.includes(worked)).length).toBeGreaterThan(40);
    expect(open.filter(({ finding }) => finding.stakes === "safety").length).toBeGreaterThan(10);
  });

  it("say which part of the doubt decides, and the measurements that carry it, largest first", () => {
    for (const { finding } of open) {
      const at = `${finding.rule}: ${finding.sentence}`;
      expect(finding.decided_by, at).not.toBeNull();
      if (finding.decided_by === "method") continue;
      expect(finding.doubts.length, at).toBeGreaterThan(0);
      for (const { words, path, share } of finding.doubts) {
        expect(words.length, at).toBeGreaterThan(3);
        expect(path.length, at).toBeGreaterThan(0);
        expect(share, at).toBeGreaterThanOrEqual(0.005);
      }
      const shares = finding.doubts.map(({ share }) => share);
      expect(shares, at).toEqual(shares.toSorted((a, b) => b - a));
      expect(
        shares.reduce((sum, one) => sum + one, 0),
        at,
      ).toBeLessThanOrEqual(1 + 1e-5);
    }
  });

  it("ask for gap / 3.09 inside a limit of safety, else for gap / 1.645, which is less than there is", () => {
    for (const { finding, known } of open) {
      const at = `${finding.rule}: ${finding.sentence}`;
      expect(known, at).toBeDefined();
      if (!known) continue;
      const by = finding.stakes === "safety" && known.gap > 0 ? 3.090232306 : 1.644853627;
      expect(Math.abs(known.wantedU - Math.abs(known.gap) / by), at).toBeLessThan(1e-9);
      // A reading between two limits is judged by both, so that its doubt may have to be less still.
      if (finding.wanted?.sense !== "between") expect(known.wantedU, at).toBeLessThan(known.u + 1e-9);
    }
  });

  it("give each measurement the accuracy that decides alone: sqrt(wanted^2 - rest^2) as a part of its own", () => {
    let some = 0;
    for (const { finding, worked, known } of open) {
      for (const { words, path, share, needed } of finding.doubts) {
        if (needed === null || !known) continue;
        const [id] = [...known.contributions].find(([cause, part]) => {
          const one = worked.plan.numbers.causes[cause];
          return one?.words === words && Math.abs((part * part) / (known.u * known.u) - share) < 1e-6;
        }) ?? [-1];
        const u = worked.plan.numbers.causes[id]?.u ?? Number.NaN;
        const rest = (1 - share) * known.u ** 2;
        expect(
          Math.abs(needed / u - Math.sqrt((known.wantedU ** 2 - rest) / (share * known.u ** 2))),
          `${finding.rule} ${path}`,
        ).toBeLessThan(1e-2);
        some += 1;
      }
    }
    expect(some).toBeGreaterThan(20);
  });

  it("are all on the list to take outside, with that accuracy and those measurements", () => {
    for (const worked of new Set(open.map((one) => one.worked))) {
      const entries = remeasureSheet(worked).parts.flatMap((part) => part.entries);
      for (const { finding } of open.filter((one) => one.worked === worked)) {
        const entry = entries.find(({ words }) => words.startsWith(finding.sentence));
        expect(entry, finding.sentence).toBeDefined();
        if (finding.decided_by !== "survey") continue;
        expect(entry?.notes[0], finding.sentence).toMatch(
          /^It is good to ± .*(?:; ± .* would decide it|no measuring will decide it: plan for a little more)\.$/,
        );
        expect(entry?.notes.filter((note) => note.includes(" parts in 100 of the doubt")).length).toBe(
          finding.doubts.length,
        );
      }
    }
  });
});
