import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { coarse, fine } from "../../src/motion/find-manoeuvre.ts";
import { newHeap } from "../../src/motion/heap.ts";
import type { Heap } from "../../src/motion/heap.ts";
import { register, registers } from "../../src/motion/kernel.ts";
import { waysOver } from "../../src/motion/meeting.ts";
import { frontsOf, latticeFor, pose } from "../../src/motion/posed.ts";
import { growFronts } from "../../src/motion/two-sided.ts";
import { assembledKernel } from "../house/assemble-kernel.ts";
import { randomPad } from "./random-pads.ts";
import { sceneById } from "./scenes.ts";
import { sequence } from "./seeded.ts";

const layer = 90;

/** Two heaps, script and machine, with the same random bits. */
function twins(next: () => number): readonly [Heap, Heap] {
  const heaps = [newHeap(2000, "script"), newHeap(2000, "machine")] as const;
  const density = next();
  const word = () => (next() < density ? Math.floor(next() * 2 ** 32) & Math.floor(next() * 2 ** 32) : 0);
  const bits = Array.from({ length: 1500 }, word);
  for (const heap of heaps) heap.words.set(bits, registers);
  return heaps;
}

describe("machine code and script", () => {
  it("the machine code is what its text says", () => {
    const file = readFileSync(new URL("../../src/motion/kernel-bytes.ts", import.meta.url), "utf8");
    expect(file).toBe(assembledKernel());
  });

  it("this machine has the wide words, so that the comparison below compares two things", () => {
    const heap = newHeap(100, "machine");
    expect(heap.kernel.runUp.toString()).toContain("native code");
  });

  it.each(["shiftOver", "runUp", "runDown", "meet"] as const)("%s: the same bits and the same log", (loop) => {
    const next = sequence(20_260 + loop.length);
    let logged = 0;
    for (let round = 0; round < 600; round++) {
      const [script, machine] = twins(next);
      // Three layers with edges between; far and near shifts, and a part of the layer.
      const base = registers + 100;
      const up = loop === "runUp";
      const size = Math.floor(next() * (round % 3 === 0 ? 31 : 700)) + 1;
      const shift = loop === "shiftOver" ? (next() < 0.5 ? -size : size) : up ? size : -size;
      const whole = shift >> 5;
      const [from, to] = [Math.floor(next() * layer), Math.floor(next() * layer)].sort((a, b) => a - b) as [
        number,
        number,
      ];
      const [first, last] = [Math.max(0, from + whole), Math.min(layer - 1, to + whole + 1)];
      if (first > last) continue;
      const begin = loop === "runDown" ? last : first;
      const target = base + (loop === "shiftOver" || loop === "meet" ? 200 : 0);
      for (const { words, kernel } of [script, machine]) {
        words[register.source] = base - whole + begin;
        words[register.target] = target + begin;
        words[register.free] = base + 400 + begin;
        words[register.last] = loop === "meet" ? base - whole + last : target + (loop === "runDown" ? first : last);
        words[register.part] = shift & 31;
        words[register.log] = 1600;
        words[register.limit] = base + (up ? layer - 1 : 0);
        words[register.reach] = up ? whole + 1 : whole;
        kernel[loop]();
      }
      const end = script.words[register.log]!;
      logged += end - 1600;
      expect(machine.words[register.log]).toBe(end);
      expect(machine.words[register.met]).toBe(script.words[register.met]);
      const same = (from: number, to: number) =>
        script.words.subarray(from, to).every((word, i) => word === machine.words[from + i]);
      expect(same(registers, 1600) && same(1600, end)).toBe(true);
    }
    if (loop !== "meet") expect(logged).toBeGreaterThan(5000);
  });

  it.each([
    ["scene a", { ...sceneById("a"), mostChanges: 4 }],
    ["scene e", { ...sceneById("e"), mostChanges: 3 }],
    ...Array.from({ length: 6 }, (_, i) => [`pad ${i}`, randomPad(4000 + i)] as const),
  ] as const)("%s: a whole search takes the same steps and finds the same ways", (_, question) => {
    const posed = pose(question);
    for (const step of [coarse, fine]) {
      const lattice = latticeFor(posed, step);
      const [script, machine] = (["script", "machine"] as const).map((kind) => {
        const fronts = frontsOf(posed, lattice, 0, newHeap(100, kind));
        growFronts(fronts, question.mostChanges);
        const passes = [fronts.start, fronts.end].map(({ side }) => side.passes.map(({ from, end }) => [from, end]));
        const ways = fronts.met === null ? [] : waysOver(fronts, 4);
        const words = fronts.problem.field.heap.words.subarray(registers, fronts.problem.field.logEnd);
        return { met: fronts.met, passes, ways, sum: words.reduce((sum, word) => (Math.imul(sum, 31) + word) | 0, 0) };
      });
      expect(machine?.met).toEqual(script?.met);
      expect(machine?.passes).toEqual(script?.passes);
      expect(machine?.ways).toEqual(script?.ways);
      expect(machine?.sum).toBe(script?.sum);
    }
  });
});
