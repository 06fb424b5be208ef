// What would let a vehicle turn: the amounts are those that are needed, told by a closed form, by another program, and by
// drawing the plan anew with what was told.

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";
import type { Finding, RemedyFound } from "../../src/model/finding.ts";
import { threePointTurn } from "../../src/motion/three-point-turn.ts";
import { rearAxleRadiusFrom } from "../../src/motion/vehicle.ts";
import { planOfScene, scenes } from "../site/turning-plans.ts";

const rule = "access/no-room-to-turn";

function findingIn(plan: object | string): Finding {
  const text = typeof plan === "string" ? plan : JSON.stringify(plan);
  const report = checkPlan({ file: "plan.yaml", text }, { asOf: "2026-11-25" });
  const finding = report.findings.find((one) => one.rule === rule);
  if (!finding) throw new Error(JSON.stringify(report.problems));
  return finding;
}

const remedy = (finding: Finding, starting: string): RemedyFound | undefined =>
  finding.remedies.find(({ words }) => words.startsWith(starting));

type Corner = readonly [number, number];
const exact = (corners: readonly Corner[]) => corners.map((corner) => corner.map((value) => `${value} ± 0`));

/** A common small car (PRACTICE). */
const car = {
  length: 4.2,
  wheelbase: 2.6,
  front_overhang: 0.85,
  rear_overhang: 0.75,
  width: 1.8,
  track: 1.74,
  turning_circle: { across: 10.8, between: "kerbs" },
};

interface Street {
  readonly corners: readonly Corner[];
  readonly clear: number;
  readonly more?: object;
}

/** A long pad with a track into its west end. */
const street = ({ corners, clear, more = {} }: Street) => ({
  sightrail: 1,
  title: "a street",
  place: ["anywhere"],
  as_of: "2026-11-25",
  stages: ["works"],
  surfaces: {
    pad: { outline: exact(corners), for: ["vehicles"], existing: true },
    track: {
      centre_line: exact([
        [-18, 3],
        [1, 3],
      ]),
      width: "3 ± 0",
      for: ["vehicles"],
      existing: true,
    },
  },
  vehicles: { car },
  manoeuvres: {
    turn: {
      vehicle: "car",
      does: "turn round",
      comes_in_by: "track",
      on: ["track", "pad"],
      moves: 3,
      clear,
      body_over_edge: false,
    },
  },
  ...more,
});

const box = (east: number, north: number, south = 0): readonly Corner[] => [
  [0, south],
  [east, south],
  [east, north],
  [0, north],
];

describe("a street too narrow for a three-point turn", () => {
  const body = {
    wheelbase: 2.6,
    frontOverhang: 0.85,
    rearOverhang: 0.75,
    bodyWidth: 1.8,
    widthOverTyres: 1.74,
  };
  const rearAxleRadius = rearAxleRadiusFrom({ of: "outer front tyre", radius: 5.4 }, body) as number;
  // The narrowest road for three arcs at full lock, best split headings (COMPUTED, closed form of the arcs' extents).
  const { width } = threePointTurn({ ...body, rearAxleRadius });
  const clear = 0.2;
  it.each([0.3, 0.8, 1.4])("%d m too narrow: a long side is carried out by that", (short) => {
    const finding = findingIn(street({ corners: box(30, width + 2 * clear - short), clear }));
    expect(finding.verdict).toBe("not-met");
    const side = finding.remedies.find(({ words }) => /^Carry the (north|south) side of surface "pad"/.test(words));
    // A first swing the other way gains up to 2 cm. The lattice of 5 cm loses up to a cell at both walls, and the mouth
    // of the track, which is narrower than the street, as much again: 0.2 m, and a step of 5 cm.
    expect(side?.short).toBeGreaterThan(short - 0.02);
    expect(side?.short).toBeLessThan(short + 0.25);
    expect(side?.short).toBeLessThanOrEqual(side?.sure as number);
  });
  it("draws the strip that is taken, and the path that is then driven", () => {
    const finding = findingIn(street({ corners: box(30, width), clear }));
    const [strip, ...path] = finding.remedies[0]?.witness ?? [];
    expect(strip?.points).toHaveLength(4);
    expect(path.some(({ label }) => label === "move 1")).toBe(true);
  });
  it("is turned on when it is drawn as told", () => {
    const first = findingIn(street({ corners: box(30, 6.6), clear }));
    const told = first.remedies.find(({ words }) => words.startsWith("Carry"));
    const amount = told?.sure as number;
    const [north, south] = told?.words.includes("north") ? [6.6 + amount, 0] : [6.6, -amount];
    expect(findingIn(street({ corners: box(30, north, south), clear })).verdict).toBe("met");
  });
  it("is not carried out over a boundary", () => {
    const lines = (north: number) => ({
      line: exact([
        [-1, north],
        [31, north],
      ]),
      ours: "left",
      beyond: "neighbour",
    });
    const boundaries = { "north side": lines(6.75), "south side": lines(0) };
    const finding = findingIn(street({ corners: box(30, 6.6), clear, more: { boundaries } }));
    const told = finding.remedies.map(({ words }) => words);
    expect(told.filter((words) => /north side|south side/.test(words))).toEqual([]);
  });
});

