// A made-up field of pegs, each taped to its neighbours, for size and speed.

import type { Network } from "../../src/adjustment/network.ts";
import type { Coordinates, Observation } from "../../src/adjustment/observation.ts";
import { fieldTape } from "./tape-quadrilateral.ts";

export interface Field extends Network {
  readonly truth: ReadonlyMap<string, Coordinates>;
}

/** Seeded normal numbers: a 32-bit mixing generator, then Box and Muller. */
export function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32 + 2 ** -33;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Pegs `across` by `along`, ten metres apart or so; sides and one diagonal of each field taped. */
export function fieldOfPegs(across: number, along: number, seed: number): Field {
  const random = normals(seed);
  const truth = new Map<string, Coordinates>();
  for (let i = 0; i < across; i += 1) {
    for (let j = 0; j < along; j += 1) truth.set(`${i} ${j}`, [10 * i + 0.8 * random(), 10 * j + 0.8 * random()]);
  }
  const [first, second] = [truth.get("0 0")!, truth.get("1 0")!];
  const observations: Observation[] = [
    { id: "east", kind: "east", of: "0 0", value: first[0], u: 0 },
    { id: "north", kind: "north", of: "0 0", value: first[1], u: 0 },
    { id: "line", kind: "bearing", from: "0 0", to: "1 0", value: azimuth(first, second), u: 0 },
  ];
  const tape = (from: string, to: string) => {
    const [a, b] = [truth.get(from)!, truth.get(to)];
    if (b === undefined) return;
    const length = Math.hypot(a[0] - b[0], a[1] - b[1]);
    const u = fieldTape(length);
    observations.push({ id: `${from} - ${to}`, kind: "distance", from, to, value: length + u * random(), u });
  };
  for (let i = 0; i < across; i += 1) {
    for (let j = 0; j < along; j += 1) {
      for (const [di, dj] of [
        [1, 0],
        [0, 1],
        [1, 1],
      ] as const)
        tape(`${i} ${j}`, `${i + di} ${j + dj}`);
    }
  }
  const approximate = new Map<string, Coordinates>();
  for (const [name, [east, north]] of truth) approximate.set(name, [east + 0.2 * random(), north + 0.2 * random()]);
  return { stations: [...truth.keys()], observations, approximate, truth };
}

function azimuth(from: Coordinates, to: Coordinates): number {
  return Math.atan2(to[0] - from[0], to[1] - from[1]);
}
