import { describe, expect, it } from "vitest";
import { poseAfter, posesAlong } from "../../src/motion/pose.ts";
import type { Arc } from "../../src/motion/pose.ts";
import { bodyOutline, sweptOutline } from "../../src/motion/swept-outline.ts";
import { steadyCircle } from "../../src/motion/vehicle.ts";
import { b85 } from "./published-vehicles.ts";
import { scenes } from "./scenes.ts";
import { sequence } from "./seeded.ts";

type Place = readonly [number, number];

function area(ring: readonly Place[]): number {
  let twice = 0;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] ?? a;
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return Math.abs(twice) / 2;
}

function covers(ring: readonly Place[], p: Place): boolean {
  let odd = false;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] ?? a;
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) odd = !odd;
  }
  return odd;
}

const start = { x: 3, y: -2, heading: 0.7 };

describe("swept outline of one arc", () => {
  it("a straight run covers (length + run) x width (COMPUTED)", () => {
    const { rings } = sweptOutline(b85, start, [{ curvature: 0, length: -6 }]);
    expect(rings).toHaveLength(1);
    expect(area(rings[0] ?? [])).toBeCloseTo((4.91 + 6) * 1.87, 9);
  });

  it("on full lock it lies between the inside radius and the wall radius, and touches both (COMPUTED)", () => {
    const r = b85.rearAxleRadius;
    const circle = steadyCircle(b85, r);
    for (const sign of [1, -1]) {
      const centre = poseAfter(
        { ...start, heading: start.heading + (sign * Math.PI) / 2 },
        { curvature: 0, length: r },
      );
      const { rings } = sweptOutline(b85, start, [{ curvature: sign / r, length: 4 }]);
      const far = rings.flat().map(([x, y]) => Math.hypot(x - centre.x, y - centre.y));
      expect(Math.max(...far)).toBeCloseTo(circle.wallRadius, 6);
      expect(Math.min(...far)).toBeCloseTo(circle.insideRadius, 6);
    }
  });

  it("covers what dense outlines cover, and no more than 1 cm beside it (COMPUTED, own sampling)", () => {
    const next = sequence(5);
    for (let round = 0; round < 25; round++) {
      const arc: Arc = { curvature: (next() - 0.5) / 2.1, length: (next() - 0.5) * 14 };
      const { rings } = sweptOutline(b85, start, [arc]);
      const dense = Array.from({ length: 601 }, (_, i) =>
        bodyOutline(b85, poseAfter(start, { curvature: arc.curvature, length: (arc.length * i) / 600 })),
      );
      const wider = { ...b85, frontOverhang: 0.93, rearOverhang: 1.2, bodyWidth: 1.89 };
      const denseWider = Array.from({ length: 601 }, (_, i) =>
        bodyOutline(wider, poseAfter(start, { curvature: arc.curvature, length: (arc.length * i) / 600 })),
      );
      const narrower = { ...b85, frontOverhang: 0.91, rearOverhang: 1.18, bodyWidth: 1.85 };
      const denseNarrower = dense.map((_, i) =>
        bodyOutline(narrower, poseAfter(start, { curvature: arc.curvature, length: (arc.length * i) / 600 })),
      );
      for (let n = 0; n < 60; n++) {
        const p: Place = [start.x + 18 * (next() - 0.5), start.y + 18 * (next() - 0.5)];
        const inside = rings.some((ring) => covers(ring, p));
        if (inside) expect(denseWider.some((ring) => covers(ring, p))).toBe(true);
        else expect(denseNarrower.some((ring) => covers(ring, p))).toBe(false);
      }
    }
  });
});

describe("what is drawn of a manoeuvre", () => {
  it.each(scenes.filter(({ path }) => path !== null))("scene $id: stops, tracks and rings", (scene) => {
    const arcs = scene.path ?? [];
    const drawn = sweptOutline(scene.vehicle, scene.start, arcs);
    expect(drawn.stops).toHaveLength((scene.leastChanges ?? 0) + 2);
    expect(drawn.rings.length).toBeGreaterThanOrEqual(arcs.length);
    for (const ring of drawn.rings) expect(area(ring)).toBeGreaterThan(4);
    const end = posesAlong(scene.start, arcs).at(-1) ?? scene.start;
    expect(drawn.stops.at(-1)?.pose).toEqual(end);
    for (const track of drawn.wheelTracks) {
      for (const [i, p] of track.slice(1).entries()) {
        const before = track[i] ?? p;
        // Steps of half a metre of the rear axle; the outer front wheel goes up to twice as far.
        expect(Math.hypot(p[0] - before[0], p[1] - before[1])).toBeLessThan(1);
      }
    }
  });
});
