// How long `room` takes, warm: one rectangle, a curve of eight lengths. Run: npx tsx tests/bench/room.bench.ts [rounds]
// Prints medians with their range, by the clock and by the processor; asserts nothing.

import { curveLengths, depthCurve, depthRange } from "../../src/motion/room-curve.ts";
import { type RectangleEntry, turnQuestion } from "../../src/motion/room-layout.ts";
import { smallestSize } from "../../src/motion/room-size.ts";
import { sceneVehicles } from "../motion/published-vehicles.ts";

const rounds = Number(process.argv[2] ?? 9);

interface Timed {
  readonly clock: readonly number[];
  readonly processor: readonly number[];
}

function timed(work: () => unknown): Timed {
  const clock: number[] = [];
  const processor: number[] = [];
  for (let i = 0; i < rounds + 2; i++) {
    const [before, used] = [performance.now(), process.cpuUsage()];
    work();
    const now = process.cpuUsage(used);
    if (i < 2) continue;
    clock.push(performance.now() - before);
    processor.push((now.user + now.system) / 1000);
  }
  return { clock, processor };
}

function words(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(0);
  return `${at(0.5)} [${at(0)}-${at(1)}]`;
}

const single: number[] = [];
const curves: number[] = [];
for (const [name, vehicle] of Object.entries(sceneVehicles)) {
  for (const entry of ["along", "middle", "end", "short side"] satisfies RectangleEntry[]) {
    for (const clearance of [0, 0.3]) {
      const track = name === "van" || name === "tipper" ? 3.5 : 3;
      const layout = { form: "rectangle", entry, track, splay: 0 } as const;
      const turner = { vehicle, clearance, changes: 2 };
      const ask = (deep: number) => turnQuestion(layout, { long: 14.5, deep }, turner);
      const one = timed(() => smallestSize(ask, depthRange(turner, layout)));
      const curve = timed(() => depthCurve(layout, turner, curveLengths(turner)));
      single.push(...one.processor);
      curves.push(...curve.processor);
      console.log(
        `${name} ${entry} ${clearance} m: one ${words(one.clock)} ms (processor ${words(one.processor)}), ` +
          `curve ${words(curve.clock)} ms (processor ${words(curve.processor)})`,
      );
    }
  }
}
console.log(`all: one by the processor ${words(single)} ms, curve ${words(curves)} ms`);
