// Places for a vehicle with its trailer, from a seed: bends, gates, bays, doors and yards to turn round in.

import type { TrainQuestion } from "../../src/motion/trailer-manoeuvre.ts";
import type { Trailer } from "../../src/motion/trailer-pose.ts";
import { reachBehindAxle } from "../../src/motion/trailer-pose.ts";
import type { Vehicle } from "../../src/motion/vehicle.ts";
import { sequence } from "./seeded.ts";

type Ring = readonly (readonly [number, number])[];
type Next = () => number;

/** Invented, near to what is common on a smallholding. */
export const pickup: Vehicle = {
  wheelbase: 3.15,
  frontOverhang: 0.95,
  rearOverhang: 1.2,
  bodyWidth: 1.9,
  widthOverTyres: 1.85,
  rearAxleRadius: 4.63,
};
export const tractor: Vehicle = {
  wheelbase: 2.5,
  frontOverhang: 1.3,
  rearOverhang: 0.65,
  bodyWidth: 2.3,
  widthOverTyres: 2.3,
  rearAxleRadius: 3.6,
};
export const van: Vehicle = { ...pickup, wheelbase: 3.4, bodyWidth: 2.05, widthOverTyres: 1.95, rearAxleRadius: 4.21 };

export const boxTrailer: Trailer = {
  hitchBehindAxle: 1.2,
  hitchToAxle: 3.6,
  hitchToFront: 1.2,
  rearOverhang: 1.2,
  bodyWidth: 2.1,
  widthOverTyres: 2.1,
  greatestAngle: 1.05,
};
export const smallTrailer: Trailer = {
  ...boxTrailer,
  hitchToAxle: 2.4,
  hitchToFront: 1,
  rearOverhang: 0.9,
  bodyWidth: 1.5,
  widthOverTyres: 1.5,
};
export const farmTrailer: Trailer = {
  ...boxTrailer,
  hitchBehindAxle: 0.9,
  hitchToAxle: 4.5,
  rearOverhang: 1.3,
  bodyWidth: 2.4,
  widthOverTyres: 2.4,
  greatestAngle: 1.2,
};
/** On the axle: a neck over the towing vehicle's own wheels. */
export const neckTrailer: Trailer = {
  ...boxTrailer,
  hitchBehindAxle: 0,
  hitchToAxle: 5,
  hitchToFront: 1.8,
  greatestAngle: 1.3,
};

const trains = [
  { vehicle: pickup, trailer: boxTrailer },
  { vehicle: van, trailer: smallTrailer },
  { vehicle: tractor, trailer: farmTrailer },
  { vehicle: pickup, trailer: neckTrailer },
] as const;

type Place = Pick<TrainQuestion, "start" | "goal" | "mostChanges" | "firstGear" | "lastGear"> & { readonly ring: Ring };

export const placeNames = ["bend", "gate", "bay", "door", "yard"] as const;
export type PlaceName = (typeof placeNames)[number];

export interface TrainScene {
  readonly name: string;
  readonly place: PlaceName;
  readonly question: TrainQuestion;
}

/** A scene of a seed: places and trains take turns. */
export function trainScene(seed: number): TrainScene {
  const next = sequence(seed);
  const place = placeNames[seed % placeNames.length] ?? "bend";
  const train = trains[Math.floor(next() * trains.length)] ?? trains[0];
  const long = train.vehicle.wheelbase + train.vehicle.frontOverhang + reachBehindAxle(train.trailer);
  const { ring, ...ends } = places[place](next, { long, wide: train.trailer.bodyWidth });
  const ground = { rings: [ring] };
  const question = { ...train, ...ends, clear: ground, running: ground, margin: 0.1 };
  return { name: `${place} ${seed}`, place, question };
}

interface Size {
  readonly long: number;
  readonly wide: number;
}

const places: Record<PlaceName, (next: Next, size: Size) => Place> = { bend, gate, bay, door, yard };

/** A lane that bends to the left by a right angle. */
function bend(next: Next): Place {
  const w = 4.2 + 2.6 * next();
  const out = 4.2 + 2.6 * next();
  const ring: Ring = [
    [-25, 0],
    [20, 0],
    [20, 35],
    [20 - out, 35],
    [20 - out, w],
    [-25, w],
  ];
  const goal = { x: 20 - out / 2, y: 24, heading: Math.PI / 2 };
  return { ring, start: { x: -10, y: w / 2, heading: 0 }, goal, mostChanges: 2 };
}

/** Off a track through an opening into a field. */
function gate(next: Next, { long, wide }: Size): Place {
  const track = 3.5 + 3 * next();
  const half = (wide + 0.8 + 2.2 * next()) / 2;
  const ring: Ring = [
    [-30, 0],
    [30, 0],
    [30, track],
    [half, track],
    [half, track + 0.4],
    [14, track + 0.4],
    [14, track + 26],
    [-14, track + 26],
    [-14, track + 0.4],
    [-half, track + 0.4],
    [-half, track],
    [-30, track],
  ];
  const goal = { x: (next() - 0.5) * 6, y: track + long + 2, heading: Math.PI / 2 };
  return { ring, start: { x: -14, y: track / 2, heading: 0 }, goal, mostChanges: 2 };
}

/** Past a bay at right angles to a track, then backwards into it. */
function bay(next: Next, { long, wide }: Size): Place {
  const track = 5.5 + 5 * next();
  const w = wide + 0.7 + 2 * next();
  const deep = long - 1 + 3 * next();
  const ring: Ring = [
    [-30, 0],
    [0, 0],
    [0, -deep],
    [w, -deep],
    [w, 0],
    [30, 0],
    [30, track],
    [-30, track],
  ];
  const goal = { x: w / 2, y: -deep + long - 3.5, heading: Math.PI / 2 };
  const start = { x: -14, y: track / 2, heading: 0 };
  return { ring, start, goal, mostChanges: next() < 0.5 ? 1 : 3, lastGear: "reverse" };
}

/** Backwards across a yard to a place beside. */
function door(next: Next): Place {
  const wide = 7 + 5 * next();
  const side = (next() - 0.5) * (wide - 4);
  const ring: Ring = [
    [-25, 0],
    [28, 0],
    [28, wide],
    [-25, wide],
  ];
  const start = { x: 20, y: wide / 2 - side / 2, heading: 0 };
  const goal = { x: 20 - 16 - 12 * next(), y: wide / 2 + side / 2, heading: 0 };
  return { ring, start, goal, mostChanges: next() < 0.6 ? 0 : 2, firstGear: "reverse", lastGear: "reverse" };
}

/** Into a yard, round, and out by the same track, nose first. */
function yard(next: Next, { long }: Size): Place {
  const [w, deep] = [long + 1 + 14 * next(), long - 1 + 12 * next()];
  const track = 3.6 + 1.6 * next();
  const left = next() * (w - track);
  const ring: Ring = [
    [0, 0],
    [left, 0],
    [left, -22],
    [left + track, -22],
    [left + track, 0],
    [w, 0],
    [w, deep],
    [0, deep],
  ];
  const x = left + track / 2;
  const start = { x, y: -6, heading: Math.PI / 2 };
  return { ring, start, goal: { x, y: -6 - 4.5, heading: -Math.PI / 2 }, mostChanges: 2 * Math.floor(1 + 3 * next()) };
}
