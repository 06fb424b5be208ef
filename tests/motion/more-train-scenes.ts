// More places for a vehicle with its trailer, from a seed: heads to turn in, offsets, islands, lay-bys, long reverses round
// a bend, and lanes whose verges a body may hang over.

import type { Trailer } from "../../src/motion/trailer-pose.ts";
import { reachBehindAxle } from "../../src/motion/trailer-pose.ts";
import type { TrainQuestion } from "../../src/motion/trailer-manoeuvre.ts";
import type { Vehicle } from "../../src/motion/vehicle.ts";
import { sequence } from "./seeded.ts";
import { boxTrailer, farmTrailer, neckTrailer, pickup, smallTrailer, tractor, van } from "./train-scenes.ts";

type Ring = readonly (readonly [number, number])[];
type Next = () => number;

/** Invented, near to what is common: a car with a caravan, and a long flat trailer. */
const car: Vehicle = {
  wheelbase: 2.7,
  frontOverhang: 0.9,
  rearOverhang: 1,
  bodyWidth: 1.8,
  widthOverTyres: 1.75,
  rearAxleRadius: 4.2,
};
const caravan: Trailer = { ...boxTrailer, hitchBehindAxle: 1.05, hitchToAxle: 4.2, rearOverhang: 2.2, bodyWidth: 2.3 };
const flatTrailer: Trailer = {
  ...boxTrailer,
  hitchToAxle: 5.4,
  rearOverhang: 1.9,
  bodyWidth: 2.3,
  widthOverTyres: 2.3,
};

const trains = [
  { vehicle: pickup, trailer: boxTrailer },
  { vehicle: van, trailer: smallTrailer },
  { vehicle: tractor, trailer: farmTrailer },
  { vehicle: pickup, trailer: neckTrailer },
  { vehicle: car, trailer: caravan },
  { vehicle: van, trailer: flatTrailer },
] as const;

type Place = Pick<TrainQuestion, "start" | "goal" | "mostChanges" | "firstGear" | "lastGear"> & {
  readonly ring: Ring;
  readonly obstacles?: readonly Ring[];
  readonly running?: Ring;
};

interface Size {
  readonly long: number;
  readonly wide: number;
}

const places: Record<string, (next: Next, size: Size) => Place> = { tee, offset, island, layby, backwards, verge };
const placeNames = Object.keys(places);

/** A scene of a seed: places and trains take turns. */
export function anotherTrainScene(seed: number): { readonly name: string; readonly question: TrainQuestion } {
  const next = sequence(seed);
  const place = placeNames[seed % placeNames.length] ?? "tee";
  const train = trains[Math.floor(next() * trains.length)] ?? trains[0];
  const long = train.vehicle.wheelbase + train.vehicle.frontOverhang + reachBehindAxle(train.trailer);
  const { ring, obstacles, running, ...ends } = places[place]!(next, { long, wide: train.trailer.bodyWidth });
  const clear = { rings: [ring], ...(obstacles && { obstacles }) };
  const wheels = running ? { rings: [running] } : clear;
  return { name: `${place} ${seed}`, question: { ...train, ...ends, clear, running: wheels, margin: 0.1 } };
}

/** Up a stem into a head, back into one of its arms, and out again nose first. */
function tee(next: Next, { long }: Size): Place {
  const half = 1.9 + 1.4 * next();
  const arm = long + 1 + 5 * next();
  const deep = 4 + 4 * next();
  const ring: Ring = [
    [-half, -30],
    [half, -30],
    [half, 0],
    [half + arm, 0],
    [half + arm, deep],
    [-half - arm, deep],
    [-half - arm, 0],
    [-half, 0],
  ];
  const start = { x: 0, y: -6, heading: Math.PI / 2 };
  return { ring, start, goal: { x: 0, y: -7 - long / 3, heading: -Math.PI / 2 }, mostChanges: 2 };
}

/** A through road that steps sideways. */
function offset(next: Next): Place {
  const [w, out] = [3.4 + 2 * next(), 2 + 4 * next()];
  const [from, to] = [0, 4 + 9 * next()];
  const ring: Ring = [
    [-30, 0],
    [from + w, 0],
    [to + w, out],
    [40, out],
    [40, out + w],
    [to, out + w],
    [from, w],
    [-30, w],
  ];
  return { ring, start: { x: -14, y: w / 2, heading: 0 }, goal: { x: 32, y: out + w / 2, heading: 0 }, mostChanges: 0 };
}

/** Round an island in a yard and back out of the same track, forwards all the way where there is room. */
function island(next: Next, { long }: Size): Place {
  const [w, deep] = [long + 9 + 10 * next(), long + 8 + 10 * next()];
  const track = 4 + 2.5 * next();
  const size = 1.5 + 3 * next();
  const [cx, cy] = [w / 2, deep / 2];
  const ring: Ring = [
    [0, 0],
    [cx - track / 2, 0],
    [cx - track / 2, -24],
    [cx + track / 2, -24],
    [cx + track / 2, 0],
    [w, 0],
    [w, deep],
    [0, deep],
  ];
  const heap: Ring = [
    [cx - size, cy - size],
    [cx + size, cy - size],
    [cx + size, cy + size],
    [cx - size, cy + size],
  ];
  const start = { x: cx, y: -6, heading: Math.PI / 2 };
  const goal = { x: cx, y: -10.5, heading: -Math.PI / 2 };
  return { ring, obstacles: [heap], start, goal, mostChanges: 2 * Math.floor(2 * next()) };
}

/** Off a lane into a bay beside it, along the lane. */
function layby(next: Next, { long, wide }: Size): Place {
  const w = 3.2 + 1.5 * next();
  const out = wide + 0.6 + 1.2 * next();
  const room = long * (1.2 + 1.2 * next());
  const ring: Ring = [
    [-30, 0],
    [0, 0],
    [2, -out],
    [2 + room, -out],
    [4 + room, 0],
    [40 + room, 0],
    [40 + room, w],
    [-30, w],
  ];
  const ahead = long * 0.45;
  const goal = { x: 2 + room / 2 + ahead / 2, y: -out / 2, heading: 0 };
  return { ring, start: { x: -14, y: w / 2, heading: 0 }, goal, mostChanges: 2 * Math.floor(2 * next()) };
}

/** Backwards all the way round a bend. */
function backwards(next: Next): Place {
  const [w, out] = [5 + 3.5 * next(), 5 + 3.5 * next()];
  const ring: Ring = [
    [-25, 0],
    [20, 0],
    [20, 35],
    [20 - out, 35],
    [20 - out, w],
    [-25, w],
  ];
  const start = { x: 20 - out / 2, y: 24, heading: Math.PI / 2 };
  const goal = { x: -8, y: w / 2, heading: 0 };
  return { ring, start, goal, mostChanges: 2 * Math.floor(2 * next()), firstGear: "reverse", lastGear: "reverse" };
}

/** A bend whose wheels keep to the lane, while the bodies may hang over its verges. */
function verge(next: Next): Place {
  const [w, out] = [4.2 + 2 * next(), 4.2 + 2 * next()];
  const over = 0.4 + 0.6 * next();
  const lane = (by: number): Ring => [
    [-26, 0 - by],
    [20 + by, 0 - by],
    [20 + by, 36],
    [20 - out - by, 36],
    [20 - out - by, w + by],
    [-26, w + by],
  ];
  const goal = { x: 20 - out / 2, y: 24, heading: Math.PI / 2 };
  return { ring: lane(over), running: lane(0), start: { x: -10, y: w / 2, heading: 0 }, goal, mostChanges: 2 };
}
