import { describe, expect, it } from "vitest";
import { prepareEnvelopes } from "../../src/motion/checked.ts";
import { envelopesOf } from "../../src/motion/envelope.ts";
import type { Envelope } from "../../src/motion/envelope.ts";
import type { Ground } from "../../src/motion/ground.ts";
import { directionChanges, movesOf, posesAlong, wrapAngle } from "../../src/motion/pose.ts";
import type { Arc } from "../../src/motion/pose.ts";
import { sweepPath } from "../../src/motion/sweep.ts";
import { firstLeaving } from "./dense-check.ts";
import { scenes } from "./scenes.ts";
import type { TestScene } from "./scenes.ts";
import { sequence } from "./seeded.ts";

const driven = scenes.filter((scene) => scene.path !== null);

function sweepScene(scene: TestScene, margin = scene.margin) {
  return sweepPath(prepareEnvelopes(envelopesOf(scene.vehicle, scene, margin)), scene.start, scene.path ?? []);
}

describe("paths of the turning scenes, checked by another program (COMPUTED)", () => {
  it.each(driven)("scene $id: accepted, ends at the goal, right number of changes", (scene) => {
    const result = sweepScene(scene);
    expect(result.is).toBe("accepted");
    const end = posesAlong(scene.start, scene.path ?? []).at(-1) ?? scene.start;
    expect(Math.hypot(end.x - scene.goal.x, end.y - scene.goal.y)).toBeLessThan(0.02);
    expect(Math.abs(wrapAngle(end.heading - scene.goal.heading))).toBeLessThan(0.01);
    expect(directionChanges(scene.path ?? [])).toBe(scene.leastChanges);
    const moves = movesOf(scene.path ?? []);
    const driven = (scene.path ?? []).reduce((sum, arc) => sum + Math.abs(arc.length), 0);
    expect(moves.reduce((sum, move) => sum + move.length, 0)).toBeCloseTo(driven, 9);
    expect(moves[0]?.gear).toBe(scene.firstGear);
    for (const { curvature } of scene.path ?? []) {
      // 1e-6: the curvatures of the file are rounded to seven digits.
      expect(Math.abs(curvature) * scene.vehicle.rearAxleRadius).toBeLessThan(1 + 1e-6);
    }
  });

  it.each(driven)("scene $id: rejected when the nearest wall moves 5 cm in; accepted when it moves out", (scene) => {
    const before = sweepScene(scene);
    if (before.is !== "accepted") throw new Error("not accepted");
    expect(before.tightest.clearance).toBeLessThan(0.05);
    const into = moveWall(scene, before.tightest.at, 0.05, before.tightest.part);
    expect(sweepScene(into).is).toBe("rejected");
    expect(sweepScene(moveWall(scene, before.tightest.at, -0.05, before.tightest.part)).is).toBe("accepted");
  });

  it.each(driven)("scene $id: a margin just under the clearance is accepted, the dense check agrees", (scene) => {
    const bare = sweepScene(scene, 0);
    if (bare.is !== "accepted") throw new Error("not accepted");
    if (bare.tightest.part === "body") expect(bare.tightest.clearance).toBeGreaterThanOrEqual(scene.margin - 1e-6);
    const envelopes = envelopesOf(scene.vehicle, scene, scene.margin - 1e-4);
    expect(firstLeaving(envelopes, { start: scene.start, arcs: scene.path ?? [] }, 0.01)).toBeNull();
    // Grown by more than the corner of the margin allows, it must meet the wall.
    const more = (bare.tightest.clearance + 1e-3) * (bare.tightest.part === "body" ? 1 : 0);
    if (more > 0) expect(sweepScene(scene, more).is).toBe("rejected");
  });

  it("says where it first goes wrong: a wall across scene b", () => {
    const scene = driven.find(({ id }) => id === "b")!;
    const wall: Ground = {
      rings: scene.clear.rings,
      obstacles: [
        [
          [-3, -1],
          [-2.9, -1],
          [-2.9, 5],
          [-3, 5],
        ],
      ],
    };
    const around = { ...scene, clear: wall, running: wall };
    const result = sweepScene(around);
    if (result.is !== "rejected") throw new Error("drove through a wall");
    // Front of the body at -3: rear axle at -3 - wheelbase - overhang - margin, 7 m less 3.6 m after the start.
    expect(result.arc).toBe(0);
    expect(result.along).toBeCloseTo(7 - 3.45 - 0.15, 2);
    expect(result.part).toBe("body");
  });

  it("a start that is not free is told by arc -1", () => {
    const scene = driven[0]!;
    const result = sweepPath(prepareEnvelopes(envelopesOf(scene.vehicle, scene, 2)), scene.start, []);
    expect(result).toMatchObject({ is: "rejected", arc: -1 });
  });
});

