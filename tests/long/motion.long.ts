// A thousand random pads cross-examined, and five hundred asked again for less. As a script it takes how many pads and the
// first seed: npx tsx tests/long/motion.long.ts [how many] [first seed]; it ends with status 1 where a "yes" fails brute
// force, a "no" is contradicted, or more than 2 % are too close to call. `npm run long` runs both parts.

import { compareLattices } from "../motion/coarse-allowance.ts";
import { compareLooser } from "../motion/looser-questions.ts";
import { compareLooserTrains } from "../motion/looser-trains.ts";
import { examinePads } from "../motion/random-pads.ts";

const seedsFrom = (first: number, count: number) => Array.from({ length: count }, (_, i) => first + i);

function examined(count: number, first: number) {
  const tally = examinePads(seedsFrom(first, count), () => performance.now());
  const times = tally.milliseconds.toSorted((a, b) => a - b);
  const at = (share: number): string => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(1);
  const { possible, settled, no, tooClose, other, falsePossible, contradicted } = tally;
  console.log({ count, possible, settled, no, tooClose, other, falsePossible, contradicted });
  console.log(`ms per pad: median ${at(0.5)}, 90 % ${at(0.9)}, longest ${at(1)}`);
  return tally;
}

if (process.env["VITEST"] === undefined) {
  const count = Number(process.argv[2] ?? 1000);
  const { falsePossible, contradicted, tooClose } = examined(count, Number(process.argv[3] ?? 50_000));
  const fine = falsePossible.length === 0 && contradicted.length === 0 && tooClose <= 0.02 * count;
  process.exitCode = fine ? 0 : 1;
} else {
  const { expect, it } = await import("vitest");
  it("1000 random pads: no false yes, no contradicted no, at most 2 % too close to call", () => {
    const { falsePossible, contradicted, tooClose } = examined(1000, 50_000);
    expect({ falsePossible, contradicted }).toEqual({ falsePossible: [], contradicted: [] });
    expect(tooClose).toBeLessThanOrEqual(20);
  });
  it("1000 random pads: the coarse lattice, with its allowance, misses no way that the fine one has with its own", () => {
    const tally = compareLattices(seedsFrom(400_000, 1000));
    console.log(`coarse and fine lattice agree on ${tally.same} of ${tally.pads} pads`);
    expect(tally.missed).toEqual([]);
  });
  it("500 questions and their looser ones: nothing contradicts a checked path, and all take it over", () => {
    const seen = compareLooser(seedsFrom(300_000, 500));
    const { rejected, contradicted, worse } = seen;
    expect({ rejected, contradicted, worse }).toEqual({ rejected: [], contradicted: [], worse: [] });
    expect(seen.questions).toBe(500);
    expect(seen.loosened).toBeGreaterThan(1000);
  });
  it("100 places for trains and looser questions: every path holds when driven a second way, and is taken over", () => {
    const seen = compareLooserTrains(seedsFrom(0, 100), 2);
    console.log(`trains: ${seen.possible} questions about 100 places possible, ${seen.loosened} looser ones`);
    expect({ falsePossible: seen.falsePossible, worse: seen.worse }).toEqual({ falsePossible: [], worse: [] });
  });
}
