// A big invented plan for timing: features of mixed kinds, one to a square of the plot, so that the plot grows with their number
// and everything has about as many neighbours. Seeded: the same count gives the same text.

import { seeded } from "../seeded.ts";

/** Side of a square, metres. */
const square = 14;

/** What stands in a square: its kind in the plan and its keys, from a corner and a source of random numbers. */
type Maker = (east: number, north: number, random: () => number) => readonly [string, string];

const at = (east: number, north: number): string => `[${east.toFixed(2)}, ${north.toFixed(2)}]`;
const box = (e: number, n: number, wide: number, deep: number): string =>
  `[${at(e, n)}, ${at(e + wide, n)}, ${at(e + wide, n + deep)}, ${at(e, n + deep)}]`;

const makers: readonly Maker[] = [
  (e, n, random) => [
    "trees",
    `{at: ${at(e + 3 + 8 * random(), n + 3 + 8 * random())}, girth: ${(0.6 + 2 * random()).toFixed(2)}, crown: {radius: ${(2 + 4 * random()).toFixed(1)}}, species: ash, existing: true}`,
  ],
  (e, n, random) => [
    "fences",
    `{line: [${at(e, n + 2 + 10 * random())}, ${at(e + 6, n + 2 + 10 * random())}, ${at(e + 13, n + 2 + 10 * random())}], height: ${(0.9 + random()).toFixed(2)}, keep_in: [sheep], keep_in_side: left, from: works}`,
  ],
  (e, n, random) => [
    "walls",
    `{line: [${at(e + 1, n + 10 * random())}, ${at(e + 12, n + 12 * random())}], height: ${(0.5 + random()).toFixed(2)}, thickness: 0.45, build: dry stone, existing: true}`,
  ],
  (e, n, random) => [
    "buildings",
    `{outline: ${box(e + 2, n + 2, 4 + 6 * random(), 4 + 6 * random())}, eaves: ${(2.2 + 2 * random()).toFixed(1)}, existing: true}`,
  ],
  (e, n, random) => [
    "surfaces",
    `{centre_line: [${at(e, n + 4 + 6 * random())}, ${at(e + 7, n + 4 + 6 * random())}, ${at(e + 14, n + 4 + 6 * random())}], width: ${(2.2 + random()).toFixed(1)}, for: [vehicles], from: works}`,
  ],
  (e, n, random) => [
    "heaps",
    `{circle: {at: ${at(e + 7, n + 7)}, across: ${(2 + 5 * random()).toFixed(1)}}, of: spoil, height: 1.2, from: works}`,
  ],
  (e, n, random) => [
    "hedges",
    `{line: [${at(e + 12 * random(), n + 1)}, ${at(e + 12 * random(), n + 13)}], width: 1.2, height: 1.8, existing: true}`,
  ],
  (e, n, random) => [
    "services",
    `{line: [${at(e + 1, n + 13 * random())}, ${at(e + 13, n + 13 * random())}], kind: water, buried: {depth: 0.75}, existing: true}`,
  ],
];

/** The text of a plan with so many features. */
export function inventedPlan(count: number, seed = 1): string {
  const random = seeded(seed);
  const across = Math.ceil(Math.sqrt(count));
  const sections = new Map<string, string[]>();
  for (let i = 0; i < count; i++) {
    const maker = makers[Math.floor(random() * makers.length)] as Maker;
    const [kind, keys] = maker(square * (i % across), square * Math.floor(i / across), random);
    sections.set(kind, [...(sections.get(kind) ?? []), `  ${kind} ${i + 1}: ${keys}`]);
  }
  const head = [
    "sightrail: 1",
    "title: An invented estate",
    "place: [england]",
    "as_of: 2026-11-25",
    "stages: [now, works, finished]",
    "survey:",
    "  tape: {class: II, taken: 2026-10-04}",
    "  stations:",
    "    A: {at: [0, 0]}",
    "    B: {line_to: A, tape: 36.40}",
  ];
  return [...head, ...[...sections].flatMap(([kind, lines]) => [`${kind}:`, ...lines]), ""].join("\n");
}
