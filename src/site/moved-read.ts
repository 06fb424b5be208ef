// A read with some numbers moved that is still known by what it was made from, so that what the move leaves alone need
// not be worked out again.

import type { Feature } from "../model/plan.ts";
import type { Quantity, Read, Spot } from "../model/quantity.ts";

/** What a moved read was made from. */
export interface Origin {
  readonly base: Read;
  readonly moves: ReadonlyMap<number, number>;
}

const origins = new WeakMap<Read, Origin>();

/** The base read with numbers moved, by id and by how much in their base units. */
export function movedRead(base: Read, moves: ReadonlyMap<number, number>): Read {
  const read: Read = (quantity) => base(quantity) + (moves.get(quantity.id) ?? 0);
  origins.set(read, { base, moves });
  return read;
}

/** The read that a feature's shape can as well be taken with: the base one where no number of the shape is moved. */
export function readOfShape(feature: Feature, read: Read): Read {
  const origin = origins.get(read);
  if (!origin || numbersOfShape(feature).some((id) => origin.moves.has(id))) return read;
  return origin.base;
}

/** What a read was made from; null for one in which nothing is moved. */
export function originOf(read: Read): Origin | null {
  return origins.get(read) ?? null;
}

const numbers = new WeakMap<Feature, readonly number[]>();

/** Ids of the numbers that a feature's shape is made of. */
export function numbersOfShape(feature: Feature): readonly number[] {
  const known = numbers.get(feature) ?? quantitiesOfShape(feature).map(({ id }) => id);
  numbers.set(feature, known);
  return known;
}

function quantitiesOfShape({ shape }: Feature): readonly Quantity[] {
  const ends = (spots: readonly Spot[]) => spots.flatMap((spot) => [spot.east, spot.north]);
  if (!shape) return [];
  switch (shape.form) {
    case "point":
      return ends([shape.at]);
    case "circle":
      return [...ends([shape.centre]), shape.across];
    case "line":
      return [...ends(shape.line), ...(shape.width ? [shape.width] : [])];
    case "outline":
      return ends([...shape.outline, ...shape.holes.flat()]);
  }
}
