// A quantity: one number of the resolved plan, sealed. It tells what it is, never what it is worth.
// The worth is had only through a `Read` handed out by the engine, which notes what was read; so every
// finding knows the numbers it rests on, and a measure that peeks does not compile.

import type { Place } from "./path.ts";

/** The dimensions the tool knows. Inside, every value is in the unit of `baseUnit` below (SI). */
export type Dimension =
  | "length"
  | "area"
  | "volume"
  | "angle"
  | "slope"
  | "share"
  | "count"
  | "time"
  | "speed"
  | "rain"
  | "flow"
  | "mass"
  | "force"
  | "pressure"
  | "density"
  | "infiltration"
  | "voltage"
  | "temperature";

/** One number of the plan. `id` is its row in the plan's number book and means nothing outside it. */
export interface Quantity<D extends Dimension = Dimension> {
  readonly id: number;
  readonly dimension: D;
}

/** The only way from a quantity to its value, in base units. */
export type Read = (quantity: Quantity) => number;

/** A point of the plan: plane metres, east and north of the first station. `name` where it is a peg. */
export interface Spot {
  readonly east: Quantity<"length">;
  readonly north: Quantity<"length">;
  readonly name?: string;
  /** Reduced level where the level book or the plan gives one. */
  readonly level?: Quantity<"length">;
}

/**
 * One independent reason for doubt: a tape, a bearing, a staff, a building tolerance, a table's spread.
 * `u` is its standard uncertainty in the base unit of `dimension`.
 */
export interface Cause {
  readonly id: number;
  readonly sort: "survey" | "build" | "method" | "table";
  /** In the words of the field: `tape P1 to P3`, `the offset of peg B1`. */
  readonly words: string;
  readonly place: Place;
  readonly u: number;
  readonly dimension: Dimension;
}

/**
 * How far a number moves when each cause moves by one standard uncertainty (sparse; in the number's unit).
 * For a peg of an adjusted network these are the rows of G u, G = dx/dl; the number's own standard
 * uncertainty is the root of the sum of squares.
 */
export type Sway = ReadonlyMap<number, number>;

/** The numbers of one resolved plan, by `Quantity.id`. Only the engine and the resolver hold it. */
export interface NumberBook {
  readonly values: readonly number[];
  readonly sways: readonly Sway[];
  readonly places: readonly Place[];
  readonly causes: readonly Cause[];
}

/** Standard uncertainty of a number: the root of the sum of squares of its sway. */
export function swayLength(sway: Sway): number {
  let sum = 0;
  for (const part of sway.values()) sum += part * part;
  return Math.sqrt(sum);
}
