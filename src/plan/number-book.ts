// Writes the number book of a plan: one row for every sealed number, one for every cause of doubt.

import type { Place } from "../model/path.ts";
import { pathText } from "../model/path.ts";
import type { Cause, Dimension, NumberBook, Quantity, Spot, Sway } from "../model/quantity.ts";
import { exact, swayedBy, type Uncertain } from "./sway.ts";

/** A point while it is worked out. */
export interface LivePoint {
  readonly east: Uncertain;
  readonly north: Uncertain;
  readonly place: Place;
  readonly name?: string;
  readonly level?: Uncertain;
  /** True where building tolerance has been added to it already. */
  readonly built?: boolean;
}

export type CauseWords = Pick<Cause, "sort" | "words" | "place" | "dimension"> & {
  readonly u: number;
  readonly part?: string;
};

/** The book while it is written. Rows are only ever added. */
export interface BookWriter {
  /** A number moved by a cause of its own; the same place and part is the same cause. */
  readonly doubted: (value: number, cause: CauseWords) => Uncertain;
  readonly causeOf: (cause: CauseWords) => number;
  readonly seal: <D extends Dimension>(number: Uncertain, dimension: D, place: Place) => Quantity<D>;
  /** Seals a number once: the same live number gives the same quantity, so that two things on one peg share it. */
  readonly sealNumber: <D extends Dimension>(number: Uncertain, dimension: D, place: Place) => Quantity<D>;
  /** The same live point gives the same spot, so that things on one peg share its numbers. */
  readonly sealPoint: (point: LivePoint) => Spot;
  readonly finish: () => NumberBook;
}

/** An empty book. */
export function openBook(): BookWriter {
  const values: number[] = [];
  const sways: Sway[] = [];
  const places: Place[] = [];
  const causes: Cause[] = [];
  const known = new Map<string, number>();
  const spots = new Map<LivePoint, Spot>();
  const sealed = new Map<Uncertain, Quantity>();

  const causeOf = ({ part, ...cause }: CauseWords): number => {
    const key = `${cause.sort} ${cause.place.file} ${pathText(cause.place.path)} ${part ?? ""}`;
    const id = known.get(key) ?? causes.length;
    if (id === causes.length) causes.push({ id, ...cause });
    known.set(key, id);
    return id;
  };
  const doubted = (value: number, cause: CauseWords): Uncertain =>
    cause.u === 0 ? exact(value) : swayedBy(value, causeOf(cause), cause.u);
  const seal = <D extends Dimension>(number: Uncertain, dimension: D, place: Place): Quantity<D> => {
    values.push(number.value);
    sways.push(number.sway);
    places.push(place);
    return { id: values.length - 1, dimension };
  };
  const sealNumber = <D extends Dimension>(number: Uncertain, dimension: D, place: Place): Quantity<D> => {
    const made = sealed.get(number) ?? seal(number, dimension, place);
    sealed.set(number, made);
    return made as Quantity<D>;
  };
  const sealPoint = (point: LivePoint): Spot => {
    const made = spots.get(point);
    if (made !== undefined) return made;
    const spot: Spot = {
      east: sealNumber(point.east, "length", point.place),
      north: sealNumber(point.north, "length", point.place),
      ...(point.name === undefined ? {} : { name: point.name }),
      ...(point.level === undefined ? {} : { level: sealNumber(point.level, "length", point.place) }),
    };
    spots.set(point, spot);
    return spot;
  };
  return { doubted, causeOf, seal, sealNumber, sealPoint, finish: () => ({ values, sways, places, causes }) };
}
