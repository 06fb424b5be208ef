// How far a driver sees along a road that bends, against sums by hand, and the published lengths of sight against the sum
// that they are made from.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { checkPlan } from "../../src/index.ts";

type Corner = readonly [number, number];

function seen(edge: readonly Corner[], wall: readonly Corner[]): number {
  const plan = {
    sightrail: 1,
    title: "a gate",
    place: ["england"],
    as_of: "2026-11-25",
    stages: ["works"],
    roads: { lane: { line: edge, width: 4, traffic: "28 mph", class: "lane", existing: true } },
    gates: {
      gate: {
        between: [
          [-2, 3],
          [2, 3],
        ],
        clear: 4,
        from: "works",
      },
    },
    walls: { wall: { line: wall, height: 1.5, existing: true } },
  };
  const report = checkPlan({ file: "p.yaml", text: JSON.stringify(plan) }, { asOf: "2026-11-25" });
  expect(report.problems).toEqual([]);
  return report.findings.find(({ rule }) => rule === "access/cannot-see")?.found?.value ?? Number.NaN;
}

// The eye stands 2.40 m back at (0, 2.4). The wall is 2 mm thick where the plan does not say it: 0.05 m is allowed for that.
describe("sight along a road's edge", () => {
  const straight: readonly Corner[] = [
    [-150, 0],
    [150, 0],
  ];
  it("straight: 25 m along and 1 m in gives 25 x 2.4 / (2.4 - 1) = 42.86 m", () => {
    expect(
      seen(straight, [
        [25, 1],
        [25, 9],
      ]),
    ).toBeCloseTo(42.86, 1);
  });
  it("straight: what stands farther back than the eye hides nothing", () => {
    expect(
      seen(straight, [
        [25, 3],
        [25, 9],
      ]),
    ).toBe(300);
  });
  // The edge goes on from (30, 0) at 45 degrees towards the plot: y = x - 30. The ray y = 2.4 + 0.024 x over the wall's end
  // at (25, 3) meets it at x = 32.4 / 0.976 = 33.197, y = 3.197: 30 + 3.197 x sqrt 2 = 34.52 m along the edge.
  it("bent towards the plot: the same wall on the inside of the bend leaves 34.52 m", () => {
    const bent: readonly Corner[] = [
      [-150, 0],
      [30, 0],
      [130, 100],
    ];
    expect(
      seen(bent, [
        [25, 3],
        [25, 20],
      ]),
    ).toBeCloseTo(34.52, 1);
  });
  // Away from the plot, y = 30 - x: the ray over (10, 0.9), y = 2.4 - 0.15 x, meets the straight edge at 16 m, before the bend.
  it("bent away from the plot: a corner near the gate still ends the view at 16 m", () => {
    const bent: readonly Corner[] = [
      [-150, 0],
      [30, 0],
      [130, -100],
    ];
    expect(
      seen(bent, [
        [10, 0.9],
        [10, 9],
      ]),
    ).toBeCloseTo(16, 1);
  });
  it("is mirrored with the plan", () => {
    const bent: readonly Corner[] = [
      [150, 0],
      [-30, 0],
      [-130, 100],
    ];
    expect(
      seen(bent, [
        [-25, 3],
        [-25, 20],
      ]),
    ).toBeCloseTo(34.52, 1);
  });
});

interface Row {
  readonly id: string;
  readonly when: { readonly "road.traffic": { readonly up_to?: string } };
  readonly must: { readonly at_least: string };
}

/** Stopping sight with 2.4 m of bonnet, m: v t + v^2 / (2 x 0.45 g) + 2.4, t = 1.5 s (Manual for Streets, MEMORY). */
const stopping = (speed: number): number => speed * 1.5 + speed ** 2 / (2 * 0.45 * 9.81) + 2.4;

describe("published lengths of sight are those of the stopping sum", () => {
  const card = parse(readFileSync(new URL("../../rules/access/cannot-see.yaml", import.meta.url), "utf8")) as {
    readonly limits: readonly Row[];
  };
  const rows = card.limits.flatMap(({ id, when, must }): (readonly [string, number, number])[] => {
    const [speed, unit] = (when["road.traffic"].up_to ?? "").split(" ");
    const perSecond = unit === "mph" ? 0.44704 : 1 / 3.6;
    return [[id, Number(speed) * perSecond, Number.parseFloat(must.at_least)]];
  });
  // A county's table (READ) is rounded to whole metres, and down at 15 mph; the manual's (MEMORY) likewise.
  const known = rows.filter(([id]) => /^leicestershire-(15|20|25|30|35|40)$|^kmh-/.test(id));
  it("all seventeen rows are looked at", () => expect(known).toHaveLength(17));
  it.each(known)("%s", (_, speed, length) => {
    expect(Math.abs(stopping(speed) - length)).toBeLessThan(0.75);
  });
});
