// A network at one set of coordinates: its linear equations, and how well it fits there.

import type { Network, Refused } from "./network.ts";
import { linearise, misfit } from "./observation.ts";
import type { Coordinates, Linearised } from "./observation.ts";
import type { Equation } from "./reduced-problem.ts";

/**
 * How a misfit counts. `cost` of a misfit in units of its u, and the `doubt` to give its equation so that a
 * weighted step lowers the cost.
 */
export interface Loss {
  readonly cost: (ratio: number) => number;
  readonly doubt: (u: number, miss: number) => number;
}

/** The sum of squares. */
export const squares: Loss = { cost: (ratio) => ratio * ratio, doubt: (u) => u };

/** From so many u on, a misfit counts by its size and no longer by its square (customary 1.5 to 2, PRACTICE). */
const turn = 2;

/** Squares for small misfits, sizes for large ones (Huber 1964, MEMORY): a gross error cannot bend the rest. */
export const sizes: Loss = {
  cost: (ratio) => (Math.abs(ratio) <= turn ? ratio * ratio : turn * (2 * Math.abs(ratio) - turn)),
  doubt: (u, miss) => u * Math.sqrt(Math.max(1, Math.abs(miss) / (turn * u))),
};

/** A network with its stations numbered; columns are east and north of each in turn. */
export interface Frame {
  readonly network: Network;
  readonly numbers: ReadonlyMap<string, number>;
  readonly start: Float64Array;
}

/** Numbers the stations and gathers the start values. */
export function frameOf(network: Network): Frame {
  const numbers = new Map(network.stations.map((name, index) => [name, index]));
  const start = new Float64Array(2 * network.stations.length);
  for (const observation of network.observations) {
    if (observation.kind === "east") start[2 * numbers.get(observation.of)!] = observation.value;
    if (observation.kind === "north") start[2 * numbers.get(observation.of)! + 1] = observation.value;
  }
  network.stations.forEach((name, index) => start.set(network.approximate?.get(name) ?? [], 2 * index));
  return { network, numbers, start };
}

/** Coordinates by name. */
export function places({ numbers }: Frame, x: Float64Array): (station: string) => Coordinates {
  return (station) => {
    const index = 2 * numbers.get(station)!;
    return [x[index]!, x[index + 1]!];
  };
}

/** The linear equations at coordinates `x`, one for each observation; refused where a line has no length. */
export function equationsAt(frame: Frame, x: Float64Array, loss: Loss): Equation[] | Refused {
  const at = places(frame, x);
  const equations: Equation[] = [];
  for (const observation of frame.network.observations) {
    const line = linearise(observation, at);
    if (line === null) {
      const ends = "from" in observation ? [observation.from, observation.to] : [];
      return { refused: "singular", stations: ends, observations: [observation.id] };
    }
    const value = misfit(observation, line.value);
    const u = observation.u > 0 ? loss.doubt(observation.u, value) : 0;
    equations.push({ ...terms(frame, line), value, u });
  }
  return equations;
}

/** The derivatives by column; a station that is named twice in one observation is added up. */
function terms({ numbers }: Frame, line: Linearised): { readonly columns: number[]; readonly values: number[] } {
  const columns: number[] = [];
  const values: number[] = [];
  for (const { station, east, north } of line.parts) {
    const column = 2 * numbers.get(station)!;
    const known = columns.indexOf(column);
    if (known >= 0) {
      values[known]! += east;
      values[known + 1]! += north;
    } else {
      columns.push(column, column + 1);
      values.push(east, north);
    }
  }
  return { columns, values };
}

/** Observed less computed for every observation; NaN where a line has no length. */
export function misfitsAt(frame: Frame, x: Float64Array): number[] {
  const at = places(frame, x);
  return frame.network.observations.map((observation) => {
    return misfit(observation, linearise(observation, at)?.value ?? Number.NaN);
  });
}

/** How well coordinates fit: the cost of all misfits, and the largest miss of an exact observation. */
export function fitAt(frame: Frame, x: Float64Array, loss: Loss): { readonly cost: number; readonly gap: number } {
  let cost = 0;
  let gap = 0;
  misfitsAt(frame, x).forEach((miss, k) => {
    const { u } = frame.network.observations[k]!;
    if (u > 0) cost += loss.cost(miss / u);
    else gap = Math.max(gap, Math.abs(miss));
  });
  return Number.isNaN(cost + gap) ? { cost: Infinity, gap: Infinity } : { cost, gap };
}
