// How long a large survey takes to adjust and a large field of levels to triangulate, and how both grow: the least of some
// runs in one process (what else runs on the machine only adds). Run: npx tsx tests/bench/survey.bench.ts [rounds]. Prints; asserts nothing.

import { fieldOfPegs } from "../adjustment/large-network.ts";
import { adjustNetwork } from "../../src/adjustment/network.ts";
import type { Point } from "../../src/geometry/point.ts";
import { buildNet } from "../../src/terrain/net.ts";

const rounds = Number(process.argv[2] ?? 5);

/** Least time of a few runs after one to warm up, milliseconds. */
function least(work: () => unknown): number {
  const times = Array.from({ length: rounds + 1 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times.slice(1));
}

interface Timed {
  readonly size: number;
  readonly words: string;
  readonly time: number;
}

/** Each line with the power by which the time grew since the line before: 1 is in proportion, 2 by the square. */
function tell(heading: string, timed: readonly Timed[]): void {
  console.log(heading);
  for (const [k, { size, words, time }] of timed.entries()) {
    const before = timed[k - 1];
    const power = before ? Math.log(time / before.time) / Math.log(size / before.size) : null;
    console.log(
      `  ${words.padEnd(48)} ${time.toFixed(0).padStart(6)} ms${power === null ? "" : `, power ${power.toFixed(2)}`}`,
    );
  }
}

tell(
  "a survey adjusted, coordinates and misfit",
  [11, 16, 22, 32, 45].map((side): Timed => {
    const field = fieldOfPegs(side, side, 3);
    const words = `${field.stations.length} stations, ${field.observations.length} observations`;
    return { size: field.stations.length, words, time: least(() => adjustNetwork(field)) };
  }),
);
tell(
  "the same with every residual and redundancy",
  [11, 22, 45].map((side): Timed => {
    const field = fieldOfPegs(side, side, 3);
    const all = () => {
      const result = adjustNetwork(field);
      return result.refused === undefined ? result.observations.length : 0;
    };
    return { size: field.stations.length, words: `${field.stations.length} stations`, time: least(all) };
  }),
);

/** Points spread evenly and without pattern (fractional parts of multiples of two irrational numbers). */
const spots = (count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i): Point => [((i * 0.7548776662) % 1) * 400, ((i * 0.569840291) % 1) * 400]);
const counts = [1250, 2500, 5000, 10_000, 20_000];
tell(
  "levels triangulated",
  counts.map((size): Timed => {
    const points = spots(size);
    return { size, words: `${size} spot levels`, time: least(() => buildNet(points, [])) };
  }),
);
/** A bank across the whole field: a hundred points along its crest are forced to follow each other. */
const crest = (count: number): readonly Point[] => [
  ...spots(count),
  ...Array.from({ length: 100 }, (_, i): Point => [4 * i, 200 + 30 * Math.sin(i / 9)]),
];
tell(
  "the same with a breakline of 100 points",
  counts.map((size): Timed => {
    const points = crest(size);
    const line = Array.from({ length: 100 }, (_, i) => size + i);
    return { size, words: `${size} spot levels`, time: least(() => buildNet(points, [line])) };
  }),
);
