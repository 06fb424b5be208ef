// Slopes and levels of ground, surfaces, banks and walls, against closed forms and published rows (tests/tables/slopes.published.yaml).

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { askedIn, findIn, planWith, valuesIn } from "./rig.ts";

interface Slopes {
  readonly bank_angles: {
    readonly tolerance: number;
    readonly rows: readonly { readonly run: number; readonly deg: number }[];
  };
  readonly mower: {
    readonly deg: number;
    readonly percent: number;
    readonly one_in: number;
    readonly tolerance: number;
  };
  readonly ramps: {
    readonly rows: readonly { readonly rise: number; readonly length: number; readonly one_in: number }[];
  };
  readonly stock_ramp: {
    readonly rise: number;
    readonly deg: number;
    readonly plan: number;
    readonly slope_length: number;
    readonly tolerance: number;
  };
  readonly plane: {
    readonly points: readonly (readonly [number, number, number])[];
    readonly a: number;
    readonly b: number;
    readonly slope: number;
    readonly tolerance: number;
  };
}
const table = parse(readFileSync(new URL("../tables/slopes.published.yaml", import.meta.url), "utf8")) as Slopes;
const rad = Math.PI / 180;

/** Ground levelled at the corners of a square of 40 m by a level that is a function of the place. */
const levelled = (level: (x: number, y: number) => number, from = -20, to = 20) => {
  const corners = [
    [from, from],
    [to, from],
    [to, to],
    [from, to],
  ] as const;
  return {
    survey: {
      stations: Object.fromEntries(corners.map(([x, y], i) => [`G${i + 1}`, { at: [x, y], level: level(x, y) }])),
    },
  };
};

describe("slope of a bank", () => {
  it.each(table.bank_angles.rows)("1 in $run is $deg degrees (READ, rounded)", ({ run, deg }) => {
    const plan = planWith({
      banks: {
        b: {
          crest: [
            [0, 0],
            [9, 0],
          ],
          toe: [
            [0, -run],
            [9, -run],
          ],
          height: 1,
          existing: true,
        },
      },
    });
    const [slope] = valuesIn(plan, { measure: "slope-of-bank", subject: { bank: "b" } });
    expect(Math.abs(Math.atan(slope ?? 0) / rad - deg)).toBeLessThanOrEqual(table.bank_angles.tolerance);
  });
  it("of 15 degrees is the mower's 26.79 % (READ)", () => {
    const { deg, percent, one_in: oneIn, tolerance } = table.mower;
    const plan = planWith({
      banks: {
        b: {
          crest: [
            [0, 0],
            [9, 0],
          ],
          toe: [
            [0, -1],
            [9, -1],
          ],
          slope: `${deg} deg`,
          existing: true,
        },
      },
    });
    const [slope] = valuesIn(plan, { measure: "slope-of-bank", subject: { bank: "b" } });
    expect(Math.abs((slope ?? 0) * 100 - percent)).toBeLessThanOrEqual(tolerance);
    expect(Math.abs(1 / (slope ?? 0) - oneIn)).toBeLessThanOrEqual(tolerance);
  });
  it("takes its height from levels of crest and toe", () => {
    const plan = planWith({
      banks: {
        b: {
          crest: [
            [0, 0],
            [9, 0],
          ],
          toe: [
            [0, -3],
            [9, -3],
          ],
          crest_level: 101.5,
          toe_level: 100,
          existing: true,
        },
      },
    });
    expect(valuesIn(plan, { measure: "slope-of-bank", subject: { bank: "b" } })[0]).toBeCloseTo(0.5, 9);
    expect(valuesIn(plan, { measure: "drop-at-edge", subject: { edge: "b" } })[0]).toBeCloseTo(1.5, 9);
  });
});

describe("slope along a ramp", () => {
  it.each(table.ramps.rows)("of $rise m over $length m is 1 in $one_in (READ)", ({ rise, length, one_in: oneIn }) => {
    const plan = planWith({
      ramps: {
        r: {
          line: [
            [0, 0],
            [length, 0],
          ],
          width: 1.5,
          rise,
          from: "works",
        },
      },
    });
    expect(valuesIn(plan, { measure: "slope-along", subject: { way: "r" } })[0]).toBeCloseTo(1 / oneIn, 9);
  });
  it("of 1.0 m at 20 degrees is 2.747 m on plan and 2.924 m along (MEMORY)", () => {
    const { rise, deg, plan: length, slope_length: along, tolerance } = table.stock_ramp;
    const plan = planWith({
      ramps: {
        r: {
          line: [
            [0, 0],
            [length, 0],
          ],
          width: 1.5,
          bottom: 100,
          top: 100 + rise,
          from: "works",
        },
      },
    });
    const [slope] = valuesIn(plan, { measure: "slope-along", subject: { way: "r" } });
    expect(Math.abs(Math.atan(slope ?? 0) / rad - deg)).toBeLessThanOrEqual(tolerance * 10);
    expect(Math.abs(Math.hypot(rise, length) - along)).toBeLessThanOrEqual(tolerance);
  });
});

