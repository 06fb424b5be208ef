// Levels taken along one straight line at the outside of the net. Expected numbers: the plane itself (COMPUTED).

import { describe, expect, it } from "vitest";
import { type Point } from "../../src/geometry/point.ts";
import { delaunay } from "../../src/terrain/delaunay.ts";
import { flowPath, fallAlong } from "../../src/terrain/flow-path.ts";
import { buildNet, trianglesOf } from "../../src/terrain/net.ts";
import { outerNeedles } from "../../src/terrain/outer-needles.ts";
import { sectionAlong } from "../../src/terrain/section.ts";
import { groundAt, planeOf, slopeOf } from "../../src/terrain/surface.ts";
import { triangleAt } from "../../src/terrain/triangle-at.ts";
import { seeded } from "../seeded.ts";
import { surfaceOver } from "./ground.ts";

const corner: Point = [30.1, 0];
const end: Point = [19.2, 22.4];
const runs = [0, 0.243, 0.467, 0.5, 0.719, 0.984, 1];
/** Along the line from the first peg, by run: on it but for the last binary digit. */
const along = runs.map((share): Point => [end[0] * share, end[1] * share]);
/** A plane, each level booked to the millimetre. */
const booked = ([east, north]: Point): number => Number((100 + 0.03 * east - 0.02 * north).toFixed(3));
const spots = [...along, corner].map((at) => [...at, booked(at)] as const);

const width = ([a, b, c]: readonly [Point, Point, Point]): number => {
  const sides = [
    Math.hypot(b[0] - a[0], b[1] - a[1]),
    Math.hypot(c[0] - b[0], c[1] - b[1]),
    Math.hypot(a[0] - c[0], a[1] - c[1]),
  ];
  return Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / Math.max(...sides);
};

describe("pegs along one straight line at the outside", () => {
  const surface = surfaceOver(spots);
  const { net } = surface;

  it("would make triangles without width, and make none", () => {
    const raw = delaunay([...along, corner]).corners;
    expect(raw.length / 3).toBeGreaterThan(net.corners.length / 3);
    expect(Math.min(...trianglesOf(net).map(width))).toBeGreaterThan(0.4);
    expect(new Set(Array.from(net.corners)).size).toBe(spots.length);
  });
  it("keep the slope of the plane: sqrt(0.03^2 + 0.02^2) = 3.606 %, less what a millimetre does over a triangle", () => {
    const slopes = Array.from({ length: net.corners.length / 3 }, (_, t) => slopeOf(planeOf(surface, t) as never));
    // Half a millimetre at each end, over a width of 0.43 m at the least: 2.3 mm a metre.
    for (const slope of slopes) expect(Math.abs(slope - Math.hypot(0.03, 0.02))).toBeLessThan(0.0024);
  });
  it("are on the ground themselves, and so is the line between them; a hand beside it is not", () => {
    for (const [k, at] of along.entries()) {
      expect(groundAt(surface, at)?.level).toBeCloseTo(booked(at), 9);
      const next = along[k + 1] ?? at;
      expect(groundAt(surface, [(at[0] + next[0]) / 2, (at[1] + next[1]) / 2])).not.toBeNull();
    }
    expect(triangleAt(net, [end[0] * 0.5 - 0.0001, end[1] * 0.5 + 0.0001])).toBeNull();
  });
  it("give a section along the line with every level that was taken", () => {
    const sections = sectionAlong(surface, [along[0] as Point, end]);
    expect(sections.length).toBe(1);
    expect(sections[0]?.map(({ level }) => Number(level.toFixed(6)))).toEqual(along.map(booked));
  });
  it("let no water run uphill", () => {
    for (const at of [...along, corner]) {
      const path = flowPath(surface, at);
      expect(path === null ? Number.NaN : fallAlong(path).fall).toBeGreaterThanOrEqual(0);
    }
  });
  it("hold for a hundred lines drawn at random", () => {
    const draw = seeded(20261126);
    for (let k = 0; k < 100; k += 1) {
      const [from, to, off] = [0, 1, 2].map((): Point => [60 * draw(), 60 * draw()]) as [Point, Point, Point];
      const shares = [0, ...Array.from({ length: 6 }, draw), 1];
      const points = shares.map((s): Point => [from[0] + s * (to[0] - from[0]), from[1] + s * (to[1] - from[1])]);
      const made = buildNet([...points, off], []).net;
      if (made === null) continue;
      expect(Math.min(...trianglesOf(made).map(width))).toBeGreaterThan(1e-6);
    }
  });
});

describe("points that lie on one line altogether", () => {
  it("make no net, though rounding gives some of them width", () => {
    expect(buildNet(along, []).troubles.at(-1)).toEqual({ is: "on-one-line" });
  });
});

describe("levels nearly on one line at the outside", () => {
  // 0.2 m inside a line of 30 m is less than 2 in 100 of it: the edge that joins the ends is no ground that was seen.
  const spread: readonly (readonly [number, number, number])[] = [
    [0, 0, 10],
    [15, 0.2, 10.15],
    [30, 0, 10],
    [15, 20, 10],
  ];
  it("say nothing of the slope across", () => {
    const { net } = surfaceOver(spread);
    const needles = [...outerNeedles(net)];
    expect(needles.length).toBe(1);
    expect(width(trianglesOf(net)[needles[0] as number] as never)).toBeCloseTo(0.2, 9);
  });
  it("do where the plan draws the edge as the crest or the foot of a bank", () => {
    expect(outerNeedles(surfaceOver(spread, [[0, 2]]).net).size).toBe(0);
  });
});
