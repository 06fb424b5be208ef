// The iteration: linearise, solve, step, until nothing moves.

import type { Fronts } from "./elimination-order.ts";
import { solveLeastSquares } from "./least-squares.ts";
import type { LinearSolution } from "./least-squares.ts";
import { equationsAt, fitAt, frameOf, misfitsAt, sizes, squares } from "./linearised-network.ts";
import type { Frame, Loss } from "./linearised-network.ts";
import type { Network, Refused } from "./network.ts";
import { stationsOf } from "./observation.ts";
import type { Observation } from "./observation.ts";

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
/** Observations that miss by so many u, when nothing bends to them, stand out. */
const standsOut = 10;
/** Exact observations may disagree by this much before they count as contradicting (metres, radians). */
const exactSlack = 1e-6;

/**
 * Gauss-Newton with halved steps, from the network's start values. Where that does not converge (poor start values, a
 * gross error), it is tried again from where an iteration comes to rest that gross errors cannot bend; where that
 * fails too, the refusal names the observations that stand out there.
 */
export function gaussNewton(network: Network): Converged | Refused {
  const frame = frameOf(network);
  const first = iterate(frame, frame.start, squares);
  if (first.refused?.refused !== "not-converged") return outcome(frame, first);
  const softened = iterate(frame, frame.start, sizes);
  const second = iterate(frame, softened.x, squares);
  if (second.refused === undefined) return outcome(frame, second);
  const named = missing(frame, softened.x);
  if (named.length === 0) return first.refused;
  const stations = [...new Set(named.flatMap(stationsOf))];
  return { refused: "not-converged", stations, observations: named.map(({ id }) => id) };
}

/**
 * The observations that stand out, worst first, when the network is laid out so that a gross error cannot bend the
 * rest (sizes of misfits instead of squares). Asked where an adjustment ends so far out that its residuals no longer
 * show where the error is. The network must be one that can be adjusted.
 */
export function standingOut(network: Network): Observation[] {
  const frame = frameOf(network);
  return missing(frame, iterate(frame, frame.start, sizes).x);
}

function missing(frame: Frame, x: Float64Array): Observation[] {
  const { observations } = frame.network;
  const misses = misfitsAt(frame, x).map((miss, k) => Math.abs(miss) / observations[k]!.u);
  const worst = [...misses.keys()].filter((k) => observations[k]!.u > 0 && misses[k]! > standsOut);
  return worst.sort((a, b) => misses[b]! - misses[a]!).map((k) => observations[k]!);
}

/** Where an iteration ended: with a solution, or with the reason why not. */
type Ended = { readonly x: Float64Array; readonly iterations: number } & (
  | { readonly refused?: undefined; readonly solution: LinearSolution }
  | { readonly refused: Refused }
);

function iterate(frame: Frame, start: Float64Array, loss: Loss): Ended {
  let x = start;
  let fronts: Fronts | undefined;
  let lastStep = Infinity;
  for (let iterations = 1; iterations <= mostIterations; iterations += 1) {
    const equations = equationsAt(frame, x, loss);
    if ("refused" in equations) return { x, iterations, refused: equations };
    const solution = solveLeastSquares({
      columnCount: x.length,
      equations,
      groupOf: (column) => column >> 1,
      ...(fronts === undefined ? {} : { fronts }),
    });
    fronts = solution.fronts;
    const { undetermined } = solution;
    if (undetermined.length > 0) return { x, iterations, refused: refuse(frame, "singular", undetermined) };
    const step = largest(solution.x);
    if (atRest(step, lastStep)) return { x: stepped(x, solution.x, 1), solution, iterations };
    const next = shortened({ frame, x, loss }, solution.x);
    if (next === null) return { x, iterations, refused: refuse(frame, "not-converged", movers(solution.x)) };
    lastStep = step;
    x = next;
  }
  return { x, iterations: mostIterations, refused: refuse(frame, "not-converged", x.keys()) };
}

/** A step is the last if it is next to nothing, or if the one after it would be, or if only rounding is left. */
function atRest(step: number, lastStep: number): boolean {
  if (step <= smallestStep) return true;
  return step <= roundingStep && (step > lastStep / 2 || (step * step) / lastStep <= smallestStep);
}

function stepped(x: Float64Array, dx: Float64Array, part: number): Float64Array {
  return x.map((value, k) => value + part * dx[k]!);
}

function largest(dx: Float64Array): number {
  return dx.reduce((size, value) => Math.max(size, Math.abs(value)), 0);
}

interface Standing {
  readonly frame: Frame;
  readonly x: Float64Array;
  readonly loss: Loss;
}

/** The first of the whole, half, quarter... step that makes the fit better; null where none does. */
function shortened({ frame, x, loss }: Standing, dx: Float64Array): Float64Array | null {
  if (largest(dx) <= closeStep) return stepped(x, dx, 1);
  const before = fitAt(frame, x, loss);
  for (let halvings = 0, part = 1; halvings <= mostHalvings; halvings += 1, part /= 2) {
    const next = stepped(x, dx, part);
    const after = fitAt(frame, next, loss);
    if (after.gap < before.gap - exactSlack || after.cost <= before.cost) return next;
  }
  return null;
}

function outcome(frame: Frame, ended: Ended): Converged | Refused {
  if (ended.refused !== undefined) return ended.refused;
  const { x, solution, iterations } = ended;
  const clash = solution.contradictions.find(({ gap }) => Math.abs(gap) > exactSlack);
  if (clash !== undefined) {
    const observations = clash.equations.map((index) => frame.network.observations[index]!.id);
    return { refused: "contradicting", stations: [], observations };
  }
  return { x, solution, iterations, residuals: misfitsAt(frame, x).map((miss) => -miss) };
}

function movers(dx: Float64Array): number[] {
  const size = largest(dx);
  return [...dx.keys()].filter((column) => Math.abs(dx[column]!) > size / 10);
}

function refuse(frame: Frame, refused: Refused["refused"], columns: Iterable<number>): Refused {
  const stations = new Set([...columns].map((column) => frame.network.stations[column >> 1]!));
  return { refused, stations: [...stations], observations: [] };
}
