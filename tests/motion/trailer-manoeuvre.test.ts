import { describe, expect, it } from "vitest";
import type { Ground } from "../../src/motion/ground.ts";
import { findTrainManoeuvre } from "../../src/motion/trailer-manoeuvre.ts";
import type { TrainQuestion } from "../../src/motion/trailer-manoeuvre.ts";
import { jackKnifeAngle } from "../../src/motion/trailer-pose.ts";
import type { Trailer } from "../../src/motion/trailer-pose.ts";
import { trainDriven } from "./train-check.ts";
import { pickup } from "./train-scenes.ts";

const plantTrailer: Trailer = {
  hitchBehindAxle: 1.2,
  hitchToAxle: 3.6,
  hitchToFront: 1.2,
  rearOverhang: 1.2,
  bodyWidth: 2.1,
  widthOverTyres: 2.1,
  greatestAngle: 1.05,
};
const common = { vehicle: pickup, trailer: plantTrailer, margin: 0.1, mostChanges: 0 };

type Ring = readonly (readonly [number, number])[];

function on(ring: Ring): { clear: Ground; running: Ground } {
  const ground = { rings: [ring] };
  return { clear: ground, running: ground };
}

/** A lane of width w that bends to the left at a right angle. */
function bend(w: number): TrainQuestion {
  const ring: Ring = [
    [-20, 0],
    [20, 0],
    [20, 40],
    [20 - w, 40],
    [20 - w, w],
    [-20, w],
  ];
  const goal = { x: 20 - w / 2, y: 30, heading: Math.PI / 2 };
  return { ...common, ...on(ring), start: { x: -10, y: w / 2, heading: 0 }, goal };
}

/** A track of width w with a bay of 4 m by 12 m at right angles; comes past, then reverses in. */
const bay: TrainQuestion = {
  ...common,
  ...on([
    [-30, 0],
    [0, 0],
    [0, -12],
    [4, -12],
    [4, 0],
    [30, 0],
    [30, 8],
    [-30, 8],
  ]),
  start: { x: -15, y: 4, heading: 0 },
  goal: { x: 2, y: 0.3, heading: Math.PI / 2 },
  mostChanges: 1,
  lastGear: "reverse",
};

const straightBack: TrainQuestion = {
  ...common,
  ...on([
    [-30, -2],
    [30, -2],
    [30, 8],
    [-30, 8],
  ]),
  start: { x: 18, y: 1, heading: 0 },
  goal: { x: -10, y: 4, heading: 0 },
  firstGear: "reverse",
  lastGear: "reverse",
};

describe("a vehicle with a trailer", () => {
  it.each([
    ["forwards round a bend of 6 m lanes", bend(6)],
    ["back 28 m and 3 m to the side", straightBack],
    ["past a bay and backwards into it", bay],
  ] as const)("%s: possible, and a second by second look finds nothing outside", (_, question) => {
    const found = findTrainManoeuvre(question);
    expect(found.answer).toBe("possible");
    if (found.answer !== "possible") return;
    const look = trainDriven(question, found.path);
    expect(look.worst).toBeLessThan(1e-6);
    // 2 cm and 0.01 rad are what a path may miss its end by; the integration adds less than 1 mm.
    expect(Math.hypot(look.end.x - question.goal.x, look.end.y - question.goal.y)).toBeLessThan(0.022);
    expect(Math.abs(look.end.heading - question.goal.heading)).toBeLessThan(0.011);
    expect(Math.abs(look.end.hitch)).toBeLessThan(0.022);
    expect(look.largestReverse).toBeLessThan(jackKnifeAngle(plantTrailer, 4.63) ?? 0);
    expect(look.largest).toBeLessThanOrEqual(plantTrailer.greatestAngle + 1e-6);
  });

  it("a bend of 3.5 m lanes, too tight for the vehicle alone, is no", () => {
    expect(findTrainManoeuvre(bend(3.5))).toEqual({ answer: "not", why: "vehicle" });
  });

  it("a train that does not fit where it is to stand is no", () => {
    const goal = { ...bay.goal, y: -8 };
    expect(findTrainManoeuvre({ ...bay, goal })).toEqual({ answer: "not", why: "goal" });
  });

  it("mirrors too broad for the walls at their height are no, and those that have room change nothing", () => {
    const strip = { width: 2.3, back: 2.2, front: 2.4 };
    const between = (half: number): Ground => ({
      rings: [
        [
          [-40, 4 - half],
          [40, 4 - half],
          [40, 4 + half],
          [-40, 4 + half],
        ],
      ],
    });
    expect(findTrainManoeuvre({ ...bay, mirrors: { ...strip, ground: between(1.2) } })).toEqual({
      answer: "not",
      why: "start",
    });
    const question = { ...bay, mirrors: { ...strip, ground: between(20) } };
    expect(findTrainManoeuvre(question)).toEqual(findTrainManoeuvre(bay));
  });

  it("where it was not found and the vehicle alone can do it, it says that it cannot tell", () => {
    expect(findTrainManoeuvre(bend(4.2))).toEqual({ answer: "cannot-tell" });
  });

  it("moving and turning the ground changes nothing", () => {
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
    const moved = ([x, y]: readonly [number, number]): readonly [number, number] => [
      100 + c * x - s * y,
      50 + s * x + c * y,
    ];
    const question = bend(6);
    const turned = (at: typeof question.start) => {
      const [x, y] = moved([at.x, at.y]);
      return { x, y, heading: at.heading + 0.7 };
    };
    const there: TrainQuestion = {
      ...question,
      ...on((question.clear.rings[0] as Ring).map(moved)),
      start: turned(question.start),
      goal: turned(question.goal),
    };
    const [a, b] = [findTrainManoeuvre(question), findTrainManoeuvre(there)];
    const path = (one: typeof a) => (one.answer === "possible" ? one.path : []);
    expect(path(b).length).toBe(path(a).length);
    for (const [i, arc] of path(a).entries()) expect(path(b)[i]?.length).toBeCloseTo(arc.length, 5);
  });
});
