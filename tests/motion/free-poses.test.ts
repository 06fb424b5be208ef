import { describe, expect, it } from "vitest";
import { liesOnGround } from "../../src/motion/ground.ts";
import { freePoses } from "../../src/motion/free-poses.ts";
import { layerBase, motionsOf } from "../../src/motion/lattice.ts";
import { latticeFor, pose } from "../../src/motion/posed.ts";
import { standsFree } from "../../src/motion/sweep.ts";
import { sceneById } from "./scenes.ts";

const step = { cell: 0.1, headings: 72 };

describe("free poses by scan conversion", () => {
  it.each(["a", "c", "e"])("scene %s: the same as testing every pose of every fifth heading", (id) => {
    // 3.3 mm more keeps walls off the lattice's own lines, where rounding would decide.
    const scene = sceneById(id);
    const posed = pose({ ...scene, mostChanges: 2 }, scene.margin + 0.0033);
    const lattice = latticeFor(posed, step);
    const free = freePoses(lattice, posed.checked, 0);
    const body = posed.checked[0]!;
    const seen = { free: 0, blocked: 0, different: 0 };
    for (let heading = 0; heading < step.headings; heading += 5) {
      const angle = (2 * Math.PI * heading) / step.headings;
      const middle = (body.envelope.back + body.envelope.front) / 2;
      for (let row = 0; row < lattice.rows; row++) {
        for (let column = 0; column < lattice.columns; column++) {
          const x = (column - lattice.originColumn) * step.cell;
          const y = (row - lattice.originRow) * step.cell;
          // A body wholly outside is left set: the flood never gets there.
          if (!liesOnGround(body.boundary, x + middle * Math.cos(angle), y + middle * Math.sin(angle))) continue;
          const bit = row * lattice.stride + column;
          const set = ((free[layerBase(lattice, heading) + (bit >> 5)]! >>> (bit & 31)) & 1) === 1;
          const stands = posed.checked.every((one) => standsFree(one, { x, y, heading: angle }));
          seen[stands ? "free" : "blocked"] += 1;
          if (set !== stands) seen.different += 1;
        }
      }
    }
    expect(seen.different).toBe(0);
    expect(Math.min(seen.free, seen.blocked)).toBeGreaterThan(2000);
  });
});

describe("moves on the lattice", () => {
  const posed = pose({ ...sceneById("a"), mostChanges: 2 });
  const lattice = latticeFor(posed, step);

  it("a full circle comes back to its node, half a circle ends a diameter away within a cell", () => {
    for (const gear of [1, -1] as const) {
      for (const motion of motionsOf(lattice, posed.radius, gear)) {
        if (motion.turn === 0) continue;
        let bit = 0;
        for (let k = 0; k < step.headings; k++) {
          if (k === step.headings / 2) {
            const rows = Math.round(bit / lattice.stride);
            expect(Math.abs(Math.abs(rows) * step.cell - 2 * posed.radius)).toBeLessThanOrEqual(step.cell);
            expect(Math.abs(bit - rows * lattice.stride)).toBeLessThanOrEqual(1);
          }
          bit += motion.shift[(k * motion.turn + step.headings) % step.headings]!;
        }
        expect(bit).toBe(0);
      }
    }
  });

  it("every move forwards is undone by the same steering in reverse", () => {
    const [forward, reverse] = [motionsOf(lattice, posed.radius, 1), motionsOf(lattice, posed.radius, -1)];
    for (const [i, motion] of forward.entries()) {
      const back = reverse[i]!;
      for (let k = 0; k < step.headings; k++) {
        const target = (k + motion.turn + step.headings) % step.headings;
        expect(back.shift[target]! + motion.shift[k]!).toBe(0);
        expect((target + back.turn + step.headings) % step.headings).toBe(k);
      }
    }
  });
});
