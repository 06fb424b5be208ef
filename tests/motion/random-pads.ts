// Random turning pads off a track, from a seed, and what the search makes of them when it is cross-examined.

import { envelopesOf, grown } from "../../src/motion/envelope.ts";
import { bestOn, findManoeuvre } from "../../src/motion/find-manoeuvre.ts";
import type { ManoeuvreQuestion } from "../../src/motion/manoeuvre.ts";
import { pose } from "../../src/motion/posed.ts";
import { firstLeaving } from "./dense-check.ts";
import { sceneVehicles } from "./published-vehicles.ts";
import { sequence } from "./seeded.ts";

type Corner = readonly [number, number];

/** Double the resolution at which "no" is said. */
const finest = { cell: 0.025, headings: 288 };

const entries = ["middle of the long side", "end of the long side", "end of the short side", "through road"] as const;

interface PadShape {
  readonly long: number;
  readonly deep: number;
  readonly track: number;
  readonly corners: readonly Corner[];
  readonly entry: (typeof entries)[number];
}

/** A random pad with a vehicle that comes off the track and is to leave by it, nose first. */
export function randomPad(seed: number): ManoeuvreQuestion {
  const next = sequence(seed);
  const names = ["P", "compact", "van", "tipper"] as const;
  const vehicle = sceneVehicles[names[Math.floor(next() * 4)] ?? "P"];
  const jitter = (): Corner => [(next() - 0.5) * 0.8, (next() - 0.5) * 0.8];
  const shape: PadShape = {
    long: 8 + 10 * next(),
    deep: 4.5 + 6 * next(),
    track: vehicle.bodyWidth + 0.75 + 1.25 * next(),
    corners: [jitter(), jitter(), jitter(), jitter()],
    entry: entries[Math.floor(next() * 4)] ?? "through road",
  };
  const margin = 0.3 * next();
  const apart = next() < 0.4 ? 0.1 + 0.5 * next() : 0;
  const running = { rings: [ringOf(shape, 0)] };
  const clear = apart === 0 ? running : { rings: [ringOf(shape, apart)] };
  const mostChanges = 2 * Math.floor(1 + 4 * next());
  return { vehicle, margin, clear, running, ...endsOf(shape), mostChanges };
}

function endsOf(shape: PadShape) {
  const half = shape.track / 2;
  if (shape.entry === "through road" || shape.entry === "end of the short side") {
    return { start: { x: -10, y: half, heading: 0 }, goal: { x: -10, y: half, heading: Math.PI } };
  }
  const x = trackLeft(shape) + half;
  return { start: { x, y: -10, heading: Math.PI / 2 }, goal: { x, y: -10, heading: -Math.PI / 2 } };
}

function trackLeft(shape: PadShape): number {
  return shape.entry === "end of the long side" ? 0.5 : (shape.long - shape.track) / 2;
}

/** Outline of pad and track, widened by `by`. */
function ringOf(shape: PadShape, by: number): readonly Corner[] {
  const { long, deep, track, corners, entry } = shape;
  const [a, b, c, d] = corners as readonly [Corner, Corner, Corner, Corner];
  const topRight: Corner = [long + c[0] + by, deep + c[1] + by];
  const topLeft: Corner = [d[0] - by, deep + d[1] + by];
  if (entry === "through road") {
    const ends: readonly Corner[] = [
      [-18, -by],
      [long + 18, -by],
      [long + 18, track + by],
    ];
    return [...ends, [long + b[0] + by, track + by], topRight, topLeft, [a[0] - by, track + by], [-18, track + by]];
  }
  if (entry === "end of the short side") {
    return [
      [-18, -by],
      [long + b[0] + by, b[1] - by - 0.4],
      topRight,
      topLeft,
      [a[0] - by, track + by],
      [-18, track + by],
    ];
  }
  const left = trackLeft(shape);
  const bottom: readonly Corner[] = [
    [left - by, a[1] - by - 0.4],
    [left - by, -18],
    [left + track + by, -18],
  ];
  return [
    [a[0] - by, a[1] - by - 0.4],
    ...bottom,
    [left + track + by, b[1] - by - 0.4],
    [long + b[0] + by, b[1] - by - 0.4],
    topRight,
    topLeft,
  ];
}

export interface Tally {
  possible: number;
  /** Of the possible ones, those whose number of changes is also the lower bound. */
  settled: number;
  no: number;
  tooClose: number;
  other: number;
  /** Seeds of paths that brute force rejects. */
  readonly falsePossible: number[];
  /** Seeds of a "no" for which double resolution finds an exact path. */
  readonly contradicted: number[];
  readonly milliseconds: number[];
}

/** Asks about the pads of some seeds and cross-examines every answer. `now` tells the time in ms. */
export function examinePads(seeds: readonly number[], now: () => number): Tally {
  const tally: Tally = {
    possible: 0,
    settled: 0,
    no: 0,
    tooClose: 0,
    other: 0,
    falsePossible: [],
    contradicted: [],
    milliseconds: [],
  };
  for (const seed of seeds) {
    const question = randomPad(seed);
    const before = now();
    const found = findManoeuvre(question);
    tally.milliseconds.push(now() - before);
    if (found.answer === "possible") {
      tally.possible += 1;
      if (found.changes === found.lowerBound) tally.settled += 1;
      // Ten times the contact tolerance: a tyre may run along an edge.
      const envelopes = envelopesOf(question.vehicle, question, question.margin).map((one) => grown(one, -1e-5));
      const path = { start: question.start, arcs: found.path };
      if (firstLeaving(envelopes, path, 0.01) !== null) tally.falsePossible.push(seed);
    } else if (found.answer === "cannot-tell") {
      if (found.why === "too close") tally.tooClose += 1;
      else tally.other += 1;
    } else {
      tally.no += 1;
      const fits = found.answer === "not-within" || found.why === "cut off";
      if (fits && bestOn(pose(question), finest, question.mostChanges) !== null) tally.contradicted.push(seed);
    }
  }
  return tally;
}
