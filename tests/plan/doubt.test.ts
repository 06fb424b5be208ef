// The doubt of constructed points against Monte Carlo: every measured number of a text is nudged and the text resolved again.

import { swayLength } from "../../src/model/quantity.ts";
import { describe, expect, it } from "vitest";
import type { Spot } from "../../src/model/quantity.ts";
import { resolvePlan } from "../../src/plan/resolve-plan.ts";
import { featureOf, kindTable, numberOf, planOf, pointOf, sourceOf, spotsOf, uOf, valueOf } from "./resolved.ts";

/** Seeded normal deviates: mulberry32 and Box-Muller. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform() + 1e-300)) * Math.cos(2 * Math.PI * uniform());
}

const pegs = `
    A: {at: [0, 0]}
    B: {line_to: A, tape: 30.00 ± 0.04}
    C: {ties: {A: 20.00 ± 0.05, B: 22.00 ± 0.05}, side: left of A to B}`;

interface Case {
  readonly what: string;
  readonly text: string;
  readonly watched: string;
}

const cases: readonly Case[] = [
  { what: "two ties", text: `survey:\n  stations:${pegs}\n`, watched: "C" },
  {
    what: "three ties, adjusted",
    text: `survey:\n  stations:${pegs}\n    D: {ties: {A: 25.00 ± 0.05, B: 12.00 ± 0.05, C: 10.617 ± 0.03}, side: left of A to B}\n`,
    watched: "D",
  },
  {
    what: "run and offset on a line that is itself in doubt",
    text: `survey:\n  stations:${pegs}\n    D: {along: A to C, run: 25.00 ± 0.04, right: 6.00 ± 0.06}\n`,
    watched: "D",
  },
  {
    what: "bearing and tape",
    text: `survey:\n  stations:${pegs}\n    D: {from: C, bearing: 40 deg ± 1 deg grid, tape: 18.00 ± 0.1}\n`,
    watched: "D",
  },
  {
    what: "a spare tape",
    text: `survey:\n  stations:${pegs}\n    D: {ties: {A: 14.00 ± 0.05, B: 27.00 ± 0.05}, side: left of A to B}\n  checks:\n    - {between: [C, D], tape: 7.765 ± 0.03}\n`,
    watched: "D",
  },
];

/** Values with `x ± y` in a text, each nudged by its own u (half of y). */
const written = /(-?\d+(?:\.\d+)?)( deg)? ± (\d+(?:\.\d+)?)/g;
function nudged(text: string, normal: () => number): string {
  return text.replace(
    written,
    (_, value: string, unit: string | undefined, half: string) =>
      `${Number(value) + (Number(half) / 2) * normal()}${unit ?? ""} ± ${half}`,
  );
}

/** Sample standard deviation. */
function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

const draws = 600;
// A deviation from 600 draws is good to 1 / sqrt(2 x 600) = 2.9 %; three of that, and first order for the rest.
const tolerance = 0.1;