describe("corners that clip", () => {
  it("a post overlapped for millimetres of travel is found, where samples of 10 cm see nothing", () => {
    // A front outer corner on a circle of radius hypot(5, 4) passes a post whose near point is 3 mm inside it.
    const envelope = (ground: Ground): Envelope => ({ part: "body", back: -1, front: 4, right: -1, left: 1, ground });
    const field = [
      [-30, -30],
      [30, -30],
      [30, 30],
      [-30, 30],
    ] as const;
    const reach = Math.hypot(5, 4);
    const bearing = 0.3217;
    const nose = [(reach - 3e-3) * Math.cos(bearing), 4 + (reach - 3e-3) * Math.sin(bearing)] as const;
    const away = [nose[0] + 1, nose[1] + 0.4] as const;
    const post = [nose, [away[0] + 0.1, away[1] - 0.4], away] as const;
    const arcs = [{ curvature: 0.25, length: 6 }];
    const start = { x: 0, y: 0, heading: 0 };
    const open = envelope({ rings: [field] });
    const blocked = envelope({ rings: [field], obstacles: [post] });
    expect(sweepPath(prepareEnvelopes([open]), start, arcs).is).toBe("accepted");
    expect(sweepPath(prepareEnvelopes([blocked]), start, arcs).is).toBe("rejected");
    expect(firstLeaving([blocked], { start, arcs }, 0.1)).toBeNull();
    expect(firstLeaving([blocked], { start, arcs }, 0.001)).not.toBeNull();
  });
});

describe("random paths among random posts", () => {
  it("closed forms and brute force agree, up to the sampling", () => {
    const next = sequence(3);
    const seen = { accepted: 0, rejected: 0 };
    for (let round = 0; round < 150; round++) {
      const ground: Ground = {
        rings: [
          [
            [-15, -15],
            [15, -15],
            [15, 15],
            [-15, 15],
          ],
        ],
        obstacles: Array.from({ length: 3 }, () => randomPost(next)),
      };
      const envelope: Envelope = { part: "body", back: -1, front: 3.5, right: -0.9, left: 0.9, ground };
      const arcs = Array.from({ length: 3 }, (): Arc => {
        const straight = next() < 0.2;
        return { curvature: straight ? 0 : (next() - 0.5) / 2, length: (next() - 0.5) * 8 };
      });
      const start = { x: 0, y: 0, heading: 6 * next() };
      const result = sweepPath(prepareEnvelopes([envelope]), start, arcs);
      seen[result.is] += 1;
      const dense = firstLeaving([envelope], { start, arcs }, 0.01);
      if (result.is === "accepted") {
        expect(dense).toBeNull();
        continue;
      }
      if (result.arc === -1) {
        expect(dense).toBe(0);
        continue;
      }
      // It must be right to reject: grown by 3 mm, samples of 1 cm see it too.
      const bigger = { ...envelope, back: -1.003, front: 3.503, right: -0.903, left: 0.903 };
      const fine = firstLeaving([bigger], { start, arcs }, 0.004);
      expect(fine).not.toBeNull();
      const before = arcs.slice(0, result.arc).reduce((sum, arc) => sum + Math.abs(arc.length), 0);
      expect(fine ?? 0).toBeLessThan(before + result.along + 0.012);
    }
    expect(Math.min(seen.accepted, seen.rejected)).toBeGreaterThan(30);
  });
});

function randomPost(next: () => number): readonly (readonly [number, number])[] {
  const bearing = 6.283 * next();
  const far = 3.5 + 6 * next();
  const [x, y] = [far * Math.cos(bearing), far * Math.sin(bearing)];
  const turn = 3 * next();
  return [0, 2.1, 4.2].map((angle) => [x + 0.6 * Math.cos(angle + turn), y + 0.6 * Math.sin(angle + turn)] as const);
}

/** Scene with the wall nearest to `at` moved `by` metres to its inner side. */
function moveWall(scene: TestScene, at: readonly [number, number], by: number, part: string): TestScene {
  const key = part === "tyre" ? "running" : "clear";
  const ring = (scene[key].rings[0] ?? []) as [number, number][];
  const away = ring.map((a, i) => distanceToSegment(at, a, ring[(i + 1) % ring.length] ?? a));
  const nearest = away.indexOf(Math.min(...away));
  const a = ring[nearest]!;
  const b = ring[(nearest + 1) % ring.length]!;
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const area = ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + p[0] * q[1] - q[0] * p[1];
  }, 0);
  const toInside = Math.sign(area) * by;
  const shift = [(-(b[1] - a[1]) / long) * toInside, ((b[0] - a[0]) / long) * toInside] as const;
  const moved = ring.map((p) => (p === a || p === b ? ([p[0] + shift[0], p[1] + shift[1]] as const) : p));
  const ground = { rings: [moved] };
  const same = scene.clear === scene.running;
  return {
    ...scene,
    clear: same || key === "clear" ? ground : scene.clear,
    running: same || key === "running" ? ground : scene.running,
  };
}

function distanceToSegment(
  p: readonly [number, number],
  a: readonly [number, number],
  b: readonly [number, number],
): number {
  const d = [b[0] - a[0], b[1] - a[1]] as const;
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * d[0] + (p[1] - a[1]) * d[1]) / (d[0] ** 2 + d[1] ** 2)));
  return Math.hypot(a[0] + t * d[0] - p[0], a[1] + t * d[1] - p[1]);
}
