// What the search of trains finds, and how long it takes: npx tsx tests/bench/trains.bench.ts [every scene: any word]
// Prints shares and times of the processor; asserts nothing. The first scene's time has the machine code's making in it.

import { findTrainManoeuvre } from "../../src/motion/trailer-manoeuvre.ts";
import { anotherTrainScene } from "../motion/more-train-scenes.ts";
import { trainScene } from "../motion/train-scenes.ts";

const seeds = (count: number) => Array.from({ length: count }, (_, i) => i);
const scenes = [...seeds(30).map((seed) => trainScene(seed)), ...seeds(36).map(anotherTrainScene)];

const answers = scenes.map(({ name, question }) => {
  const before = process.cpuUsage();
  const found = findTrainManoeuvre(question);
  const { user, system } = process.cpuUsage(before);
  const words = found.answer === "not" ? `not: ${found.why}` : found.answer;
  return { name, words, changes: found.answer === "possible" ? found.changes : null, ms: (user + system) / 1000 };
});

if (process.argv.length > 2) for (const one of answers) console.log(one);

function times(of: typeof answers): string {
  const sorted = of.map(({ ms }) => ms).toSorted((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(0);
  return `${of.length} scenes, ms: median ${at(0.5)}, 90 % ${at(0.9)}, longest ${at(1)}`;
}

console.log("all:", times(answers));
for (const words of new Set(answers.map((one) => one.words))) {
  console.log(`${words}:`, times(answers.filter((one) => one.words === words)));
}
