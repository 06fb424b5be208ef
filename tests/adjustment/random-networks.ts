// Random networks of pegs, the same on every machine: some well held, some held by tapes that nearly run together.

import type { Network } from "../../src/adjustment/network.ts";
import type { Coordinates, Observation } from "../../src/adjustment/observation.ts";
import { linearise } from "../../src/adjustment/observation.ts";
import { seeded } from "../seeded.ts";
import { fieldTape } from "./tape-quadrilateral.ts";

/** Kind, station numbers, value, standard uncertainty; 0 means exact. */
export type Row = readonly [Observation["kind"], readonly number[], number, number];

export interface RandomNetwork {
  readonly stations: number;
  readonly datum: (typeof datums)[number];
  /** The station put down exactly by run and offset, or null. */
  readonly pegged: number | null;
  readonly truth: readonly Coordinates[];
  readonly start: readonly Coordinates[];
  readonly rows: readonly Row[];
}

interface Dice {
  readonly uniform: () => number;
  readonly normal: () => number;
}

function diceOf(seed: number): Dice {
  const uniform = seeded(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

const [fewest, most] = [6, 200];
const datums = ["bearing", "two points", "weighted"] as const;

/** Network number `seed`: 6 to 200 stations, as many small ones as large ones on a scale of powers. */
export function randomNetwork(seed: number): RandomNetwork {
  const dice = diceOf(seed);
  const stations = Math.round(fewest * (most / fewest) ** dice.uniform());
  const truth = scattered(stations, dice);
  const rows: Row[] = [];
  const datum = datums[Math.floor(3 * dice.uniform())] ?? "bearing";
  const add = (kind: Row[0], names: readonly number[], u: number) => rows.push(measured(truth, [kind, names, u], dice));
  for (const station of datum === "bearing" ? [0] : [0, 1])
    for (const axis of ["east", "north"] as const) add(axis, [station], datum === "weighted" ? 0.01 : 0);
  if (datum === "bearing") add("bearing", [0, 1], 0);
  const pegged = dice.uniform() < 0.4 ? stations - 1 : null;
  for (let fresh = 1; fresh < stations; fresh += 1) {
    if (fresh === pegged) {
      add("run", [fresh, 0, 1], 0);
      add("offset", [fresh, 0, 1], 0);
    } else tieIn({ fresh, truth, dice, add });
  }
  const shaken = truth.map(([e, n]): Coordinates => [e + 0.15 * dice.normal(), n + 0.15 * dice.normal()]);
  return { stations, datum, pegged, truth, start: shaken, rows };
}

interface Fresh {
  readonly fresh: number;
  readonly truth: readonly Coordinates[];
  readonly dice: Dice;
  readonly add: (kind: Row[0], names: readonly number[], u: number) => void;
}

/** Three or four tapes from the nearest; or run, offset and a tape; or, 1 time in 12, two tapes that nearly run together. */
function tieIn({ fresh, truth, dice, add }: Fresh): void {
  const here = truth[fresh] as Coordinates;
  const apart = (k: number) => lengthOf(truth[k] as Coordinates, here);
  const old = Array.from({ length: fresh }, (_, k) => k).sort((a, b) => apart(a) - apart(b));
  const tape = (station: number) => add("distance", [station, fresh], Number(fieldTape(apart(station)).toFixed(6)));
  const [sort, count, sight] = [dice.uniform(), 3 + Math.floor(2 * dice.uniform()), dice.uniform()];
  const poor = fresh >= 3 && sort < 1 / 12 ? poorPair(here, truth, old) : null;
  const ties = poor ?? (fresh >= 3 && sort < 0.25 ? old.slice(0, 1) : old.slice(0, count));
  if (poor === null && fresh >= 3 && sort < 0.25) {
    add("run", [fresh, 0, 1], 0.01);
    add("offset", [fresh, 0, 1], 0.02);
  }
  ties.forEach(tape);
  if (sight < 0.15 || (fresh === 2 && ties.length < 3)) add("bearing", [old.at(-1) as number, fresh], 0.02);
}

/** Two stations whose tapes to `here` cut at 4 to 15 degrees. */
function poorPair(here: Coordinates, truth: readonly Coordinates[], old: readonly number[]): readonly number[] | null {
  for (const [i, a] of old.entries()) {
    for (const b of old.slice(i + 1)) {
      const [u, v] = [a, b].map((k) => {
        const [e, n] = truth[k] as Coordinates;
        return [e - here[0], n - here[1]] as const;
      }) as [Coordinates, Coordinates];
      const sine = Math.abs(u[0] * v[1] - u[1] * v[0]) / (Math.hypot(...u) * Math.hypot(...v));
      if (sine > Math.sin((4 * Math.PI) / 180) && sine < Math.sin((15 * Math.PI) / 180)) return [a, b];
    }
  }
  return null;
}

const lengthOf = (a: Coordinates, b: Coordinates): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** At least 4 m apart; the two of the base line far from each other. */
function scattered(count: number, { uniform }: Dice): readonly Coordinates[] {
  const size = 12 * Math.sqrt(count);
  const places: Coordinates[] = [
    [0, 0],
    [0.6 * size, 0.15 * size],
  ];
  while (places.length < count) {
    const spot: Coordinates = [size * (1.3 * uniform() - 0.3), size * (1.3 * uniform() - 0.3)];
    if (places.every((place) => lengthOf(place, spot) > 4)) places.push(spot);
  }
  return places;
}

function measured(
  truth: readonly Coordinates[],
  [kind, names, u]: readonly [Row[0], readonly number[], number],
  { normal }: Dice,
): Row {
  const at = (name: string): Coordinates => truth[Number(name)] as Coordinates;
  const { value } = linearise(observationOf([kind, names, 0, u], 0), at) ?? { value: Number.NaN };
  if (u === 0) return [kind, names, value, 0];
  return [kind, names, Number((value + u * normal()).toFixed(kind === "bearing" ? 6 : 3)), u];
}

function observationOf([kind, numbers, value, u]: Row, index: number): Observation {
  const [first, second, third] = numbers.map(String) as [string, string, string];
  const id = `${index}`;
  if (kind === "east" || kind === "north") return { id, kind, of: first, value, u };
  if (kind === "distance" || kind === "bearing") return { id, kind, from: first, to: second, value, u };
  return { id, kind, of: first, from: second, to: third, value, u };
}

/** The same as the adjustment takes it. */
export function networkOf({ stations, rows, start }: RandomNetwork): Network {
  return {
    stations: Array.from({ length: stations }, (_, k) => `${k}`),
    observations: rows.map(observationOf),
    approximate: new Map(start.map((at, k): [string, Coordinates] => [`${k}`, at])),
  };
}