describe("a plane through three levels (COMPUTED, 5-12-13)", () => {
  const { points, slope, a, b, tolerance } = table.plane;
  const levels = points.map(([x, y, level]) => ({ at: [x, y], level }));
  it("is the fall of a surface levelled at them", () => {
    const plan = planWith({ surfaces: { s: { outline: points.map(([x, y]) => [x, y]), levels, existing: true } } });
    expect(
      Math.abs((valuesIn(plan, { measure: "fall-of-surface", subject: { surface: "s" } })[0] ?? 0) - slope),
    ).toBeLessThanOrEqual(tolerance);
  });
  it("is the slope along and across a way over it", () => {
    const stations = Object.fromEntries(points.map(([x, y, level], i) => [`G${i + 1}`, { at: [x, y], level }]));
    const plan = planWith({
      survey: { stations },
      surfaces: {
        w: {
          centre_line: [
            [1, 1],
            [5, 1],
          ],
          width: 2,
          existing: true,
        },
      },
    });
    expect(
      Math.abs((valuesIn(plan, { measure: "slope-along", subject: { way: "w" } })[0] ?? 0) - a),
    ).toBeLessThanOrEqual(tolerance);
    expect(
      Math.abs((valuesIn(plan, { measure: "slope-across", subject: { way: "w" } })[0] ?? 0) - b),
    ).toBeLessThanOrEqual(tolerance);
  });
});

describe("slope along a way", () => {
  it("is the steepest step between levels on it", () => {
    const levels = [
      { at: [0, 0], level: 100 },
      { at: [20, 0.5], level: 101 },
      { at: [30, -0.5], level: 102.5 },
    ];
    const plan = planWith({
      surfaces: {
        w: {
          centre_line: [
            [0, 0],
            [40, 0],
          ],
          width: 3,
          levels,
          existing: true,
        },
      },
    });
    expect(valuesIn(plan, { measure: "slope-along", subject: { way: "w" } })).toEqual([
      expect.closeTo(0.05, 9),
      expect.closeTo(0.15, 9),
    ]);
  });
  it("is not guessed beyond the levels", () => {
    const plan = planWith({
      ...levelled((x) => 100 + x / 10),
      surfaces: {
        w: {
          centre_line: [
            [0, 0],
            [30, 0],
          ],
          width: 3,
          existing: true,
        },
      },
    });
    expect(askedIn(plan, { measure: "slope-along", subject: { way: "w" } })).toEqual(["w/levels"]);
  });
  it("does not change when the whole plan is turned", () => {
    const turned = (deg: number) => {
      const at = (x: number, y: number) => [
        x * Math.cos(deg * rad) - y * Math.sin(deg * rad),
        x * Math.sin(deg * rad) + y * Math.cos(deg * rad),
      ];
      const corners = [
        [-20, -20, 99],
        [20, -20, 101],
        [20, 20, 102],
        [-20, 20, 100],
      ] as const;
      const stations = Object.fromEntries(corners.map(([x, y, level], i) => [`G${i + 1}`, { at: at(x, y), level }]));
      return planWith({
        survey: { stations },
        surfaces: { w: { centre_line: [at(-5, 2), at(9, 4)], width: 3, existing: true } },
      });
    };
    const slopes = [0, 33, 90, 211].map((deg) =>
      valuesIn(turned(deg), { measure: "slope-along", subject: { way: "w" } }).at(-1),
    );
    for (const slope of slopes) expect(slope).toBeCloseTo(slopes[0] as number, 9);
  });
});

describe("ground by a building", () => {
  const barn = {
    barn: {
      outline: [
        [-3, -3],
        [3, -3],
        [3, 3],
        [-3, 3],
      ],
      existing: true,
    },
  };
  it("T21: 5 % over 10 ft is 6 in (READ second-hand)", () => {
    const plan = planWith({ ...levelled((x) => 100 - 0.05 * x), buildings: barn });
    const values = valuesIn(plan, {
      measure: "ground-fall-from",
      subject: { building: "barn" },
      parameters: { within: 3.048 },
    });
    expect(values.at(-1)).toBeCloseTo(0.1524, 9);
    expect(values[0]).toBeCloseTo(-0.1524, 9);
  });
  it("asks where there are no levels, and where they do not reach", () => {
    const question = { measure: "ground-fall-from", subject: { building: "barn" }, parameters: { within: 3 } };
    expect(askedIn(planWith({ buildings: barn }), question)).toEqual(["barn/ground_outside"]);
    expect(askedIn(planWith({ ...levelled(() => 100, 10, 20), buildings: barn }), question)).toEqual([
      "barn/ground_outside",
    ]);
  });
});

