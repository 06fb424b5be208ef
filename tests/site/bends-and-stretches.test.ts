// A way's rounded bends and wider stretches are ground like the rest of it: the arcs lie where they should, and what could
// not turn on the way as it is drawn by its line can, or cannot, by them.

import { describe, expect, it } from "vitest";
import { checkPlan } from "../../src/index.ts";
import { readPlain } from "../../src/engine/spread.ts";
import { groundFigure } from "../../src/site/live-figure.ts";
import { ringAt } from "../../src/site/live-ring.ts";
import { widerRings } from "../../src/site/wider-stretches.ts";
import { ringArea } from "../../src/geometry/ring.ts";
import { planOf } from "../plan/resolved.ts";

const head = { sightrail: 1, title: "a track", place: ["anywhere"], as_of: "2026-11-25", stages: ["works"] };
const lShaped = (more: object) => ({
  centre_line: [
    [-30, 0],
    [0, 0],
    [0, 30],
  ],
  width: 3,
  for: ["vehicles"],
  existing: true,
  ...more,
});

function ringOf(more: object) {
  const plan = planOf(JSON.stringify({ ...head, surfaces: { track: lShaped(more) } }));
  const [track] = plan.features;
  const read = readPlain(plan.numbers);
  const figure = track && groundFigure(track);
  return { track, read, ring: figure ? ringAt(figure.chains[0]?.points ?? [], read) : [] };
}

describe("a bend of 9 m to", () => {
  // The line turns a right angle at (0, 0): the middle of the arc is at (-R, R), R the radius of the middle line (COMPUTED).
  it.each([
    ["centre line", 9],
    ["inner edge", 10.5],
    ["outer edge", 7.5],
  ])("%s: the edges lie 1.5 m on both sides of %d m", (to, radius) => {
    const { ring } = ringOf({ bend: { radius: 9, to } });
    const onBend = ring
      .filter(([x, y]) => x > -radius && y < radius)
      .map(([x, y]) => Math.hypot(x + radius, y - radius));
    // Chords of 24 to a right angle lie R (1 - cos(90 deg / 48)) inside the arc: 6 mm at 12 m.
    for (const far of onBend)
      expect(Math.min(Math.abs(far - radius - 1.5), Math.abs(far - radius + 1.5))).toBeLessThan(0.01);
    expect(onBend.length).toBeGreaterThan(40);
  });
  it("never rounds past the middle of a piece", () => {
    const { ring } = ringOf({ bend: { radius: 90, to: "centre line" } });
    // 15 m back along both: the arc has 15 m radius, and its far side is (sqrt 2 - 1) 15 from the corner.
    const nearest = Math.min(...ring.map(([x, y]) => Math.abs(Math.hypot(x + 15, y - 15) - 16.5)));
    expect(nearest).toBeLessThan(0.02);
  });
});

it("a wider stretch is a strip of its own width round the middle line (COMPUTED: 6 m x 5.5 m)", () => {
  const { track, read } = ringOf({ widened: [{ from: 12, to: 18, width: 5.5 }] });
  const [ring] = track ? widerRings(track, read) : [];
  expect(ringArea(ring ? ringAt(ring, read) : [])).toBeCloseTo(33, 6);
});

const pickup = {
  length: 5.3,
  width: 1.9,
  wheelbase: 3.15,
  front_overhang: 0.95,
  turning_circle: { across: 12.4, between: "kerbs" },
};
const verdictOf = (plan: object): string => {
  const report = checkPlan({ file: "p.yaml", text: JSON.stringify({ ...head, ...plan }) }, { asOf: "2026-11-25" });
  expect(report.problems).toEqual([]);
  return report.findings.find(({ rule }) => rule === "access/no-room-to-turn")?.verdict ?? "none";
};

describe("a pickup on a track 3 m wide", () => {
  const round = (more: object) =>
    verdictOf({
      survey: { stations: { P1: { at: [-100, 0] }, P2: { line_to: "P1", tape: 1000 }, P3: { at: [0, 200] } } },
      surfaces: { track: lShaped(more) },
      vehicles: { pickup },
      manoeuvres: {
        round: {
          vehicle: "pickup",
          does: "drive through",
          comes_in_by: "track",
          on: ["track"],
          clear: 0.1,
          start: { at: [-24, 0], heading: "90 deg grid" },
          end: { at: [0, 22], heading: "0 deg grid" },
        },
      },
    });
  it("does not get round its square corner, and does where the bend is rounded", () => {
    expect(round({})).toBe("not-met");
    expect(round({ bend: { radius: 8, to: "centre line" } })).toBe("met");
  });
  const turns = (more: object) =>
    verdictOf({
      surfaces: {
        track: {
          centre_line: [
            [-30, 0],
            [30, 0],
          ],
          width: 3,
          for: ["vehicles"],
          existing: true,
          ...more,
        },
      },
      vehicles: { pickup },
      manoeuvres: {
        turn: { vehicle: "pickup", does: "turn round", comes_in_by: "track", on: ["track"], moves: 5, clear: 0.1 },
      },
    });
  it("does not turn round on it, and does where a stretch is 9 m wide", () => {
    expect(turns({})).not.toBe("met");
    expect(turns({ widened: [{ from: 10, to: 26, width: 9 }] })).toBe("met");
  });
});
