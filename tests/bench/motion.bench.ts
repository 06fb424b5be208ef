// How long the turning search takes, warm. Run: npx tsx tests/bench/motion.bench.ts [rounds] [pads]
// Prints medians with their range and a few ratios; asserts nothing. Times are of the processor, not of the clock, so
// that a busy machine counts for less.

import { bestOn, coarse, deflation, findManoeuvre, fine } from "../../src/motion/find-manoeuvre.ts";
import { freePoses } from "../../src/motion/free-poses.ts";
import { newHeap } from "../../src/motion/heap.ts";
import type { KernelKind } from "../../src/motion/heap.ts";
import type { ManoeuvreQuestion } from "../../src/motion/manoeuvre.ts";
import { frontsOf, latticeFor, pose } from "../../src/motion/posed.ts";
import { roomAbout } from "../../src/motion/room.ts";
import { growFronts } from "../../src/motion/two-sided.ts";
import { randomPad } from "../motion/random-pads.ts";
import { scenes } from "../motion/scenes.ts";

const rounds = Number(process.argv[2] ?? 15);
const padCount = Number(process.argv[3] ?? 200);

function spent(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function sample(work: () => unknown): number {
  const before = spent();
  work();
  return spent() - before;
}

function at(times: readonly number[], share: number): number {
  return times.toSorted((a, b) => a - b)[Math.floor(share * (times.length - 1))] ?? Number.NaN;
}

function timed(work: () => unknown): { readonly median: number; readonly words: string } {
  const times = Array.from({ length: rounds + 3 }, () => sample(work)).slice(3);
  const median = at(times, 0.5);
  return { median, words: `${median.toFixed(1)} [${at(times, 0).toFixed(1)}-${at(times, 1).toFixed(1)}]` };
}

for (const scene of scenes) {
  const question = { ...scene, mostChanges: 12 };
  const posed = pose(question);
  const lattice = latticeFor(posed, fine);
  const first = timed(() => bestOn(pose(question), coarse, 12));
  const whole = timed(() => findManoeuvre(question));
  const room = timed(() => roomAbout((margin) => ({ ...question, mostChanges: 2, margin }), scene.margin));
  const build = timed(() => freePoses(lattice, posed.checked, deflation));
  const [machine, script] = (["machine", "script"] as const).map((kind: KernelKind) => {
    const heap = newHeap(100, kind);
    return timed(() => growFronts(frontsOf(posed, lattice, deflation, heap), 12));
  });
  console.log(
    `scene ${scene.id}: first path ${first.words} ms, settled ${whole.words}, room in three moves ${room.words}; ` +
      `fine lattice: all free poses ${build.words}, flood with those it needs ${machine?.words}, ` +
      `by script x${((script?.median ?? 0) / (machine?.median ?? 1)).toFixed(1)}`,
  );
}

const firsts: number[] = [];
const settled: number[] = [];
const noes: number[] = [];
for (let i = 0; i < padCount; i++) {
  const question: ManoeuvreQuestion = randomPad(7000 + i);
  const least = (work: () => unknown) => Math.min(...Array.from({ length: 3 }, () => sample(work)));
  const found = findManoeuvre(question);
  const whole = least(() => findManoeuvre(question));
  if (found.answer === "possible") {
    if (found.changes === found.lowerBound) settled.push(whole);
    firsts.push(least(() => bestOn(pose(question), coarse, question.mostChanges)));
  } else if (found.answer !== "cannot-tell") noes.push(whole);
}
for (const [name, times] of [
  ["first checked path", firsts],
  ["least changes settled", settled],
  ["no", noes],
] as const) {
  const figures = [0.5, 0.9, 1].map((share) => at(times, share).toFixed(1));
  console.log(`${name}, ${times.length} pads: median ${figures[0]}, 90 % ${figures[1]}, longest ${figures[2]} ms`);
}