describe("one more shunt", () => {
  it("is offered where another program needs four changes (COMPUTED): scene a", () => {
    const finding = findingIn(planOfScene(scenes.a, { moves: 3 }));
    expect(finding.verdict).toBe("not-met");
    expect(remedy(finding, "Allow it 5 moves")).toBeDefined();
  });
  it("is not offered where no number of moves is enough (COMPUTED): scene f", () => {
    const finding = findingIn(planOfScene(scenes.f, { moves: 3 }));
    expect(remedy(finding, "Allow it")).toBeUndefined();
  });
});

describe("a heap on the pad", () => {
  const heap = (east: number, north: number) => ({
    heaps: {
      muck: { circle: { at: exact([[east, north]])[0], across: 5 }, of: "manure", height: 1.5, existing: true },
    },
  });
  const at = (east: number, north: number) =>
    findingIn(street({ corners: box(14.5, 8), clear: 0.15, more: heap(east, north) }));
  it("is moved as far as is told, and then the car turns", () => {
    const finding = at(9, 4.5);
    expect(finding.verdict).toBe("not-met");
    const told = remedy(finding, 'Move heap "muck"');
    const way = / to the (north|south|east|west)\b/.exec(told?.words ?? "")?.[1] ?? "";
    const by = ({ north: [0, 1], south: [0, -1], east: [1, 0], west: [-1, 0] } as const)[way as "north"];
    const amount = told?.sure as number;
    expect(at(9 + by[0] * amount, 4.5 + by[1] * amount).verdict).toBe("met");
  });
});

describe("ground that is made later", () => {
  const plan = (after: object) => ({
    sightrail: 1,
    title: "hay",
    place: ["anywhere"],
    as_of: "2026-11-25",
    stages: ["now", "yard", "finished"],
    surfaces: {
      yard: {
        outline: [
          [0, -10],
          [30, -10],
          [30, 14],
          [0, 14],
        ],
        for: ["vehicles"],
        from: "yard",
      },
      track: {
        centre_line: [
          [-30, 2],
          [1, 2],
        ],
        width: 4,
        for: ["vehicles"],
        existing: true,
      },
    },
    vehicles: { "hay lorry": { like: "aashto su-9" } },
    manoeuvres: {
      "hay comes": {
        vehicle: "hay lorry",
        does: "deliver",
        comes_in_by: "track",
        on: ["track", "yard"],
        moves: 3,
        clear: 0.5,
        stages: ["yard"],
        ...after,
      },
    },
  });
  it("is waited for, and nothing else is told", () => {
    const finding = findingIn(plan({}));
    expect(finding.remedies).toHaveLength(1);
    expect(remedy(finding, 'Have surface "yard" made before it comes')).toBeDefined();
    expect(findingIn(plan({ after: ["yard"] })).verdict).toBe("met");
  });
});
