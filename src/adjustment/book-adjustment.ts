// A level book as a net: every reading is an observation, and the readings of one set-up share its line of sight.

import { adjustHeights } from "./heights.ts";
import type { AdjustedHeights, HeightObservation } from "./heights.ts";
import { bookFaults } from "./level-book.ts";
import type { BookRow } from "./level-book.ts";
import type { Refused } from "./network.ts";

export interface BookNetwork {
  readonly rows: readonly BookRow[];
  /** Levels known beforehand, with their standard uncertainty; 0 holds them exactly. */
  readonly known: ReadonlyMap<string, { readonly level: number; readonly u: number }>;
  /** Standard uncertainty of one staff reading, metres. */
  readonly u: number;
}

/** The name that stands for the line of sight of a set-up among the points of the result. */
export function lineOfSight(setUp: number): string {
  return `line of sight ${setUp}`;
}

/** The id of the observation that a reading of a row gives, rows counted from 0. */
export function readingId(row: number, sight: "backsight" | "intermediate" | "foresight"): string {
  return `row ${row} ${sight}`;
}

/**
 * The observations of a level book: reading = height of the line of sight - height of the point, and the known
 * levels, in that order. A point that is read from several set-ups ties them together.
 */
export function bookObservations({ rows, known, u }: BookNetwork): HeightObservation[] {
  const readings: HeightObservation[] = [];
  let setUp = 0;
  rows.forEach(({ point, backsight, intermediate, foresight }, row) => {
    const rise = (sight: "backsight" | "intermediate" | "foresight", value: number): HeightObservation => {
      return { kind: "rise", id: readingId(row, sight), from: point, to: lineOfSight(setUp), value, u };
    };
    if (intermediate !== undefined) readings.push(rise("intermediate", intermediate));
    if (foresight !== undefined) readings.push(rise("foresight", foresight));
    if (backsight === undefined) return;
    setUp += 1;
    readings.push(rise("backsight", backsight));
  });
  const levels = [...known].map(([of, { level, u: doubt }]): HeightObservation => {
    return { kind: "level", id: `level of ${of}`, of, value: level, u: doubt };
  });
  return [...readings, ...levels];
}

/** Adjust a level book by least squares, misclosure and intermediate sights included. */
export function adjustBook(network: BookNetwork): AdjustedHeights | Refused {
  const faults = bookFaults(network.rows);
  if (faults.length > 0) {
    const stations = faults.map(({ row }) => network.rows[row]!.point);
    return { refused: "unreadable", stations, observations: [] };
  }
  const observations = bookObservations(network);
  const points = new Set(observations.flatMap((o) => (o.kind === "level" ? [o.of] : [o.from, o.to])));
  return adjustHeights({ points: [...points], observations });
}
