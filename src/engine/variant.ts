// The plan with a few of its things changed: numbers that follow the old ones at a distance, and things put in place of
// others. Rules are judged on it like on the plan itself.

import { keyOfKind } from "../model/kinds.ts";
import type { Feature } from "../model/plan.ts";
import type { NumberBook, Quantity, Read, Spot } from "../model/quantity.ts";
import type { Scene } from "../model/reading.ts";
import type { EvaluationContext } from "./evaluate.ts";

/** New numbers, each as large and as doubtful as the old one that it follows, until a read moves it. */
export interface FreshNumbers {
  readonly like: <Q extends Quantity>(quantity: Q) => Q;
  readonly spotLike: (spot: Spot) => Spot;
  /** The book with the numbers made so far. */
  readonly book: () => NumberBook;
  /** A read that knows them, each moved by what is said for its id, in base units. */
  readonly readAt: (moves: ReadonlyMap<number, number>) => Read;
}

/** Makes numbers beyond those of a book. */
export function freshNumbers({ book, read }: Pick<EvaluationContext, "book" | "read">): FreshNumbers {
  const first = book.values.length;
  const followed: Quantity[] = [];
  const like = <Q extends Quantity>(quantity: Q): Q => {
    followed.push(quantity);
    return { ...quantity, id: first + followed.length - 1 };
  };
  return {
    like,
    spotLike: ({ east, north }) => ({ east: like(east), north: like(north) }),
    book: () => ({
      ...book,
      values: [...book.values, ...followed.map(read)],
      sways: [...book.sways, ...followed.map(({ id }) => book.sways[id] ?? new Map<number, number>())],
      places: [...book.places, ...followed.flatMap(({ id }) => book.places[id] ?? [])],
    }),
    readAt: (moves) => (quantity) => {
      const original = followed[quantity.id - first];
      return (original ? read(original) : read(quantity)) + (moves.get(quantity.id) ?? 0);
    },
  };
}

/** Things that stand in place of others (null: taken away), and things that stand besides. */
export interface Replaced {
  readonly instead: ReadonlyMap<Feature, Feature | null>;
  readonly besides: readonly Feature[];
}

/** The scene with things replaced. */
export function replacedScene(scene: Scene, { instead, besides }: Replaced, read: Read): Scene {
  const swapped = (features: readonly Feature[], kind: string | undefined): readonly Feature[] => [
    ...features.flatMap((feature) => {
      const other = instead.get(feature);
      if (feature.partOf && instead.get(feature.partOf) === null) return [];
      return other === undefined ? [feature] : (other ?? []);
    }),
    ...besides.filter((feature) => isOfKind(feature, kind) && !features.some(({ name }) => name === feature.name)),
  ];
  return {
    ...scene,
    read,
    standing: (kind) => swapped(scene.standing(kind), kind),
    before: (kind) => swapped(scene.before(kind), kind),
  };
}

const isOfKind = (feature: Feature, kind: string | undefined) =>
  kind === undefined || feature.kind === kind || keyOfKind(feature.kind) === kind;
