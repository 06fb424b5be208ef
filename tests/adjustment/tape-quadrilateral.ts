// A braced quadrilateral of six tapes, the smallest figure with a check. Measured values invented.

import type { Coordinates, Observation } from "../../src/adjustment/observation.ts";

export const quadStations = ["A", "B", "C", "D"];

export const quadTapes: readonly (readonly [string, string, number])[] = [
  ["A", "B", 24.003],
  ["B", "C", 16.284],
  ["C", "D", 19.052],
  ["D", "A", 14.645],
  ["A", "C", 26.395],
  ["B", "D", 26.346],
];

export const quadStart: ReadonlyMap<string, Coordinates> = new Map([
  ["A", [0, 0]],
  ["B", [24, 0]],
  ["C", [21, 16]],
  ["D", [2, 14.5]],
]);

/** 5 mm and 0.2 mm for each metre: field tape on grass, PRACTICE. */
export function fieldTape(length: number): number {
  return 0.005 + 0.0002 * length;
}

/** A at the origin and B due east of it, exactly; the six tapes, one of them with `blunder` metres added. */
export function quadObservations(blunder: { readonly in: string; readonly by: number } | null): Observation[] {
  const tapes = quadTapes.map(([from, to, length]): Observation => {
    const id = from + to;
    const value = length + (blunder?.in === id ? blunder.by : 0);
    return { id, kind: "distance", from, to, value, u: fieldTape(length) };
  });
  return [
    { id: "A east", kind: "east", of: "A", value: 0, u: 0 },
    { id: "A north", kind: "north", of: "A", value: 0, u: 0 },
    { id: "A to B", kind: "bearing", from: "A", to: "B", value: Math.PI / 2, u: 0 },
    ...tapes,
  ];
}