describe("the doubt of a constructed peg", () => {
  for (const { what, text, watched } of cases) {
    it(`agrees with ${draws} surveys drawn at random: ${what}`, () => {
      const normal = normals(20260912);
      const plan = planOf(text);
      const drawn = Array.from({ length: draws }, () => {
        const one = planOf(nudged(text, normal));
        return pointOf(one, one.pegs.get(watched) as Spot);
      });
      const spot = plan.pegs.get(watched) as Spot;
      for (const [axis, of] of [spot.east, spot.north].entries()) {
        const sampled = deviation(drawn.map((point) => point[axis] as number));
        expect(Math.abs(uOf(plan, of) / sampled - 1)).toBeLessThan(tolerance);
      }
    });
  }

  it("agrees for a line beside another, by differences of every number it rests on", () => {
    const text = (nudge: readonly number[]) => `
walls:
  old wall:
    line: [[${0 + (nudge[0] ?? 0)}, ${0 + (nudge[1] ?? 0)}], [${12 + (nudge[2] ?? 0)}, ${1 + (nudge[3] ?? 0)}], [${20 + (nudge[4] ?? 0)}, ${9 + (nudge[5] ?? 0)}]]
    existing: true
fences:
  beside it: {beside: old wall, left: ${1.5 + (nudge[6] ?? 0)}, existing: true}
`;
    const corner = (nudge: readonly number[]) => {
      const plan = planOf(text(nudge));
      return pointOf(plan, spotsOf(featureOf(plan, "beside it"))[1] as Spot);
    };
    const step = 1e-4;
    // u of coordinates 25 mm; of a taped 1.5 m offset 5 mm + 0.2 mm/m (PRACTICE).
    const us = [0.025, 0.025, 0.025, 0.025, 0.025, 0.025, 0.005 + 0.0002 * 1.5];
    const squares = [0, 0];
    for (const [i, u] of us.entries()) {
      const at = (by: number) => corner(us.map((_, k) => (k === i ? by : 0)));
      const [up, down] = [at(step), at(-step)];
      for (const axis of [0, 1] as const)
        squares[axis] = (squares[axis] as number) + (((up[axis] - down[axis]) / (2 * step)) * u) ** 2;
    }
    const plan = planOf(text([]));
    const spot = spotsOf(featureOf(plan, "beside it"))[1] as Spot;
    expect(uOf(plan, spot.east)).toBeCloseTo(Math.sqrt(squares[0] as number), 6);
    expect(uOf(plan, spot.north)).toBeCloseTo(Math.sqrt(squares[1] as number), 6);
  });
});

describe("the doubt of sizes", () => {
  const plan = planOf(`
stages: [now, later]
walls:
  stands: {line: [[0, 0], [9, 0]], height: 1.26, thickness: 0.6 ± 0.1, existing: true}
  to come: {line: [[0, 5], [9, 5]], height: 1.26, thickness: 0.6, from: later}
trees:
  ash: {at: [3, 3], girth: 1.57, crown: {radius: 6}}
  coppice: {at: [3, 9], stems: [120 mm, 150 mm, 180 mm, 130 mm, 170 mm, 150 mm, 150 mm]}
  twin: {at: [9, 9], stems: [300 mm, 400 mm]}
drains:
  foul: {line: [[0, 0], [9, 0]], bore: 100 mm, from: later}
`);
  const u = (name: string, property: string) => uOf(plan, numberOf(featureOf(plan, name), property));
  it("is that of the tape where the thing stands, of the building where it does not, and of the plan where it says so", () => {
    expect(u("stands", "height")).toBeCloseTo(0.005 + 0.0002 * 1.26, 9);
    expect(u("to come", "height")).toBeCloseTo(0.01, 9);
    expect(u("stands", "thickness")).toBeCloseTo(0.05, 9);
    expect(u("foul", "bore")).toBe(0);
    expect(u("ash", "crown.radius")).toBeCloseTo(0.25, 9);
    const wall = spotsOf(featureOf(plan, "to come"))[0] as Spot;
    expect([uOf(plan, wall.east), uOf(plan, wall.north)]).toEqual([0.025, 0.025]);
    expect(plan.numbers.causes.find((cause) => plan.numbers.sways[wall.east.id]?.has(cause.id))?.sort).toBe("build");
  });

  it("turns girths and several stems into one stem", () => {
    const stem = (name: string) => numberOf(featureOf(plan, name), "stem");
    // girth 1.57 m: 0.4997 m (COMPUTED); seven stems: 396.9 mm by the mean (BS 5837 worked figures, COMPUTED); 3-4-5.
    expect(valueOf(plan, stem("ash"))).toBeCloseTo(0.4997, 4);
    expect(uOf(plan, stem("ash"))).toBeCloseTo(0.005 / Math.PI, 9);
    expect(valueOf(plan, stem("coppice"))).toBeCloseTo(0.3969, 4);
    expect(valueOf(plan, stem("twin"))).toBeCloseTo(0.5, 9);
    expect(valueOf(plan, numberOf(featureOf(plan, "coppice"), "stems_counted"))).toBe(7);
  });

  it("says what was assumed, and nothing that was not used", () => {
    expect(plan.assumed.some((words) => words.includes("crowns"))).toBe(true);
    expect(plan.assumed.some((words) => words.includes("bearings"))).toBe(false);
    const own = planOf(
      "survey: {coordinates: {plus_minus: 20 mm}}\nbuild: {place: 30 mm}\nobstacles:\n  rock: {at: [3, 3]}\n",
    );
    expect(own.assumed).toEqual([]);
    expect(uOf(own, spotsOf(featureOf(own, "rock"))[0]?.east as never)).toBeCloseTo(0.01, 9);
  });
});

