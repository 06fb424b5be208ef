// Mirrors on a ground for turning: how far they really come from the walls on the path that was found.

import { describe, expect, it } from "vitest";
import { poseAfter } from "../../src/motion/pose.ts";
import { roomFor } from "../../src/motion/room-answer.ts";
import { type RoomLayout, type Turner, turnQuestion } from "../../src/motion/room-layout.ts";
import { mirrorStrip } from "../../src/motion/room-mirrors.ts";
import { b85 } from "./published-vehicles.ts";

const clearance = 0.2;
const mirrors = { width: b85.bodyWidth + 0.46, behindFrontAxle: 1, edges: "all" } as const;
const bare: Turner = { vehicle: b85, clearance, changes: 2 };
const walled: Turner = { ...bare, mirrors };
const middle: RoomLayout = { form: "rectangle", entry: "middle", track: 3.4, splay: 0 };

type Point = readonly [number, number];

function toSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** Least distance of the strip's corners and sides from some walls, sampled every centimetre: another way than the sweep. */
function leastDistance(turner: Turner, layout: RoomLayout, walls: readonly (readonly Point[])[]): number {
  const found = roomFor({ turner, layout, long: 13, deep: null }, []).found;
  if (!found) throw new Error("no room");
  const question = turnQuestion(layout, found.size, turner);
  const [back, front, half] = [b85.wheelbase - 1, b85.wheelbase + b85.frontOverhang, mirrors.width / 2];
  const outline: Point[] = [];
  for (let i = 0; i <= 40; i++) {
    const along = back + ((front - back) * i) / 40;
    outline.push([along, half], [along, -half]);
  }
  let least = Infinity;
  let pose = question.start;
  const sides = (walls.length > 0 ? walls : question.clear.rings).flatMap((ring) =>
    ring.map((from, i) => [from, ring[(i + 1) % ring.length] ?? from] as const),
  );
  for (const arc of found.path) {
    const steps = Math.ceil(Math.abs(arc.length) / 0.01);
    for (let i = 0; i <= steps; i++) {
      const { x, y, heading } = poseAfter(pose, { ...arc, length: (arc.length * i) / steps });
      const [c, s] = [Math.cos(heading), Math.sin(heading)];
      for (const [u, v] of outline)
        for (const [a, b] of sides) least = Math.min(least, toSegment([x + c * u - s * v, y + s * u + c * v], a, b));
    }
    pose = poseAfter(pose, arc);
  }
  return least;
}

describe("room between walls", () => {
  it("keeps the clearance from the mirrors, which the answer for low edges does not (sampled; 1 mm)", () => {
    expect(leastDistance(walled, middle, [])).toBeGreaterThan(clearance - 1e-3);
    expect(leastDistance(bare, middle, [])).toBeLessThan(clearance - 0.05);
  });

  it("never takes less than for low edges, nor more than for walls along the track too", () => {
    const size = (turner: Turner) =>
      roomFor({ turner, layout: middle, long: 13, deep: null }, []).found?.size.deep ?? 99;
    const [low, ground, all] = [bare, { ...bare, mirrors: { ...mirrors, edges: "ground" as const } }, walled].map(size);
    // The search comes within some centimetres of the least.
    expect(ground).toBeGreaterThan((low ?? 0) - 0.05);
    expect(all).toBeGreaterThan((ground ?? 0) - 0.05);
    expect(all).toBeGreaterThan((low ?? 0) + 0.1);
  });

  it("mirrors that stand no farther out than the body change nothing", () => {
    const narrow: Turner = { ...bare, mirrors: { ...mirrors, width: b85.bodyWidth } };
    const deep = (turner: Turner) =>
      roomFor({ turner, layout: middle, long: 13, deep: null }, []).found?.size.deep ?? 99;
    // The path is bent to fit by steps, and a third rectangle bends it otherwise: some centimetres.
    expect(Math.abs(deep(narrow) - deep(bare))).toBeLessThan(0.05);
  });
});

describe("edges of the ground alone", () => {
  const strip = (layout: RoomLayout) => {
    const size = { long: 12, deep: 7 };
    const { clear } = turnQuestion(layout, size, bare);
    const edged = { layout, size, ground: clear };
    return mirrorStrip(b85, { ...mirrors, edges: "ground" }, edged).ground.obstacles ?? [];
  };
  const lengths = (layout: RoomLayout) =>
    strip(layout).map(([a = [0, 0], , , b = [0, 0]]) => Math.hypot(b[0] - a[0], b[1] - a[1]));
  const sum = (all: readonly number[]) => all.reduce((total, one) => total + one, 0);
  it.each([
    // All round less the mouth; the lay-by's three sides off the track; by hand.
    ["middle", 2 * 12 + 2 * 7 - 3.4],
    ["end", 2 * 12 + 2 * 7 - 3.4],
    ["short side", 2 * 12 + 2 * 7 - 3.4],
    ["along", 12 + 2 * (7 - 3.4)],
  ] as const)("%s: the walls are as long as its edges", (entry, long) => {
    expect(sum(lengths({ form: "rectangle", entry, track: 3.4, splay: 0 }))).toBeCloseTo(long, 9);
  });
  it("lie outside the ground", () => {
    for (const [a, out] of strip(middle)) {
      if (!a || !out) throw new Error("no wall");
      const outside = Math.abs(out[0]) > 6 + 1e-9 || out[1] > 7 + 1e-9 || out[1] < -1e-9;
      expect(outside, String([a, out])).toBe(true);
    }
  });
});