describe("the damp course", () => {
  const barn = (more: object) => ({
    barn: {
      outline: [
        [0, 0],
        [10, 0],
        [10, 6],
        [0, 6],
      ],
      damp_course: 100.15,
      existing: true,
      ...more,
    },
  });
  const question = { measure: "damp-course-above", subject: { building: "barn" } };
  it("stands above the ground as stated", () => {
    expect(valuesIn(planWith({ buildings: barn({ ground_outside: 100 }) }), question)[0]).toBeCloseTo(0.15, 9);
  });
  it("stands above paving that rises towards the wall", () => {
    // COMPUTED: 99.90 at the far edge, 1 in 40 up over 4 m to the wall: 100.00 there.
    const yard = {
      outline: [
        [0, -4],
        [10, -4],
        [10, 0],
        [0, 0],
      ],
      finished: { level: 100, at: [0, 0], fall: "1 in 40", towards: [0, -4] },
      from: "works",
    };
    expect(valuesIn(planWith({ buildings: barn({}), surfaces: { yard } }), question)[0]).toBeCloseTo(0.15, 9);
  });
  it("asks for the level that lacks", () => {
    expect(askedIn(planWith({ buildings: barn({}) }), question)).toEqual(["barn/ground_outside"]);
    expect(askedIn(planWith({ buildings: barn({ damp_course: undefined }) }), question)).toEqual(["barn/damp_course"]);
  });
});

describe("paving beside a wall", () => {
  const paved = (towards: readonly number[]) =>
    planWith({
      buildings: {
        barn: {
          outline: [
            [0, 0],
            [10, 0],
            [10, 6],
            [0, 6],
          ],
          existing: true,
        },
      },
      surfaces: {
        yard: {
          outline: [
            [0, -4],
            [10, -4],
            [10, 0],
            [0, 0],
          ],
          finished: { level: 100, at: [5, -2], fall: "1 in 50", towards },
          from: "works",
        },
      },
    });
  const question = { measure: "fall-from-wall", subject: { surface: "yard", building: "barn" } };
  it("falls away, or back, or along", () => {
    expect(valuesIn(paved([5, -4]), question)[0]).toBeCloseTo(0.02, 9);
    expect(valuesIn(paved([5, 0]), question)[0]).toBeCloseTo(-0.02, 9);
    expect(valuesIn(paved([9, -2]), question)[0]).toBeCloseTo(0, 9);
  });
  it("asks for the way it falls", () => {
    const plan = planWith({
      buildings: {
        barn: {
          outline: [
            [0, 0],
            [10, 0],
            [10, 6],
            [0, 6],
          ],
          existing: true,
        },
      },
      surfaces: {
        yard: {
          outline: [
            [0, -4],
            [10, -4],
            [10, 0],
            [0, 0],
          ],
          from: "works",
        },
      },
    });
    expect(askedIn(plan, question)).toEqual(["yard/finished.fall"]);
  });
});

describe("what must stand beforehand", () => {
  const staged = (drain: object) =>
    planWith({
      stages: ["drains", "works"],
      drains: {
        outlet: {
          line: [
            [0, 0],
            [9, 0],
          ],
          ...drain,
        },
      },
      surfaces: {
        yard: {
          outline: [
            [0, 1],
            [9, 1],
            [9, 9],
          ],
          formation: { drain: "outlet" },
          from: "works",
        },
      },
    });
  const question = {
    measure: "stands-beforehand",
    subject: { thing: "yard" },
    parameters: { property: "formation.drain" },
  };
  it("does where it is made in an earlier stage, not in the same one", () => {
    expect(valuesIn(staged({ from: "drains" }), question)).toEqual([1]);
    expect(valuesIn(staged({ from: "works" }), question)).toEqual([0]);
    expect(valuesIn(staged({ existing: true }), question)).toEqual([1]);
  });
});

describe("a ramp that comes down to a door", () => {
  const ramp = (foot: number, more: object = {}) =>
    planWith({
      buildings: {
        garage: {
          outline: [
            [0, 0],
            [6, 0],
            [6, 6],
            [0, 6],
          ],
          existing: true,
        },
      },
      ramps: {
        down: {
          line: [
            [3, foot],
            [3, foot - 8],
          ],
          width: 3,
          rise: 0.8,
          from: "works",
          ...more,
        },
      },
    });
  const question = { measure: "drained-foot", subject: { ramp: "down", building: "garage" } };
  it("wants a channel there, and only there", () => {
    expect(valuesIn(ramp(-0.5), question)).toEqual([0]);
    expect(findIn(ramp(-9), question).is).toBe("does-not-bear");
  });
});

describe("topsoil", () => {
  const yard = (formation: object, more: object = {}) =>
    planWith({
      surfaces: {
        yard: {
          outline: [
            [0, 0],
            [9, 0],
            [9, 9],
          ],
          formation,
          from: "works",
        },
      },
      ...more,
    });
  const question = { measure: "topsoil-left", subject: { surface: "yard" } };
  it("is what the holes show less what is stripped", () => {
    expect(valuesIn(yard({ topsoil_stripped: "150 mm" }, { ground: { topsoil: "200 mm" } }), question)[0]).toBeCloseTo(
      0.05,
      9,
    );
  });
  it("is asked for", () => {
    expect(askedIn(yard({ fall: "1 in 40" }, { ground: { topsoil: "200 mm" } }), question)).toEqual([
      "yard/formation.topsoil_stripped",
    ]);
    expect(askedIn(yard({ topsoil_stripped: "150 mm" }), question)).toEqual(["a test/ground.topsoil"]);
  });
});
