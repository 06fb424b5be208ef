// A blunder in every tape of a twelve-peg plot, one at a time: what is found of it, and what is named.

import { findBlunder } from "../../src/adjustment/blunder.ts";
import type { BlunderFinding } from "../../src/adjustment/blunder.ts";
import { adjustNetwork } from "../../src/adjustment/network.ts";
import type { Coordinates, Observation } from "../../src/adjustment/observation.ts";
import { normals } from "./large-network.ts";
import { fieldTape } from "./tape-quadrilateral.ts";

const limits = { global: 0.95, single: 0.999 };

/** Twelve pegs of an invented plot, 4 by 3, ten to fifteen metres apart. */
const plot: readonly (readonly [string, Coordinates])[] = [
  ["A1", [0, 0]],
  ["A2", [14.2, 0]],
  ["A3", [27.1, 1.3]],
  ["A4", [41.6, -0.8]],
  ["B1", [-1.4, 11.9]],
  ["B2", [13.1, 13.2]],
  ["B3", [28.4, 12.1]],
  ["B4", [40.2, 13.7]],
  ["C1", [0.9, 24.8]],
  ["C2", [12.4, 26.1]],
  ["C3", [26.3, 24.4]],
  ["C4", [42.1, 25.9]],
];

/** Sides and both diagonals of each field: 29 tapes for 21 unknowns, as a careful person would tape it. */
export const pairs = plot.flatMap(([from, a], i) =>
  plot
    .slice(i + 1)
    .filter(([, b]) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 22)
    .map(([to]) => [from, to] as const),
);

export function taped(seed: number): Observation[] {
  const places = new Map(plot);
  const random = normals(seed);
  const tapes = pairs.map(([from, to]): Observation => {
    const [a, b] = [places.get(from)!, places.get(to)!];
    const length = Math.hypot(a[0] - b[0], a[1] - b[1]);
    const u = fieldTape(length);
    return {
      id: `${from} ${to}`,
      kind: "distance",
      from,
      to,
      value: Math.round(1000 * (length + u * random())) / 1000,
      u,
    };
  });
  return [
    { id: "east", kind: "east", of: "A1", value: 0, u: 0 },
    { id: "north", kind: "north", of: "A1", value: 0, u: 0 },
    { id: "line", kind: "bearing", from: "A1", to: "A2", value: Math.PI / 2, u: 0 },
    ...tapes,
  ];
}

/** Two neighbouring digits of the reading changed over: centimetres, else metres, else metre and decimetre. */
export function swapped(value: number): number {
  const whole = Math.floor(100 * value + 1e-6);
  const digits = String(whole);
  const changed = [3, 1, 2]
    .map((end) => digits.slice(0, end - 1) + digits[end]! + digits[end - 1]! + digits.slice(end + 1))
    .find((text) => text !== digits)!;
  return value + (Number(changed) - whole) / 100;
}

/** What is said of the network with one value changed; a refusal that names observations counts as a finding. */
export function findingWith(observations: readonly Observation[], index: number, value: number): BlunderFinding {
  const changed = observations.with(index, { ...observations[index]!, value });
  const result = adjustNetwork({
    stations: plot.map(([name]) => name),
    observations: changed,
    approximate: new Map(plot),
  });
  if (result.refused === undefined) return findBlunder(result, limits);
  return { is: result.observations.length === 1 ? "one" : "several", suspects: result.observations };
}

/** What became of one blunder. */
export interface BlunderRow {
  readonly tape: string;
  readonly length: number;
  /** Size of the blunder, metres and in standard uncertainties of its tape. */
  readonly by: number;
  readonly sigmas: number;
  /** Share of it that shows in its own residual. */
  readonly redundancy: number;
  /** Some test speaks; the wrong tape is the first suspect; it is the only one; it is among them; another alone is named. */
  readonly found: boolean;
  readonly first: boolean;
  readonly alone: boolean;
  readonly among: boolean;
  readonly misnamed: boolean;
}

/** One row for every tape, each made wrong by `change` while the others stay honest. */
export function blunderRows(observations: readonly Observation[], change: (value: number) => number): BlunderRow[] {
  const stations = plot.map(([name]) => name);
  const honest = adjustNetwork({ stations, observations, approximate: new Map(plot) });
  if (honest.refused !== undefined) throw new Error(honest.refused);
  return observations.flatMap(({ id, kind, value, u }, index): BlunderRow[] => {
    if (kind !== "distance") return [];
    const by = change(value) - value;
    const { is, suspects } = findingWith(observations, index, change(value));
    const first = suspects[0] === id;
    return [
      {
        tape: id,
        length: value,
        by,
        sigmas: Math.abs(by) / u,
        redundancy: honest.observations[index]?.redundancy ?? 0,
        found: is !== "agree",
        first,
        alone: is === "one" && first,
        among: suspects.includes(id),
        misnamed: is === "one" && !first,
      },
    ];
  });
}

/** The two sorts of blunder that the table has. */
export const blunders = [
  ["0.10 m too long", (value: number) => value + 0.1],
  ["two digits changed over", swapped],
] as const;

/** Blunders that a test of this strength should see: over 6 standard uncertainties in a tape with redundancy 0.3 or more. */
export const fair = ({ sigmas, redundancy }: BlunderRow): boolean => sigmas > 6 && redundancy >= 0.3;
