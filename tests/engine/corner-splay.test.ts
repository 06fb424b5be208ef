// Cutting the corners of a mouth: the remedy is told where no side can go out, and the plan drawn as it is told is met.
// The mouth matters more than the pad for a car that comes in at right angles (COMPUTED by another program: half a metre
// more track takes 1.7 m off the depth that is needed).

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";
import type { Finding } from "../../src/model/finding.ts";

type Corner = readonly [number, number];
const exact = (corners: readonly Corner[]) => corners.map((corner) => corner.map((value) => `${value} ± 0`));

const wall = (line: readonly Corner[]) => ({ line: exact(line), height: 1.2, existing: true });
const pad: readonly Corner[] = [
  [0, 0],
  [14.5, 0],
  [14.5, 7.2],
  [0, 7.2],
];

/** A walled pad with a track into the middle of its long side; nothing but the corners of the mouth can give way. */
function plan(outline: readonly Corner[], boundaries: object): string {
  return JSON.stringify({
    sightrail: 1,
    title: "a mouth",
    place: ["anywhere"],
    as_of: "2026-11-25",
    stages: ["works"],
    surfaces: {
      pad: { outline: exact(outline), for: ["vehicles"], existing: true },
      track: {
        centre_line: exact([
          [7.25, -18],
          [7.25, 0.5],
        ]),
        width: "3 ± 0",
        for: ["vehicles"],
        existing: true,
      },
    },
    walls: {
      north: wall([
        [-1, 7.4],
        [15.5, 7.4],
      ]),
      east: wall([
        [14.7, -0.2],
        [14.7, 7.4],
      ]),
      west: wall([
        [-0.2, -0.2],
        [-0.2, 7.4],
      ]),
      ...boundaries,
    },
    vehicles: {
      car: {
        length: "5.78 ± 0",
        wheelbase: "3.35 ± 0",
        front_overhang: "0.91 ± 0",
        width: "2.13 ± 0",
        track: "1.83 ± 0",
        turning_circle: { across: "14.52 ± 0", between: "kerbs" },
      },
    },
    manoeuvres: {
      turn: {
        vehicle: "car",
        does: "turn round",
        comes_in_by: "track",
        on: ["track", "pad"],
        moves: 3,
        clear: 0.08,
        body_over_edge: false,
      },
    },
  });
}

/** Walls that shut in the track and the pad's south side, but for so much at the mouth. */
const shutIn = {
  "south west": wall([
    [-0.2, -0.2],
    [2.5, -0.2],
  ]),
  "south east": wall([
    [12, -0.2],
    [14.7, -0.2],
  ]),
  "track west": wall([
    [5.6, -17],
    [5.6, -4.2],
  ]),
  "track east": wall([
    [8.9, -17],
    [8.9, -4.2],
  ]),
};

function findingIn(text: string): Finding {
  const report = checkPlan({ file: "plan.yaml", text }, { asOf: "2026-11-25", remedies: true });
  const finding = report.findings.find(({ rule }) => rule === "access/no-room-to-turn");
  if (!finding) throw new Error(JSON.stringify(report.problems));
  return finding;
}

describe("a mouth with square corners", () => {
  const finding = findingIn(plan(pad, shutIn));
  const told = finding.remedies.find(({ words }) => words.startsWith("Cut off the corners where"));
  it("is splayed where no side can be carried out", () => {
    expect(finding.verdict).toBe("not-met");
    expect(finding.remedies.map(({ words }) => words.slice(0, 40))).toContain(told?.words.slice(0, 40));
    expect(told?.sure).toBeGreaterThan(0.2);
    expect(told?.sure).toBeLessThanOrEqual(4);
  });
  it("draws the ground that is taken and the path that is then driven", () => {
    const [taken, ...path] = told?.witness ?? [];
    expect(taken?.points).toHaveLength(4);
    expect(path.some(({ label }) => label === "move 1")).toBe(true);
  });
  it("lets the car turn when it is drawn as it is told", () => {
    const by = told?.sure ?? 0;
    const [left, right] = [7.25 - 1.5, 7.25 + 1.5];
    const splayed: readonly Corner[] = [
      [0, 0],
      [left - by, 0],
      [left, -by],
      [right, -by],
      [right + by, 0],
      ...pad.slice(1),
    ];
    expect(findingIn(plan(splayed, shutIn)).verdict).toBe("met");
  });
});

it("a mouth hard against a wall has no corner to cut", () => {
  const closed = {
    ...shutIn,
    "south west": wall([
      [-0.2, -0.2],
      [5.6, -0.2],
    ]),
    "south east": wall([
      [8.9, -0.2],
      [14.7, -0.2],
    ]),
  };
  expect(findingIn(plan(pad, closed)).remedies.filter(({ words }) => words.startsWith("Cut off"))).toEqual([]);
});
