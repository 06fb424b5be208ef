// Turns what was written into numbers with doubt: tapes, coordinates, sizes of what stands, places of what is to be built.

import type { Place } from "../model/path.ts";
import type { Dimension } from "../model/quantity.ts";
import type { DoubtClass } from "./doubt-classes.ts";
import type { BookWriter, LivePoint } from "./number-book.ts";
import type { Written } from "./numbers.ts";
import type { Customs, PracticeName } from "./practice.ts";
import { exact, sum, swayedBy, type Uncertain } from "./sway.ts";

/** The reel all tapes were read from. */
export interface Reel {
  readonly place: Place;
  /** Null where the plan does not give its class. */
  readonly error: { readonly words: string; readonly greatest: (length: number) => number } | null;
  /** Length of the whole tape, metres: the length its error is stated for. */
  readonly length: number;
  /** What a length read from it is in truth, metres: after its own length, its warmth and its sag. */
  readonly inTruth: (read: number) => number;
}

/** Gives numbers their doubt. `words` say what was measured, in the words of the field. */
export interface Measuring {
  readonly taped: (written: Written, words: string) => Uncertain;
  /** What one standard uncertainty of the reel's own error does to a length taped with it; 0 where its ± is stated. */
  readonly reelShare: (written: Written) => number;
  readonly coordinate: (written: Written, words: string, axis: "east" | "north") => Uncertain;
  /** Any other survey observation: own ± or the row of common practice. */
  readonly observed: (
    written: Written,
    words: string,
    row: { readonly name: PracticeName; readonly dimension: Dimension },
  ) => Uncertain;
  readonly stated: (written: Written, words: string, dimension: Dimension, sort: "survey" | "build") => Uncertain;
  /** The standard uncertainty that an observation has by itself, apart from what it shares: its weight. */
  readonly ownU: (written: Written, row: PracticeName) => number;
  readonly size: (written: Written, words: string, how: SizeHow) => Uncertain;
  /** The same point with the tolerance of building added to both axes. */
  readonly built: (point: LivePoint, words: string, place: Place) => LivePoint;
}

export interface SizeHow {
  readonly sort: DoubtClass;
  readonly dimension: Dimension;
  readonly existing: boolean;
}

const rowWhenExisting: Readonly<Record<Exclude<DoubtClass, "exact">, PracticeName | null>> = {
  level: "levelling",
  plan: "tape",
  height: "tape",
  crown: "crown",
  girth: "girth",
  treeHeight: "treeHeight",
  wireHeight: "wireHeight",
  slope: "slope",
  layer: null,
};
const rowWhenBuilt: Readonly<Record<Exclude<DoubtClass, "exact">, PracticeName | null>> = {
  level: "buildLevel",
  plan: "buildPosition",
  height: "buildHeight",
  crown: "crown",
  girth: "girth",
  treeHeight: "treeHeight",
  wireHeight: "buildHeight",
  slope: "buildFall",
  layer: "buildLayer",
};

/** Measuring with the customs in force. `reel` is null where the plan names no class of tape. */
export function openMeasuring(book: BookWriter, customs: Customs, reel: Reel | null): Measuring {
  const stated: Measuring["stated"] = (written, words, dimension, sort) => {
    const u = (written.plusMinus ?? 0) / 2;
    return book.doubted(written.value, { sort, words, place: written.node.place, u, dimension });
  };
  const ownU: Measuring["ownU"] = (written, row) =>
    written.plusMinus === null ? customs.u(row, written.value) : written.plusMinus / 2;
  const observed: Measuring["observed"] = (written, words, { name, dimension }) => {
    const u = ownU(written, name);
    return book.doubted(written.value, { sort: "survey", words, place: written.node.place, u, dimension });
  };
  const reelShare: Measuring["reelShare"] = (written) => {
    if (reel === null || reel.error === null || written.plusMinus !== null || written.value === 0) return 0;
    return (Math.sign(written.value) * reel.error.greatest(Math.abs(written.value))) / Math.sqrt(3);
  };
  const taped: Measuring["taped"] = (written, words) => {
    const corrected = reel === null ? written : { ...written, value: reel.inTruth(written.value) };
    const own = observed(corrected, words, { name: "tape", dimension: "length" });
    const by = reelShare(written);
    if (reel === null || reel.error === null || by === 0) return own;
    // One reel, one error: long or short by the same share of its permitted error in every tape. u = E / sqrt 3.
    const cause = book.causeOf({
      sort: "survey",
      words: reel.error.words,
      place: reel.place,
      u: reel.error.greatest(reel.length) / Math.sqrt(3),
      dimension: "length",
    });
    return sum(own, swayedBy(0, cause, by));
  };
  const coordinate: Measuring["coordinate"] = (written, words, axis) => {
    const u = ownU(written, "coordinates");
    return book.doubted(written.value, {
      sort: "survey",
      words,
      place: written.node.place,
      part: axis,
      u,
      dimension: "length",
    });
  };
  const size: Measuring["size"] = (written, words, { sort, dimension, existing }) => {
    if (written.plusMinus !== null) return stated(written, words, dimension, existing ? "survey" : "build");
    if (sort === "exact") return exact(written.value);
    const row = (existing ? rowWhenExisting : rowWhenBuilt)[sort];
    if (row === null) return exact(written.value);
    if (existing) return observed(written, words, { name: row, dimension });
    const u = customs.u(row);
    return book.doubted(written.value, {
      sort: "build",
      words: `building ${words}`,
      place: written.node.place,
      u,
      dimension,
    });
  };
  const built: Measuring["built"] = (point, words, place) => {
    const u = customs.u("buildPosition");
    const moved = (at: Uncertain, part: string): Uncertain =>
      sum(at, book.doubted(0, { sort: "build", words: `building ${words}`, place, part, u, dimension: "length" }));
    return {
      ...point,
      east: moved(point.east, "built east"),
      north: moved(point.north, "built north"),
      place,
      built: true,
    };
  };
  return { ownU, taped, reelShare, coordinate, observed, stated, size, built };
}
