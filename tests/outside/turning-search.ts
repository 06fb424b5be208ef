// The turning search beside OMPL (libompl-dev of Debian), a general-purpose motion planning library, in one run and turn
// about. Run by `npm run outside`, or: npx tsx tests/outside/turning-search.ts [rounds] [seconds a search]
// Times are of the processor. OMPL minimises length or nothing; it is asked for no changes and can never say no.

import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { prepareEnvelopes } from "../../src/motion/checked.ts";
import { envelopesOf } from "../../src/motion/envelope.ts";
import { bestOn, coarse, findManoeuvre, fine } from "../../src/motion/find-manoeuvre.ts";
import type { Ground } from "../../src/motion/ground.ts";
import type { ManoeuvreAnswer, ManoeuvreQuestion } from "../../src/motion/manoeuvre.ts";
import { pose } from "../../src/motion/posed.ts";
import { root } from "../house/rule-files.ts";
import { scenes } from "../motion/scenes.ts";
import { ownScenes } from "./scenes.ts";

/** Planners with their range, m; 0 is the library's own choice. */
const settings = [
  ["RRTConnect", 0],
  ["RRTConnect", 1],
  ["RRTConnect", 4],
  ["KPIECE", 0],
  ["KPIECE", 1],
  ["KPIECE", 4],
  ["BKPIECE", 0],
  ["BKPIECE", 1],
  ["BKPIECE", 4],
] as const;

const rounds = Number(process.argv[2] ?? 5);
const seconds = Number(process.argv[3] ?? 2);
/** A setting that has found nothing so many times in a scene is left out of its later rounds. */
const patience = 2;
/** Restarts for a path with as few changes: so many, and no more seconds than this in a scene. */
const restarts = { most: 60, seconds: 20 };

const all: readonly { readonly name: string; readonly question: ManoeuvreQuestion }[] = [
  ...scenes.map((scene) => ({ name: `scene ${scene.id}`, question: { ...scene, mostChanges: 12 } })),
  ...ownScenes,
];

function groundWords({ rings, obstacles = [] }: Ground): string {
  const ring = (points: Ground["rings"][number], obstacle: 0 | 1) =>
    `${obstacle} ${points.length} ${points.flat().join(" ")}`;
  return [
    rings.length + obstacles.length,
    ...rings.map((one) => ring(one, 0)),
    ...obstacles.map((one) => ring(one, 1)),
  ].join(" ");
}

function sceneWords({ vehicle, clear, running, start, goal, margin }: ManoeuvreQuestion): string {
  const points = running.rings.flat();
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const boxes = prepareEnvelopes(envelopesOf(vehicle, { clear, running }, margin)).map(
    ({ envelope, rectangle }) => `${envelope.ground === clear ? 0 : 1} ${[...rectangle].join(" ")}`,
  );
  const poses = [start, goal].flatMap(({ x, y, heading }) => [x, y, heading]);
  const bounds = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const grounds = [groundWords(clear), groundWords(running)];
  return ["scene", vehicle.rearAxleRadius, ...bounds, ...poses, ...grounds, boxes.length, ...boxes].join(" ");
}

interface Found {
  readonly found: boolean;
  readonly first: number;
  readonly raw: number;
  readonly cut: number;
  readonly whole: number;
}

/** The library in a process of its own, asked line by line. */
function library(program: string) {
  const child = spawn(program, { stdio: ["pipe", "pipe", "inherit"] });
  const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return {
    pose: (words: string) => child.stdin.write(`${words}\n`),
    search: async ([name, range]: readonly [string, number], cut: 0 | 1): Promise<Found> => {
      child.stdin.write(`search ${name} ${range} ${seconds} ${cut}\n`);
      const answer = await answers.next();
      const [word, first = 0, raw = 0, shorter = 0, whole = 0] = String(answer.value).split(" ");
      return {
        found: word === "found",
        first: Number(first),
        raw: Number(raw),
        cut: Number(shorter),
        whole: Number(whole),
      };
    },
    end: () => child.kill(),
  };
}

