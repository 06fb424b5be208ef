// The iteration: linearise, solve, step, until nothing moves.

import type { Fronts } from "./elimination-order.ts";
import { solveLeastSquares } from "./least-squares.ts";
import type { LinearSolution } from "./least-squares.ts";
import type { Network, Refused } from "./network.ts";
import { linearise, misfit } from "./observation.ts";
import type { Coordinates, Linearised } from "./observation.ts";
import type { Equation } from "./reduced-problem.ts";

/** Where the iteration came to rest: coordinates by column (east, north of each station in turn). */
export interface Converged {
  readonly x: Float64Array;
  /** v = f(x) - l by observation. */
  readonly residuals: readonly number[];
  readonly solution: LinearSolution;
  readonly iterations: number;
}

/** Method tolerances. A step below `smallestStep` (metres) ends the iteration. */
const smallestStep = 1e-8;
const mostIterations = 60;
const mostHalvings = 12;
/** Steps below this need no judging: so near, the iteration draws together by itself. */
const closeStep = 1e-3;
/** Steps this small that no longer shrink are rounding: what far-off coordinates leave of a metre. */
const roundingStep = 1e-6;
/** Exact observations may disagree by this much before they count as contradicting (metres, radians). */
const exactSlack = 1e-6;

/** Gauss-Newton with halved steps, from the network's start values. */
export function gaussNewton(network: Network): Converged | Refused {
  const frame = frameOf(network);
  let x = frame.start;
  let fronts: Fronts | undefined;
  let lastStep = Infinity;
  for (let iterations = 1; iterations <= mostIterations; iterations += 1) {
    const equations = equationsAt(frame, x);
    if ("refused" in equations) return equations;
    const solution = solveLeastSquares({
      columnCount: x.length,
      equations,
      groupOf: (column) => column >> 1,
      ...(fronts === undefined ? {} : { fronts }),
    });
    fronts = solution.fronts;
    if (solution.undetermined.length > 0) return refuse(frame, "singular", solution.undetermined);
    const step = largest(solution.x);
    const nextStep = (step * step) / lastStep;
    if (step <= smallestStep || (step <= roundingStep && (step > lastStep / 2 || nextStep <= smallestStep))) {
      return finish(frame, { x: stepped(x, solution.x, 1), solution, iterations });
    }
    const next = shortened(frame, x, solution.x);
    if (next === null) return refuse(frame, "not-converged", movers(solution.x));
    lastStep = step;
    x = next;
  }
  return refuse(frame, "not-converged", x.keys());
}

interface Frame {
  readonly network: Network;
  readonly numbers: ReadonlyMap<string, number>;
  readonly start: Float64Array;
}

function frameOf(network: Network): Frame {
  const numbers = new Map(network.stations.map((name, index) => [name, index]));
  const start = new Float64Array(2 * network.stations.length);
  for (const observation of network.observations) {
    if (observation.kind === "east") start[2 * numbers.get(observation.of)!] = observation.value;
    if (observation.kind === "north") start[2 * numbers.get(observation.of)! + 1] = observation.value;
  }
  network.stations.forEach((name, index) => start.set(network.approximate?.get(name) ?? [], 2 * index));
  return { network, numbers, start };
}

function places({ numbers }: Frame, x: Float64Array): (station: string) => Coordinates {
  return (station) => {
    const index = 2 * numbers.get(station)!;
    return [x[index]!, x[index + 1]!];
  };
}

function equationsAt(frame: Frame, x: Float64Array): Equation[] | Refused {
  const at = places(frame, x);
  const equations: Equation[] = [];
  for (const observation of frame.network.observations) {
    const line = linearise(observation, at);
    if (line === null) {
      const ends = "from" in observation ? [observation.from, observation.to] : [];
      return { refused: "singular", stations: ends, observations: [observation.id] };
    }
    equations.push({ ...terms(frame, line), value: misfit(observation, line.value), u: observation.u });
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

function stepped(x: Float64Array, dx: Float64Array, part: number): Float64Array {
  return x.map((value, k) => value + part * dx[k]!);
}

function largest(dx: Float64Array): number {
  return dx.reduce((size, value) => Math.max(size, Math.abs(value)), 0);
}

/** The first of the whole, half, quarter... step that makes the fit better; null where none does. */
function shortened(frame: Frame, x: Float64Array, dx: Float64Array): Float64Array | null {
  if (largest(dx) <= closeStep) return stepped(x, dx, 1);
  const before = fitAt(frame, x);
  for (let halvings = 0, part = 1; halvings <= mostHalvings; halvings += 1, part /= 2) {
    const next = stepped(x, dx, part);
    const after = fitAt(frame, next);
    const nearer = after.gap < before.gap - exactSlack;
    if (nearer || after.squares <= before.squares) return next;
  }
  return null;
}

/** How well coordinates fit: the sum of (v/u)^2, and the largest miss of an exact observation. */
function fitAt(frame: Frame, x: Float64Array): { readonly squares: number; readonly gap: number } {
  const at = places(frame, x);
  let squares = 0;
  let gap = 0;
  for (const observation of frame.network.observations) {
    const line = linearise(observation, at);
    if (line === null) return { squares: Infinity, gap: Infinity };
    const miss = Math.abs(misfit(observation, line.value));
    if (observation.u > 0) squares += (miss / observation.u) ** 2;
    else gap = Math.max(gap, miss);
  }
  return { squares, gap };
}

function finish(frame: Frame, reached: Omit<Converged, "residuals">): Converged | Refused {
  const clash = reached.solution.contradictions.find(({ gap }) => Math.abs(gap) > exactSlack);
  if (clash !== undefined) {
    const observations = clash.equations.map((index) => frame.network.observations[index]!.id);
    return { refused: "contradicting", stations: [], observations };
  }
  const at = places(frame, reached.x);
  const residuals = frame.network.observations.map((observation) => {
    return -misfit(observation, linearise(observation, at)?.value ?? Number.NaN);
  });
  return { ...reached, residuals };
}

function movers(dx: Float64Array): number[] {
  const size = largest(dx);
  return [...dx.keys()].filter((column) => Math.abs(dx[column]!) > size / 10);
}

function refuse(frame: Frame, refused: Refused["refused"], columns: Iterable<number>): Refused {
  const stations = new Set([...columns].map((column) => frame.network.stations[column >> 1]!));
  return { refused, stations: [...stations], observations: [] };
}