describe("a plan turned, moved and mirrored", () => {
  const corners = [
    [2, 1],
    [14, 2.5],
    [19, 11],
    [6, 13],
  ] as const;
  const plan = (turn: number, mirror: 1 | -1, shift: number) => {
    const at = ([x, y]: readonly [number, number]) => {
      const [e, n] = [x, y * mirror];
      return `[${e * Math.cos(turn) - n * Math.sin(turn) + shift}, ${e * Math.sin(turn) + n * Math.cos(turn) - shift}]`;
    };
    const side = mirror === 1 ? "left" : "right";
    const text = `
stages: [now, later]
walls:
  line wall: {line: [${corners.map(at).join(", ")}], existing: true}
fences:
  beside it: {beside: line wall, ${side}: 1.5, from: later}
gates:
  in it: {on: line wall, along: 15.0, clear: 3.0, existing: true}
obstacles:
  post: {at: {along: A to B, run: 7, ${side}: 3.2}, existing: true}
water:
  pond: {outline: [${corners.map(at).join(", ")}], existing: true}
survey:
  stations:
    A: {at: ${at([0, 0])}}
    B: {at: ${at([20, 0])}}
    C: {ties: {A: 15, B: 17}, side: ${side} of A to B}
`;
    return resolvePlan({ source: sourceOf(text), broken: [] }, kindTable, {}).plan;
  };
  /** What no turning changes: the sum of both axes' squares, for every point. */
  const doubts = (one: ReturnType<typeof plan>) =>
    [...one.features.flatMap((feature) => spotsOf(feature)), ...one.pegs.values()].map((spot) =>
      Math.hypot(uOf(one, spot.east), uOf(one, spot.north)),
    );

  it("has the same doubt to 1e-6 m", () => {
    const base = doubts(plan(0, 1, 0));
    expect(base.length).toBeGreaterThan(12);
    for (const turn of [0.3, Math.PI / 2, 2.1, 4.4]) {
      for (const [mirror, shift] of [
        [1, 0],
        [-1, 0],
        [1, 250],
        [-1, -80],
      ] as const) {
        for (const [i, u] of doubts(plan(turn, mirror, shift)).entries())
          expect(Math.abs(u - (base[i] as number))).toBeLessThan(1e-6);
      }
    }
  });
});

describe("tapes of one reel beside coordinates", () => {
  // B by coordinates to ± 4 mm (u 2 mm) and taped three times from A with a class III reel: u 5 mm + 0.2 mm a metre by hand
  // (PRACTICE), 12.6 mm / root 3 by the reel (READ); the generalised mean and its doubt, COMPUTED.
  const plan = planOf(`
survey:
  tape: {class: III}
  coordinates: {plus_minus: 4 mm}
  stations: {A: {at: [0, 0]}, B: {at: [30.000, 0]}}
  checks: [{between: [A, B], tape: [30.030, 30.030, 30.030]}]
`);
  const peg = plan.pegs.get("B");
  it("count the reel's error once in the place of a peg and in its doubt", () => {
    const hand = 0.005 + 0.0002 * 30.03;
    const reel = 0.0006 + 0.0004 * 31;
    const [own, taped] = [1 / 0.002 ** 2, 1 / (hand ** 2 / 3 + reel ** 2 / 3)];
    expect(plan.numbers.values[peg?.east.id ?? -1]).toBeCloseTo((own * 30 + taped * 30.03) / (own + taped), 6);
    expect(peg && swayLength(plan.numbers.sways[peg.east.id] ?? new Map())).toBeCloseTo(
      Math.sqrt(1 / (own + taped)),
      6,
    );
  });
});
