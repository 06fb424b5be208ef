// A thousand random pads, cross-examined. Run: npx tsx tests/long/motion.long.ts [how many] [first seed]
// Ends with status 1 where a "yes" fails brute force, a "no" is contradicted, or more than 2 % are too close to call.

import { examinePads } from "../motion/random-pads.ts";

const count = Number(process.argv[2] ?? 1000);
const first = Number(process.argv[3] ?? 50_000);
const tally = examinePads(
  Array.from({ length: count }, (_, i) => first + i),
  () => performance.now(),
);
const times = tally.milliseconds.toSorted((a, b) => a - b);
const at = (share: number): string => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(1);
const { possible, settled, no, tooClose, other, falsePossible, contradicted } = tally;
console.log({ count, possible, settled, no, tooClose, other, falsePossible, contradicted });
console.log(`ms per pad: median ${at(0.5)}, 90 % ${at(0.9)}, longest ${at(1)}`);
const fine = falsePossible.length === 0 && contradicted.length === 0 && tooClose <= 0.02 * count;
process.exitCode = fine ? 0 : 1;
