// How long the turning search takes, warm. Run: npx tsx tests/bench/motion.bench.ts [rounds]
// Prints medians with their range and a few ratios; asserts nothing.

import { bestOn, coarse, deflation, findManoeuvre, fine } from "../../src/motion/find-manoeuvre.ts";
import { freePoses } from "../../src/motion/free-poses.ts";
import { frontsOf, latticeFor, pose } from "../../src/motion/posed.ts";
import { standsFree } from "../../src/motion/sweep.ts";
import { growFronts } from "../../src/motion/two-sided.ts";
import { scenes } from "../motion/scenes.ts";

const rounds = Number(process.argv[2] ?? 21);

function timed(work: () => unknown): { readonly median: number; readonly words: string } {
  const times: number[] = [];
  for (let i = 0; i < rounds + 3; i++) {
    const before = performance.now();
    work();
    if (i >= 3) times.push(performance.now() - before);
  }
  times.sort((a, b) => a - b);
  const median = times[times.length >> 1] ?? 0;
  return { median, words: `${median.toFixed(1)} [${(times[0] ?? 0).toFixed(1)}-${(times.at(-1) ?? 0).toFixed(1)}]` };
}

for (const scene of scenes) {
  const question = { ...scene, mostChanges: 12 };
  const posed = pose(question);
  const lattice = latticeFor(posed, fine);
  const first = timed(() => bestOn(pose(question), coarse, 12));
  const whole = timed(() => findManoeuvre(question));
  const build = timed(() => freePoses(lattice, posed.checked, deflation));
  const flood = timed(() => {
    const fronts = frontsOf(posed, lattice, deflation);
    growFronts(fronts, 12);
  });
  const small = latticeFor(posed, coarse);
  const byRows = timed(() => freePoses(small, posed.checked, 0));
  const before = performance.now();
  for (let k = 0; k < coarse.headings; k++) {
    const heading = (2 * Math.PI * k) / coarse.headings;
    for (let row = 0; row < small.rows; row++) {
      const y = (row - small.originRow) * coarse.cell;
      for (let column = 0; column < small.columns; column++) {
        const x = (column - small.originColumn) * coarse.cell;
        for (const one of posed.checked) if (!standsFree(one, { x, y, heading })) break;
      }
    }
  }
  const byPoses = performance.now() - before;
  console.log(
    `scene ${scene.id}: first path ${first.words} ms, settled ${whole.words} ms (x${(whole.median / first.median).toFixed(1)}); ` +
      `fine lattice: free poses ${build.words}, with flood ${flood.words}; ` +
      `coarse free poses ${byRows.words}, x${(byPoses / byRows.median).toFixed(0)} quicker than pose by pose`,
  );
}