function spent(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function timed<T>(work: () => T): { readonly ms: number; readonly of: T } {
  const before = spent();
  const of = work();
  return { ms: spent() - before, of };
}

const firstPath = (question: ManoeuvreQuestion) =>
  bestOn(pose(question), coarse, question.mostChanges) ?? bestOn(pose(question), fine, question.mostChanges);

const median = (times: readonly number[]): number =>
  times.toSorted((a, b) => a - b)[Math.floor((times.length - 1) / 2)] ?? Number.NaN;

const span = (times: readonly number[]): string =>
  times.length === 0
    ? "-"
    : `${median(times).toFixed(1)} [${Math.min(...times).toFixed(1)}-${Math.max(...times).toFixed(1)}]`;

interface Tally {
  readonly ours: number[];
  readonly theirs: Map<string, { readonly times: number[]; tries: number }>;
}

async function oneRound(other: ReturnType<typeof library>, question: ManoeuvreQuestion, tally: Tally): Promise<void> {
  tally.ours.push(timed(() => firstPath(question)).ms);
  for (const setting of settings) {
    const kept = tally.theirs.get(setting.join("@")) ?? { times: [], tries: 0 };
    tally.theirs.set(setting.join("@"), kept);
    if (kept.times.length === 0 && kept.tries >= patience) continue;
    const found = await other.search(setting, 0);
    kept.tries += 1;
    if (found.found) kept.times.push(found.first);
  }
}

/** The setting with the least median, of those that found a path in most rounds. */
function bestSetting({ theirs }: Tally): { readonly name: string; readonly ms: number; readonly words: string } | null {
  const good = [...theirs].filter(([, { times, tries }]) => times.length * 2 > tries);
  const ranked = good.map(([name, { times, tries }]) => ({
    name,
    ms: median(times),
    words: `${name} ${span(times)} (${times.length} of ${tries})`,
  }));
  return ranked.toSorted((a, b) => a.ms - b.ms)[0] ?? null;
}

/** Processor time by restarts until a path has as few changes, ms: total over hits; with no hit, more than the total. */
async function untilAsFew(other: ReturnType<typeof library>, setting: string, changes: number): Promise<string> {
  const [name = "", range = "0"] = setting.split("@");
  let [total, hits] = [0, 0];
  for (let i = 0; i < restarts.most && total < restarts.seconds * 1000; i++) {
    const found = await other.search([name, Number(range)], 1);
    total += found.found ? found.whole : found.first;
    if (found.found && found.cut <= changes) hits += 1;
  }
  return hits > 0 ? `${(total / hits).toFixed(0)} (${hits} hits)` : `>${total.toFixed(0)} (no hit)`;
}

/** Builds the program; null where the library or a compiler is not installed. */
export function built(folder: string): string | null {
  if (!existsSync("/usr/include/ompl-1.5") || spawnSync("g++", ["--version"]).status !== 0) return null;
  const program = join(folder, "turning-search");
  const flags = ["-std=c++17", "-O3", "-march=native", "-I/usr/include/ompl-1.5", "-I/usr/include/eigen3"];
  const source = join(root, "tests/outside/turning-search.cpp");
  return spawnSync("g++", [...flags, source, "-o", program, "-lompl"]).status === 0 ? program : null;
}

const logMean = (values: readonly number[]): number =>
  Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);

function answerWords(answer: ManoeuvreAnswer): string {
  if (answer.answer === "possible") return `${answer.changes} changes (fewer than ${answer.lowerBound} ruled out)`;
  return answer.answer === "not-within" ? `not within ${answer.changes}` : `${answer.answer}, ${answer.why}`;
}

/** Prints the comparison; returns false where the library is not installed. */
export async function compareTurning(): Promise<boolean> {
  const folder = mkdtempSync(join(tmpdir(), "sightrail-turning-"));
  const program = built(folder);
  if (program === null) {
    rmSync(folder, { recursive: true });
    return false;
  }
  const other = library(program);
  for (const { question } of all) for (let i = 0; i < 3; i++) firstPath(question);
  const [firsts, fews]: [number[], number[]] = [[], []];
  for (const { name, question } of all) {
    other.pose(sceneWords(question));
    const tally: Tally = { ours: [], theirs: new Map() };
    for (let round = 0; round < rounds; round++) await oneRound(other, question, tally);
    const settled = timed(() => findManoeuvre(question));
    const best = bestSetting(tally);
    const answer = settled.of;
    console.log(
      `${name}: first path ${span(tally.ours)} ms; settled ${settled.ms.toFixed(1)} ms: ${answerWords(answer)}`,
    );
    if (best === null) {
      console.log(`  OMPL: no setting found a path in most of its rounds of ${seconds} s`);
      continue;
    }
    const ratio = best.ms / median(tally.ours);
    if (answer.answer === "possible") firsts.push(ratio);
    console.log(`  OMPL best: ${best.words} ms; ratio ${ratio.toFixed(1)}`);
    if (answer.answer !== "possible") continue;
    const few = await untilAsFew(other, best.name, answer.changes);
    fews.push(Number.parseFloat(few.replace(">", "")) / settled.ms);
    console.log(
      `  OMPL with restarts to ${answer.changes} changes: ${few} ms; ratio to settled ${fews.at(-1)?.toFixed(0)}`,
    );
  }
  other.end();
  rmSync(folder, { recursive: true });
  console.log(`geometric mean to a first checked path x${logMean(firsts).toFixed(1)} over ${firsts.length} scenes`);
  console.log(`to as few changes at least x${logMean(fews).toFixed(0)} over ${fews.length} scenes`);
  return true;
}

if (process.argv[1]?.endsWith("turning-search.ts") && !(await compareTurning()))
  console.log("not installed: libompl-dev and g++");
